import assert from 'node:assert/strict';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';

const rate = 10;
const end = 900;

/** An apparent gain of 0.1 mg at 900 °C that run and blank share. */
const lift = (temperature: number) => (0.1 * (temperature - 30)) / (end - 30);

function record(
  every: number,
  options: { from?: number; clock?: number; skip?: readonly [number, number]; loss?: number } = {},
): string {
  const { from = 0, clock = 0, skip, loss } = options;
  const lines = ['time / s,temperature / °C,mass / mg'];
  for (let t = from; t <= ((end - 30) / rate) * 60; t += every) {
    if (skip !== undefined && t > skip[0] && t < skip[1]) continue;
    const temperature = 30 + (rate * t) / 60;
    const own = loss === undefined ? 0 : 20 * (1 - loss / 100 / (1 + Math.exp(-(temperature - 500) / 10)));
    lines.push(`${t + clock},${temperature.toFixed(3)},${(own + lift(temperature)).toFixed(6)}`);
  }
  return `${lines.join('\n')}\n`;
}

const run = record(6, { loss: 10 });
const gloss = 'run "a.csv"\n  mass 20 mg\nblank "z.csv"\n  subtract mass\nstep Main 300..700 °C\n';

async function lossWith(blank: string) {
  const host = new MemoryHost({ 'a.csv': run, 'z.csv': blank }, '/lab');
  const s = await new Engine(host).evaluate('/lab/a.gloss', gloss);
  return { loss: s.results.find((r) => r.id === 'Main.loss')?.value ?? NaN, codes: s.findings.map((f) => f.code) };
}

describe('blanks', () => {
  it('without one the shared gain stays in the step', async () => {
    const host = new MemoryHost({ 'a.csv': run }, '/lab');
    const s = await new Engine(host).evaluate('/lab/a.gloss', gloss.replace(/blank[^]*?mass\n/, ''));
    const loss = s.results.find((r) => r.id === 'Main.loss')!.value!;
    // 0.1 mg over 870 K, 400 K of it inside the window, of 20 mg.
    assert.ok(Math.abs(loss - (10 - (100 * 0.1 * 400) / 870 / 20)) < 0.002, `${loss}`);
  });

  for (const [name, blank] of [
    ['the same sampling', record(6)],
    ['another sampling interval', record(2.5)],
    ['a later start', record(6, { from: 60 })],
    ['a clock that was started 45 s earlier', record(6, { clock: 45 })],
  ] as const) {
    it(`one with ${name} takes the gain away`, async () => {
      const { loss } = await lossWith(blank);
      assert.ok(Math.abs(loss - 10) < 0.002, `${loss}`);
    });
  }

  it('one with a missing stretch is told of, and readings in that stretch are left out, not corrected by a guess', async () => {
    const { loss, codes } = await lossWith(record(6, { skip: [4000, 4300] }));
    assert.ok(codes.includes('blank-too-short'));
    assert.ok(Math.abs(loss - 10) < 0.002, `${loss}`);
  });

  it('one of another heating rate is a mismatch', async () => {
    const slow = run
      .split('\n')
      .map((line, i) => (i === 0 ? line : line.replace(/^(\d+)/, (t) => String(2 * Number(t)))))
      .join('\n');
    const { codes } = await lossWith(slow);
    assert.ok(codes.includes('blank-mismatch'), codes.join(', '));
  });

  it('a bare data file is a blank without conditions, and that is said', async () => {
    const { codes } = await lossWith(record(6));
    assert.ok(codes.includes('blank-undescribed'));
  });
});
