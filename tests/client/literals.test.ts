import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { sourceFiles } from '../architecture/imports';

/** Calls whose texts are for the log or for programmers, not for people's eyes in the editor. */
const logged = /^(?:.*\.)?(?:log\.(?:info|warn|error)|fault|lose|end|gaveUp|lost)$|^Error$/;

/** Literals that read as words: a letter, a blank, a letter; or a capital word alone, as on a button. */
function wordy(text: string): boolean {
  return /[A-Za-z]{2,}[,:]? [A-Za-z]{2,}/.test(text) || /^[A-Z][a-z]+( [A-Z][a-z]+)*[.!?…]?$/.test(text);
}

interface Literal {
  readonly text: string;
  readonly line: number;
  readonly translated: boolean;
}

/** Literals of a source that read as words, and whether a translator sees them. */
function wordsOf(source: string): Literal[] {
  const file = ts.createSourceFile('x.ts', source, ts.ScriptTarget.ES2022, true);
  const found: Literal[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    const text = ts.isStringLiteralLike(node) ? node.text : ts.isTemplateExpression(node) ? templateText(node) : null;
    if (text !== null && wordy(text)) {
      const line = file.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      const callees = callsAround(node);
      const translated = callees.some((c) => c === 't' || c === 'l10n.t' || logged.test(c));
      found.push({ text, line, translated });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function templateText(node: ts.TemplateExpression): string {
  return [node.head.text, ...node.templateSpans.map((s) => s.literal.text)].join('x');
}

function callsAround(node: ts.Node): string[] {
  const calls: string[] = [];
  for (let n = node; n.parent !== undefined; n = n.parent) {
    const { parent } = n;
    if (ts.isCallExpression(parent) && parent.arguments.includes(n as ts.Expression))
      calls.push(parent.expression.getText());
    if (ts.isNewExpression(parent) && parent.arguments?.includes(n as ts.Expression))
      calls.push(parent.expression.getText());
  }
  return calls;
}

/** Words that people see and nobody translates: names, and what is read by machines. */
const names = new Set(['Thermogloss', 'FileNotFound']);
/** Templates of pages, policies and the protocol: no words of ours are in them. */
const machine = new Set(['client/src/curves/page.ts']);

describe('the words of the client', () => {
  for (const path of sourceFiles(join('client', 'src'))) {
    if (machine.has(path)) continue;
    it(`are for the translator or for the log (${path})`, () => {
      const bare = wordsOf(readFileSync(path, 'utf8')).filter((w) => !w.translated && !names.has(w.text));
      assert.deepEqual(
        bare.map((w) => `${w.line}: ${w.text}`),
        [],
      );
    });
  }

  it('are translated whole: what a translator gets is a literal, never put together from pieces', () => {
    for (const path of sourceFiles(join('client', 'src'))) {
      const text = readFileSync(path, 'utf8');
      for (const [, first] of text.matchAll(/\bl10n\.t\(\s*([^\s])/g)) assert.match(first!, /['m]/, path);
    }
  });
});

describe('the check of words', () => {
  const bare = (source: string): string[] =>
    wordsOf(source)
      .filter((w) => !w.translated)
      .map((w) => w.text);

  it('finds a literal that bypasses the translator, plain, in a template and on a button', () => {
    assert.deepEqual(bare("window.showErrorMessage('No server here');"), ['No server here']);
    assert.deepEqual(bare('item.text = `${n} results found`;'), ['x results found']);
    assert.deepEqual(bare("show(m, 'Restart Server', 'Restart');"), ['Restart Server', 'Restart']);
  });

  it('is content with translated words, words for the log and words for machines', () => {
    const fine =
      "a(l10n.t('No server here')); log.info(`ended (${why}) too often`); get('editor.inlayHints'); x = 'onSave';";
    assert.deepEqual(bare(fine), []);
  });
});
