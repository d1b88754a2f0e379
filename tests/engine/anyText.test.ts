import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Counters } from '../../server/src/base/counters';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { lossRun } from '../lsp/support/lossRun';
import { seeded, type Random } from '../support/random';

const path = '/lab/a.gloss';
const own = `run "a.csv"
  mass 10.00 ± 0.01 mg
  hazard "none: invented"
method "m.gloss"
step First 200..450 °C
residue Rest at 600 °C
let share = First.loss / Rest.remaining
require share in 0.2..0.3
`;
const method = 'method "M"\nstep Other around 330 °C\n  on mass\n';
const folders = ['limestone', 'preform', 'faults'].map((name) => join('examples', name));
const texts = [
  own,
  ...folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.gloss'))
      .map((name) => readFileSync(join(folder, name), 'utf8').replace(/^run "[^"]*"/m, 'run "a.csv"')),
  ),
];
const pieces = [
  '..',
  ' around ',
  '"',
  '9e999',
  '-',
  '0',
  '°C',
  'K',
  ' in ',
  '\n',
  '\0',
  '\ud83d',
  '(',
  '^',
  'step ',
  '.',
];

/** One of the texts with pieces taken out and put in. */
function torn(random: Random): string {
  let text = texts[random.integer(texts.length)];
  for (let k = 0; k <= random.integer(5); k += 1) {
    const at = random.integer(text.length + 1);
    text = text.slice(0, at) + pieces[random.integer(pieces.length)] + text.slice(at + random.integer(12));
  }
  return text;
}

/** Bytes in use after everything was let go that can be. */
function inUse(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().heapUsed;
}

describe('whatever stands in a gloss', () => {
  const engine = (counters = new Counters()): Engine => {
    const files = { 'a.csv': lossRun(330, 241), 'm.gloss': method, 'limestone.gloss': method };
    return new Engine(new MemoryHost(files, '/lab'), counters);
  };

  it('is evaluated to its end at every place where a text of the examples may stop, a letter more costing one evaluation at most', async () => {
    const counters = new Counters();
    const one = engine(counters);
    const kinds = ['resolutions', 'evaluations', 'lets', 'preparations', 'reads'];
    const counts = (): readonly number[] => kinds.map((kind) => counters.of(kind));
    for (const text of texts) {
      for (let end = 0; end <= text.length; end += 1) {
        const before = counts();
        const snapshot = await one.evaluate(path, text.slice(0, end));
        assert.ok(snapshot.findings.every((f) => f.message !== '' && f.span.end >= f.span.start));
        const spent = counts().map((count, k) => count - before[k]);
        assert.ok(Math.max(...spent) <= 1, `${kinds.join()}: ${spent.join()} at ${end} of\n${text}`);
      }
    }
    // Each is counted at all.
    assert.ok(counts().every((count) => count > 0));
  }).timeout(120_000);

  it('is evaluated to its end, torn at random, and nothing of texts long gone is kept', async () => {
    const random = seeded(20269);
    const one = engine();
    const some = async (count: number): Promise<void> => {
      for (let k = 0; k < count; k += 1) {
        const text = torn(random);
        const snapshot = await one.evaluate(path, text);
        for (const r of snapshot.results) assert.ok(r.value === null || !Number.isNaN(r.value), `${r.id} in\n${text}`);
      }
    };
    await some(600);
    const before = inUse();
    await some(1200);
    const more = (inUse() - before) / 1e6;
    assert.ok(more < 15, `${more.toFixed(1)} MB more after another 1200 texts`);
  }).timeout(120_000);
});
