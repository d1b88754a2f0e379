import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { INITIAL, Registry, parseRawGrammar, type IGrammar } from 'vscode-textmate';

/** A stretch of a line with its scopes, without the one all of the text has. */
export interface Scoped {
  readonly text: string;
  readonly scopes: readonly string[];
}

const path = 'syntaxes/gloss.tmLanguage.json';
let loading: Promise<IGrammar> | null = null;

/** The lines of a text, tokenised by the committed grammar as an editor does it. */
export async function tokenised(text: string): Promise<readonly (readonly Scoped[])[]> {
  const grammar = await (loading ??= load());
  let state = INITIAL;
  return text.split(/\r?\n/).map((line) => {
    const { tokens, ruleStack, stoppedEarly } = grammar.tokenizeLine(line, state);
    if (stoppedEarly) throw new Error(`stopped in ${line}`);
    state = ruleStack;
    return tokens.map(({ startIndex, endIndex, scopes }) => ({
      text: line.slice(startIndex, endIndex),
      scopes: scopes.filter((scope) => scope !== 'source.gloss'),
    }));
  });
}

async function load(): Promise<IGrammar> {
  const wasm = createRequire(__filename).resolve('vscode-oniguruma/release/onig.wasm');
  await loadWASM(readFileSync(wasm));
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: () => Promise.resolve(parseRawGrammar(readFileSync(path, 'utf8'), path)),
  });
  return (await registry.loadGrammar('source.gloss'))!;
}
