import assert from 'node:assert/strict';
import { semanticTokens, tokensDelta } from '../../server/src/features/tokens/tokens';
import { classify } from '../../server/src/features/tokens/classify';
import { tokenModifiers, tokenTypes } from '../../server/src/features/tokens/legend';
import { TextPositions } from '../../server/src/features/positions';
import type { GlossDocument } from '../../server/src/features/workspace';
import { bench } from './support/fixture';
import { examples, prefixes, still } from './support/examples';

/** The tokens as they stand in the text: `step:keyword First:variable.definition`. */
async function told(source: string): Promise<string> {
  const document = await bench(source).document();
  return shown(document, semanticTokens(document)).join(' ');
}

/** Takes the five integers of each token back to text, as a client does. */
function shown({ text }: GlossDocument, data: readonly number[], encoding: 'utf-16' | 'utf-8' = 'utf-16'): string[] {
  const positions = new TextPositions(text, encoding);
  const found: string[] = [];
  let line = 0;
  let character = 0;
  for (let i = 0; i < data.length; i += 5) {
    const [down, right, length, type, modifiers] = data.slice(i, i + 5) as [number, number, number, number, number];
    line += down;
    character = down === 0 ? character + right : right;
    const start = positions.raw({ line, character });
    const end = positions.raw({ line, character: character + length });
    const set = tokenModifiers.filter((_, k) => (modifiers & (1 << k)) !== 0);
    found.push(`${text.slice(start, end)}:${[tokenTypes[type], ...set].join('.')}`);
  }
  return found;
}

describe('semantic tokens', () => {
  it('tell statements, names, windows, units and comments apart', async () => {
    assert.equal(
      await told('run "a.csv"\nstep First 640..800 °C in heating 1 # why\n'),
      'run:keyword "a.csv":string step:keyword First:variable.definition 640:number ..:operator 800:number °C:type ' +
        'in:keyword heating:enumMember 1:number # why:comment',
    );
  });

  it('tell clauses, choices, quantities with their ±, codes and reasons', async () => {
    const text =
      'run "a.csv"\n  mass 20.052 ± 0.010 mg\n  endothermic up\nallow window-overlap because "shared"\npeak P 1..2 °C\n  baseline tangent left\n';
    assert.equal(
      await told(text),
      'run:keyword "a.csv":string mass:property 20.052:number ±:operator 0.010:number mg:type endothermic:property ' +
        'up:enumMember allow:keyword window-overlap:decorator because:keyword "shared":string peak:keyword ' +
        'P:variable.definition 1:number ..:operator 2:number °C:type baseline:property tangent:enumMember left:enumMember',
    );
  });

  it('tell names, quantities, functions, operators and formulas of expressions', async () => {
    const text = 'run "a.csv"\nstep A 1..2 °C\nlet x = mean(A.loss, 2 %) * M(CaCO3) / M(CO2) - 1e-3 %\n';
    assert.equal(
      (await told(text)).split('°C:type ')[1],
      'let:keyword x:variable.definition =:operator mean:function.defaultLibrary A:variable loss:property 2:number %:type ' +
        '*:operator M:function.defaultLibrary CaCO3:enumMember /:operator M:function.defaultLibrary CO2:enumMember -:operator 1e-3:number %:type',
    );
  });

  it('go by the place of a word, not by its letters: names may equal keywords, units, functions', async () => {
    const text = await told('run "a.csv"\nstep in 1..2 °C\nstep mean 1..2 °C\nlet mg = mean.loss + in.loss\n');
    assert.ok(text.includes('in:variable.definition') && text.includes('mean:variable.definition'));
    assert.ok(
      text.endsWith(
        'mg:variable.definition =:operator mean:variable loss:property +:operator in:variable loss:property',
      ),
      text,
    );
  });

  it('mark what is not computed: a broken line, a failing statement, and where it is read', async () => {
    const text = await told('run "a.csv"\nstep A 1..\nlet x = y\nlet z = x\n');
    assert.ok(text.includes('A:variable.definition.deprecated'), text);
    assert.ok(text.includes('x:variable.definition.deprecated'), text);
    assert.ok(text.endsWith('x:variable.deprecated'), text);
    assert.ok(!(await told('run "a.csv"\nstep A 1..2 °C\n')).includes('deprecated'));
  });

  it('of a range are those of the whole that lie in its lines', async () => {
    const document = await bench('run "a.csv"\nstep A 1..2 °C\n  span 3 K\nstep B 3..4 °C\n').document();
    const whole = shown(document, semanticTokens(document));
    const part = semanticTokens(document, { start: { line: 1, character: 2 }, end: { line: 2, character: 4 } });
    const tokens = shown(document, part);
    assert.deepEqual(tokens, whole.slice(2, whole.indexOf('step:keyword', 3)));
  });

  it('count in the units the client counts in', async () => {
    const document = await bench('run "µg°.csv"\n  sample "°°" # µ\nstep A 1..2 °C\n').document();
    const bytes = { ...document, positions: new TextPositions(document.text, 'utf-8') };
    assert.deepEqual(shown(document, semanticTokens(bytes), 'utf-8'), shown(document, semanticTokens(document)));
  });

  it('of a changed text are one edit of those before', () => {
    const before = [0, 0, 3, 0, 0, 1, 0, 4, 1, 1, 0, 5, 3, 2, 0];
    const cases: number[][] = [
      before,
      [],
      before.slice(5),
      [...before, 1, 2, 3, 4, 5],
      [0, 0, 3, 0, 0, 2, 0, 4, 1, 1, 0, 5, 3, 2, 0],
      [9, 9],
    ];
    for (const now of cases) {
      const edits = tokensDelta(before, now);
      assert.equal(edits.length, now === before ? 0 : 1);
      const made = [...before];
      for (const { start, deleteCount, data } of edits) made.splice(start, deleteCount, ...(data ?? []));
      assert.deepEqual(made, now);
    }
    const [edit] = tokensDelta(before, cases[4]!);
    assert.deepEqual(edit, { start: 5, deleteCount: 1, data: [2] });
  });

  it('never overlap and survive every prefix of the examples', async function () {
    this.timeout(60_000);
    for (const { text } of examples()) {
      for (const prefix of [text, ...prefixes(text)]) {
        const { document } = await still(prefix);
        let end = 0;
        for (const token of classify(document.tree, new Set())) {
          assert.ok(token.span.start >= end && token.span.end > token.span.start);
          end = token.span.end;
        }
        assert.equal(semanticTokens(document).length % 5, 0);
      }
    }
  });
});
