import assert from 'node:assert/strict';
import type { SelectionRange } from 'vscode-languageserver-types';
import { folding } from '../../server/src/features/folding';
import { selectionRanges } from '../../server/src/features/selection';
import { examples, prefixes } from './support/examples';
import { bench } from './support/fixture';

describe('folds', () => {
  const source = `# Invented
# in two lines
run "a.csv"
  mass 5 mg
  # weighed twice

  endothermic up

# Losses
step A 1..2 °C
step B 2..3 °C
  span 5 K
step C 3..4 °C

let x = 1
let y = 2

let z = 3
`;

  it('are statements with clauses, comments of several lines, and groups up to an empty line', async () => {
    const found = folding(await bench(source).document());
    assert.deepEqual(
      found.map(({ startLine, endLine, kind }) => [startLine, endLine, kind ?? 'statement']),
      [
        [0, 1, 'comment'],
        [2, 6, 'statement'],
        [8, 12, 'region'],
        [10, 11, 'statement'],
        [14, 15, 'region'],
      ],
    );
  });

  it('are nested or apart, and no two begin on one line', async () => {
    for (const { text } of examples()) {
      const found = folding(await bench(text).document());
      assert.equal(new Set(found.map(({ startLine }) => startLine)).size, found.length);
      for (const a of found) {
        for (const b of found) {
          assert.ok(
            !(a.startLine < b.startLine && b.startLine <= a.endLine && a.endLine < b.endLine),
            `${a.startLine} ${b.startLine}`,
          );
        }
      }
    }
  });

  it('are at most as many as the client wants, statements first', async () => {
    const found = folding(await bench(source).document(), 2);
    assert.deepEqual(
      found.map(({ startLine }) => startLine),
      [2, 10],
    );
  });
});

describe('selections', () => {
  const texts = async (source: string): Promise<string[]> => {
    const at = bench(source);
    const document = await at.document();
    const found: string[] = [];
    let range: SelectionRange | undefined = selectionRanges(document, [at.marks.cursor])[0];
    while (range !== undefined) {
      const { start, end } = document.positions.span(range.range);
      found.push(at.marks.text.slice(start, end));
      range = range.parent;
    }
    return found;
  };

  it('grow from a word to its token, clause, statement, neighbours and text', async () => {
    const statement = 'run "a.csv"\n  calibrated temperature 25..1065 °C u 1.5 K';
    const whole = `# x\n\n${statement}\nmethod "m.gloss"\n\nlet y = 2\n`;
    assert.deepEqual(await texts(whole.replace('1065', '10|65')), [
      '1065',
      '1065 °C',
      '25..1065 °C',
      'temperature 25..1065 °C u 1.5 K',
      'calibrated temperature 25..1065 °C u 1.5 K',
      statement,
      `${statement}\nmethod "m.gloss"`,
      whole,
    ]);
  });

  it('grow through the parts of an expression', async () => {
    assert.deepEqual(await texts('let x = 2 * (First.lo|ss - 1 %)\n'), [
      'loss',
      'First.loss',
      '(First.loss - 1 %)',
      '2 * (First.loss - 1 %)',
      'let x = 2 * (First.loss - 1 %)',
      'let x = 2 * (First.loss - 1 %)\n',
    ]);
  });

  it('of a comment are its words and its line', async () => {
    const text = 'run "a.csv"\n# one two\n# three\n\nlet x = 1\n';
    assert.deepEqual(await texts(text.replace('two', 't|wo')), [
      'two',
      '# one two',
      'run "a.csv"\n# one two\n# three',
      text,
    ]);
  });
});

describe('stretches in every prefix of the examples', () => {
  it('hold the cursor and each other, and folds lie within the text', async () => {
    for (const { text } of examples()) {
      for (const prefix of prefixes(text)) {
        const at = bench(prefix);
        const document = await at.document();
        for (const { startLine, endLine } of folding(document))
          assert.ok(startLine < endLine && endLine < document.positions.lines);
        const offset = document.positions.offset(at.marks.cursor);
        let inner = { start: offset, end: offset };
        let range: SelectionRange | undefined = selectionRanges(document, [at.marks.cursor])[0];
        while (range !== undefined) {
          const span = document.positions.span(range.range);
          assert.ok(span.start <= inner.start && inner.end <= span.end, prefix);
          inner = span;
          range = range.parent;
        }
        assert.deepEqual(inner, { start: 0, end: at.marks.text.length });
      }
    }
  }).timeout(120_000);
});
