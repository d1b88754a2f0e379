import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { TextEdit } from 'vscode-languageserver-types';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { format } from '../../server/src/language/format';
import { formatting, newlineFormatting, rangeFormatting } from '../../server/src/features/formatting';
import { TextPositions } from '../../server/src/features/positions';
import type { GlossText } from '../../server/src/features/workspace';
import { parse } from '../../server/src/language/syntax/parse';
import { examples, prefixes } from './support/examples';
import { marked } from './support/fixture';

function textOf(text: string): GlossText {
  return {
    uri: 'file:///lab/a.gloss',
    path: '/lab/a.gloss',
    version: 1,
    text,
    tree: parse(text),
    positions: new TextPositions(text),
  };
}

/** By the reference implementation of the protocol's documents. */
function applied(text: string, edits: TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create('file:///lab/a.gloss', 'gloss', 1, text), edits);
}

const untidy =
  'run   "a.csv"\r\n\tmass 20.0500 mg#weighed\r\n      endothermic   down\r\n\r\n\r\nstep First 1..2 °C\r\nstep    Se 2..3 °C   # é µ 😀\r\nlet x   = 020.5e0 mg';
const broken =
  'run "a.csv"\n   mass   20,5   mg  \n    sample "x"\nstepp   First  1..2 °C\n      span    5 K\nlet   y =   1\n';

describe('layout', () => {
  it('by edits comes to what `format` makes of the text, with its line ends', () => {
    for (const text of [untidy, broken, `\ufeff${untidy}`, ...examples().map((e) => e.text.replace(/ {2}/g, '   '))]) {
      assert.equal(applied(text, formatting(textOf(text))), format(text));
    }
  });

  it('touches blanks and line ends only, each edit as small as it can be', () => {
    for (const text of [untidy, broken]) {
      const positions = new TextPositions(text);
      for (const { range, newText } of formatting(textOf(text))) {
        const removed = text.slice(positions.raw(range.start), positions.raw(range.end));
        assert.match(removed + newText, /^[ \t\r\n]*$/);
        assert.notEqual(removed, newText);
      }
    }
  });

  it('of a text in its usual form is no edit at all', () => {
    for (const { text } of examples()) assert.deepEqual(formatting(textOf(text)), []);
    assert.deepEqual(formatting(textOf('')), []);
  });

  it('done twice changes nothing the second time, and changes no statement, for random texts', () => {
    const line = fc.constantFrom(
      'run "a.csv"',
      '  mass   20.0 mg',
      '\tendothermic up  # x',
      'step  First 1..2 °C',
      'step S   around 5 °C',
      ' span 5 K',
      'let  x= 1',
      'let abc =2',
      '',
      '  ',
      '# c',
      '   # d',
      'stepp x',
      '  mass 2,5 mg',
      '\u00a0',
      'note "a   b"',
    );
    const texts = fc.tuple(fc.array(line, { maxLength: 14 }), fc.constantFrom('\n', '\r\n'), fc.boolean());
    fc.assert(
      fc.property(texts, ([lines, end, last]) => {
        const text = lines.join(end) + (last ? end : '');
        const once = applied(text, formatting(textOf(text)));
        assert.deepEqual(formatting(textOf(once)), []);
        assert.deepEqual(
          parse(once).statements.map((s) => s.canonical),
          parse(text).statements.map((s) => s.canonical),
        );
        assert.equal(once.replace(/\s/g, ''), text.replace(/\s/g, ''));
      }),
      { numRuns: 400, seed: 11 },
    );
  });

  it('lays out around lines with a finding and leaves those as they are', () => {
    const after = applied(broken, formatting(textOf(broken)));
    for (const kept of ['   mass   20,5   mg  ', 'stepp   First  1..2 °C', '      span    5 K'])
      assert.ok(after.includes(kept), kept);
    assert.ok(after.includes('\n  sample "x"\n') && after.includes('\nlet y = 1\n'));
  });
});

describe('layout of a range', () => {
  it('changes lines of the range only, as the layout of the whole would', () => {
    const text = untidy.replaceAll('\r\n', '\n');
    const whole = formatting(textOf(text));
    const lines = { start: { line: 1, character: 3 }, end: { line: 2, character: 1 } };
    const edits = rangeFormatting(textOf(text), lines);
    assert.deepEqual(
      edits,
      whole.filter(({ range }) => range.start.line >= 1 && range.end.line <= 2),
    );
    assert.ok(edits.length > 0);
    assert.deepEqual(rangeFormatting(textOf(applied(text, edits)), lines), []);
  });

  it('does not reach a line that the range ends before', () => {
    const edits = rangeFormatting(textOf('run   "a.csv"\nlet   x = 1\n'), {
      start: { line: 0, character: 0 },
      end: { line: 1, character: 0 },
    });
    assert.deepEqual(
      edits.map(({ range }) => range.start.line),
      [0],
    );
  });
});

describe('layout after a line end was typed', () => {
  const typed = (source: string): string => {
    const { text, cursor } = marked(source);
    return applied(text, newlineFormatting(textOf(text), cursor));
  };

  it('indents a clause below a head that has some, and below a clause', () => {
    assert.equal(typed('run "a.csv"\n|'), 'run "a.csv"\n  ');
    assert.equal(typed('override step A 1..2 °C\n|\nlet x = 1\n'), 'override step A 1..2 °C\n  \nlet x = 1\n');
    assert.equal(typed('run "a.csv"\n  mass 5 mg\n|'), 'run "a.csv"\n  mass 5 mg\n  ');
  });

  it('leaves alone what follows other heads, what the editor has indented already and lines with content', () => {
    for (const same of [
      'let x = 1\n|',
      'step A 1..2 °C\n|',
      'peak B 1..2 °C\n|',
      'run "a.csv"\n  |',
      'run "a.csv"\n|step A 1..2 °C\n',
      '\n|',
      '# run\n|',
      '|',
      'runs\n|',
    ]) {
      assert.equal(typed(same), same.replace('|', ''));
    }
  });

  it('ends the clauses where an indented line was left empty', () => {
    assert.equal(typed('run "a.csv"\n  mass 5 mg\n  \n  |'), 'run "a.csv"\n  mass 5 mg\n\n');
  });
});

describe('layout in every prefix of the examples', () => {
  it('is what `format` makes of it, and typing a line end there faults nowhere', () => {
    for (const { text } of examples()) {
      for (const prefix of prefixes(text)) {
        const clean = prefix.replace('|', '');
        assert.equal(applied(clean, formatting(textOf(clean))), format(clean));
        const { text: more, cursor } = marked(prefix.replace('|', '\n|'));
        const edits = newlineFormatting(textOf(more), cursor);
        assert.equal(applied(more, edits).replace(/\s/g, ''), more.replace(/\s/g, ''));
      }
    }
  }).timeout(120_000);
});
