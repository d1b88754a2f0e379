import assert from 'node:assert/strict';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const revisions = join('tests', 'revisions', 'golden');

/** Compares with the committed file of that name; with UPDATE_GOLDEN=1 the file is written anew, to be read before it is committed. */
export function sameAsGolden(name: string, text: string, folder = revisions): void {
  const path = join(folder, name);
  if (process.env.UPDATE_GOLDEN === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    return;
  }
  assert.ok(existsSync(path), `${path} is missing; UPDATE_GOLDEN=1 writes it`);
  assert.equal(text, readFileSync(path, 'utf8'));
}

/** A comparison in JSON, laid out to be read: main results alone, one a line, numbers to five digits (the last bits differ between machines), no version of the program. */
export function readableJson(text: string): string {
  const model = JSON.parse(text) as Readonly<Record<string, unknown>> & { glosses: readonly Gloss[] };
  const lines = [line({ ...model, glosses: model.glosses.length })];
  for (const { results, requirements, changes, ...gloss } of model.glosses) {
    const main = results.filter((r) => r.main);
    lines.push(line({ ...gloss, results: results.length, main: main.length }));
    for (const one of [...changes, ...main, ...requirements]) lines.push(`  ${line(one)}`);
  }
  return `${lines.join('\n')}\n`;
}

interface Gloss {
  readonly results: readonly { readonly main: boolean }[];
  readonly requirements: readonly object[];
  readonly changes: readonly object[];
}

function line(value: object): string {
  return JSON.stringify(value, (key, inner: unknown) => {
    if (key === 'program' && typeof inner === 'string') return 'VERSION';
    return typeof inner === 'number' ? Number(inner.toPrecision(5)) : inner;
  });
}
