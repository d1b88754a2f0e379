import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import type { Line, Named } from './line';
import { lines } from './lines';

/** Letters of the groups and how many lines each has. */
const groups = { L: 9, V: 6, S: 4, P: 6, H: 5, X: 5, Y: 6, G: 8, W: 10, D: 12 } as const;
/** Lines that no machine here can try in full. */
const handed = ['W2', 'W8', 'W10'];
/** Of the lines L to W. Those of comparisons and the command line are counted apart: they need other systems. */
const mostMissing = 5;
const openOfResults = ['D6', 'D8', 'D12'];

/**
 * Titles of the tests of a source, as written between their quotes; none of a test that is switched off. A title that is
 * put together stands with its `${…}`.
 */
function titlesOf(source: string): Set<string> {
  const file = ts.createSourceFile('x.ts', source, ts.ScriptTarget.ES2022, true);
  const found = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText() === 'it' && node.arguments.length > 1) {
      const [title] = node.arguments;
      if (ts.isStringLiteralLike(title)) found.add(title.text);
      else if (ts.isTemplateExpression(title)) found.add(title.getText().slice(1, -1));
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const sources = new Map<string, Set<string>>();

/** Null where there is no such file. */
function titles(file: string): Set<string> | null {
  const path = join('tests', `${file}.test.ts`);
  if (!existsSync(path)) return null;
  const known = sources.get(path) ?? titlesOf(readFileSync(path, 'utf8'));
  sources.set(path, known);
  return known;
}

function notThere(named: readonly Named[]): string[] {
  return named.filter(([file, title]) => titles(file)?.has(title) !== true).map(([file, title]) => `${file}: ${title}`);
}

/** What is wrong with a line: nothing shows it, or what shows it is not there. */
function problems(line: Line): string[] {
  const { id, tests = [], benches = [], byHand, missing } = line;
  const found = notThere(tests).map((t) => `${id}: no test ${t}`);
  for (const [file, row] of benches) {
    const path = join('tests', `${file}.ts`);
    if (!existsSync(path) || !readFileSync(path, 'utf8').includes(row)) found.push(`${id}: no bench ${file}: ${row}`);
  }
  if (tests.length === 0 && missing === undefined) found.push(`${id}: nothing shows it`);
  if (byHand !== undefined && !handed.includes(id)) found.push(`${id}: is left to a hand`);
  if (missing !== undefined && missing.length < 60) found.push(`${id}: the attempt is not told`);
  return found;
}

describe('the checklist', () => {
  it('has every line once, in order', () => {
    const wanted = Object.entries(groups).flatMap(([letter, count]) =>
      Array.from({ length: count }, (_, i) => `${letter}${i + 1}`),
    );
    assert.deepEqual(
      lines.map(({ id }) => id),
      wanted,
    );
  });

  it('names for each line tests that are there under that very title, and measurements that are made', () => {
    assert.deepEqual(lines.flatMap(problems), []);
  });

  it('leaves to a hand what no machine here can do, and at most five lines from L to W and three of D open', () => {
    assert.deepEqual(
      lines.filter((l) => l.byHand !== undefined).map(({ id }) => id),
      handed,
    );
    const open = lines.filter((l) => l.missing !== undefined).map(({ id }) => id);
    const ofResults = open.filter((id) => id.startsWith('D'));
    assert.ok(open.length - ofResults.length <= mostMissing, open.join(' '));
    assert.deepEqual(ofResults, openOfResults);
  });
});

describe('the reader of the checklist', () => {
  const off = ['it', 'skip'].join('.');
  const source = `it('holds', f); ${off}('is off', f); it(\`of \${name}\`, f); other('no', f); it('bare');`;

  it('finds titles, also those put together, and none of a test that is switched off or has no body', () => {
    assert.deepEqual([...titlesOf(source)], ['holds', 'of ${name}']);
  });

  it('complains of a title that is not there, a line without proof, a hand that is not due and an attempt not told', () => {
    const line: Line = { id: 'L3', claim: '', tests: [['checklist/checklist', 'has every line once, in order']] };
    assert.deepEqual(problems(line), []);
    const odd = (change: Partial<Line>): number => problems({ ...line, ...change }).length;
    assert.equal(odd({ tests: [['checklist/checklist', 'has every line twice']] }), 1);
    assert.equal(odd({ tests: [['checklist/gone', 'has every line once, in order']] }), 1);
    assert.equal(odd({ tests: [] }), 1);
    assert.equal(odd({ byHand: 'look' }), 1);
    assert.equal(odd({ missing: 'later' }), 1);
    assert.equal(odd({ benches: [['bench/bundles', 'no such row']] }), 1);
  });
});
