import assert from 'node:assert';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { generatedFiles } from '../../examples/generator/files';

const folder = resolve('examples');

/** Numbers with a point or a comma as decimal sign; the rest of the line is compared as text. */
const number = /-?\d+(?:[.,]\d+)?/g;

/** Where two lines differ by more than one in the last digit of a number, or in anything else; null: nowhere. */
function difference(expected: string, found: string): string | null {
  if (expected === found) return null;
  if (expected.replace(number, '0') !== found.replace(number, '0')) return `"${found}" for "${expected}"`;
  const theirs = found.match(number) ?? [];
  const ours = expected.match(number) ?? [];
  for (let i = 0; i < ours.length; i++) {
    const [a, b] = [ours[i], theirs[i]];
    const decimals = (text: string): number => text.split(/[.,]/)[1]?.length ?? 0;
    const value = (text: string): number => Math.round(Number(text.replace(',', '.')) * 10 ** decimals(a));
    if (decimals(a) !== decimals(b) || Math.abs(value(a) - value(b)) > 1) return `${b} for ${a} in "${expected}"`;
  }
  return null;
}

describe('The data of the examples', () => {
  const files = generatedFiles();

  for (const [path, text] of files) {
    it(`${path} is what its generator gives, to within one in the last digit`, () => {
      const expected = text.split('\n');
      const found = readFileSync(join(folder, path), 'utf8').split('\n');
      assert.strictEqual(found.length, expected.length, 'number of lines');
      assert.ok(expected.length > 20, 'the generator wrote a file worth comparing');
      for (let i = 0; i < expected.length; i++) {
        const differs = difference(expected[i], found[i]);
        assert.strictEqual(differs, null, `line ${String(i + 1)}: ${differs ?? ''}`);
      }
    });
  }

  it('a number that is two off in its last digit would be noticed, one off would not', () => {
    assert.strictEqual(difference('8,31.19,-20.0453', '8,31.20,-20.0454'), null);
    assert.notStrictEqual(difference('8,31.19,20.0453', '8,31.19,20.0455'), null);
    assert.notStrictEqual(difference('0,0167\t11,13', '0,0167\t11,1'), null);
    assert.notStrictEqual(difference('time / s', 'time / min'), null);
  });

  it('data and glosses together stay below 3 MB, and every data file comes from the generator', () => {
    let bytes = 0;
    const unknown: string[] = [];
    for (const part of ['limestone', 'preform', 'faults']) {
      for (const name of readdirSync(join(folder, part))) {
        bytes += statSync(join(folder, part, name)).size;
        if (!name.endsWith('.gloss') && !files.has(`${part}/${name}`)) unknown.push(`${part}/${name}`);
      }
    }
    assert.deepStrictEqual(unknown, []);
    assert.ok(bytes > 100_000 && bytes <= 3_000_000, `${String(bytes)} bytes`);
  });

  it('every gloss and every data file says that it is invented', () => {
    for (const part of ['limestone', 'preform', 'faults']) {
      for (const name of readdirSync(join(folder, part))) {
        const start = readFileSync(join(folder, part, name), 'utf8').slice(0, 200);
        assert.match(start, /invented/i, `${part}/${name}`);
      }
    }
  });
});
