import assert from 'node:assert/strict';
import fc from 'fast-check';
import { format } from '../../server/src/language/format';
import { resolveProgram } from '../../server/src/language/meaning/resolveProgram';
import { parse } from '../../server/src/language/syntax/parse';
import { statements } from '../../server/src/language/vocabulary/statements';
import type { Tree } from '../../server/src/language/tree';
import { locate } from './support/check';
import { all, limestone, limestoneMethod } from './support/examples';

/** FUZZ=100 runs a hundred times as many cases. */
const times = (n: number): number => n * Math.max(1, Number(process.env['FUZZ'] ?? 1));
const texts = [
  ...all,
  ...statements.map(
    (record) =>
      `${record.roles[0] === 'run' && record.kind !== 'run' ? 'run "a.csv"\n' : ''}${record.context}\n${record.example}\n`,
  ),
  'language 1\nrun "a.csv" # c\n  sample none\r\n\tmass 1,5 mg\n  mass 2e1 ± 1 µg\nmask 1-2 °C because "a\\"#b"\nkinetics K\n  x\nlet x = mean(1 %, (2 - -3 %)^2) * M(Fe0.95O)\nrequire x ≤ 5 °C as y\nrule gap-in-data 4 because "x"\n',
];

function survives(text: string): Tree {
  const tree = parse(text);
  const { length } = tree.text;
  for (const finding of tree.findings) {
    assert.ok('span' in finding.at);
    within(finding.at.span, { start: 0, end: length });
    for (const { edits } of finding.fixes) {
      for (const edit of edits) {
        assert.ok(edit.edit === 'replace' && 'span' in edit.at);
        within(edit.at.span, { start: 0, end: length });
      }
    }
  }
  let last = 0;
  for (const node of tree.statements) {
    within(node.span, { start: last, end: length });
    last = node.span.end;
    for (const [token, span] of node.tokens) within(span, node.span, `${node.id} ${token}`);
    assert.ok(node.tokens.has('head'));
    assert.equal(node.broken, node.statement === null);
  }
  assert.equal(new Set(tree.statements.map(({ id }) => id)).size, tree.statements.length);
  const program = resolveProgram(tree, null);
  for (const finding of program.findings) within(locate(finding.at, tree, null).span, { start: 0, end: length });
  return tree;
}

function within(inner: { readonly start: number; readonly end: number }, outer: typeof inner, what = ''): void {
  assert.ok(
    outer.start <= inner.start && inner.start <= inner.end && inner.end <= outer.end,
    `${what} ${JSON.stringify([inner, outer])}`,
  );
}

function formats(text: string): void {
  const once = format(text);
  assert.equal(format(once), once, 'formatting twice');
  const [before, after] = [parse(text), parse(once)];
  assert.deepEqual(
    after.statements.map(({ canonical }) => canonical),
    before.statements.map(({ canonical }) => canonical),
  );
  assert.deepEqual(
    after.findings.map(({ code }) => code),
    before.findings.map(({ code }) => code),
  );
  const numbers = (of: string): readonly string[] => of.match(/[\d.,eE±-]*\d/g) ?? [];
  assert.deepEqual(numbers(once), numbers(text));
  assert.equal(once.replace(/\s/g, ''), text.replace(/\s/g, ''));
}

const pieces = [
  '"',
  '#',
  '\\',
  '(',
  ')',
  '..',
  '-',
  ',',
  '.',
  '±',
  '°C',
  'K',
  ' in ',
  '\n',
  '\n  ',
  '\r\n',
  '\t',
  'mg',
  '5',
  '0.5',
  '1e3',
  '%',
  '=',
  '+',
  'First',
  'M(',
  'µ',
  '\u0301',
  '\ud83d',
  '·',
  '^',
  '/',
  'because ',
  'override ',
  '\ufeff',
  '\u00a0',
  '−',
  '≤',
  'step ',
  'let x',
];
/** One of the examples with a few pieces taken out, put in or moved. */
const mutated = fc
  .tuple(
    fc.constantFrom(...texts),
    fc.array(
      fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat({ max: 12 }), fc.constantFrom('', ...pieces)),
      { minLength: 1, maxLength: 5 },
    ),
  )
  .map(([text, changes]) =>
    changes.reduce((of, [where, cut, put]) => {
      const at = Math.floor(where * of.length);
      return of.slice(0, at) + put + of.slice(at + cut);
    }, text),
  );

describe('whatever the text is', () => {
  it('every prefix of every example is read', () => {
    for (const text of texts) for (let end = 0; end <= text.length; end++) survives(text.slice(0, end));
  });

  it('every mutation of the examples is read, its spans lie inside the text and its tokens inside their statement', () => {
    fc.assert(
      fc.property(mutated, (text) => void survives(text)),
      { seed: 1, numRuns: times(800) },
    );
  });

  it('any characters are read', () => {
    const soup = fc.array(fc.oneof(fc.constantFrom(...pieces), fc.string({ unit: 'binary', maxLength: 4 })), {
      maxLength: 40,
    });
    fc.assert(
      fc.property(soup, (parts) => void survives(parts.join(''))),
      { seed: 2, numRuns: times(400) },
    );
  });

  it('formatting is idempotent, keeps every character but blanks, and changes no meaning', () => {
    for (const text of texts) formats(text);
    fc.assert(fc.property(mutated, formats), { seed: 3, numRuns: times(600) });
  });
});

describe('the order of the statements', () => {
  /** Blocks of a head with its clauses, behind the role. */
  const blocks = (text: string): readonly string[] => text.trimEnd().split(/\n+(?=\S)/);

  it('changes nothing in the program but the order of the text', () => {
    const plain = (gloss: string, method: string): unknown => {
      const program = resolveProgram(parse(gloss), parse(method));
      const short = (
        list: readonly {
          readonly canonical: string;
          readonly failed: string | null;
          readonly needs: readonly string[];
        }[],
      ) => list.map(({ canonical, failed, needs }) => [canonical, failed, [...needs].sort()]);
      return [
        short(program.order),
        short(program.requires)
          .map((one) => JSON.stringify(one))
          .sort(),
        program.findings.map(({ code, about, message }) => [code, about?.replace(/#.*/, ''), message].join()).sort(),
        [program.run, ...program.blanks].map((one) => one?.canonical),
      ];
    };
    const faulty = `${limestone}let a1 = b1 + 1 %\nlet b1 = a1\nlet c1 = Moisture\nlet d1 = Frist.loss\noverride peak FirstHeat\nlet e1 = c1 + d1\nlet zz = First.loss + 3\n`;
    for (const [gloss, method] of [
      [limestone, limestoneMethod],
      [faulty, limestoneMethod],
    ] as const) {
      const [head, ...rest] = blocks(gloss);
      const [title, ...evaluations] = blocks(method);
      const shuffled = fc.tuple(
        fc.shuffledSubarray([...rest], { minLength: rest.length }),
        fc.shuffledSubarray([...evaluations], { minLength: evaluations.length }),
      );
      fc.assert(
        fc.property(shuffled, ([a, b]) => {
          assert.deepEqual(plain([head, ...a].join('\n'), [title, ...b].join('\n')), plain(gloss, method));
        }),
        { seed: 4, numRuns: times(40) },
      );
    }
  });
});
