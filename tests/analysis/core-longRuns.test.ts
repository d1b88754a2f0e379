import assert from 'node:assert/strict';
import { blockMeans } from '../../server/src/analysis/blockMeans';
import { crossing } from '../../server/src/analysis/crossing';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { extremesOver } from '../../server/src/analysis/extremes';
import { passages } from '../../server/src/analysis/passage';
import { thinnedTo } from '../../server/src/analysis/thinned';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { seeded } from '../support/random';
import { syntheticRun } from '../support/syntheticRun';

/** An uneven grid of so many readings that fall from 20 to 19 and scatter. */
function noisyFall(n: number, seed: number): Curve {
  const random = seeded(seed);
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    x[i] = 0.03 * i + 0.01 * random.uniform();
    y[i] = 20 - 1 / (1 + Math.exp(-(x[i] - 0.015 * n) / 20)) + 0.002 * random.normal();
  }
  return checkedCurve(x, y)!;
}

// What is looked up block by block on long runs is what a look at every reading gives.
describe('A long run', () => {
  const n = 20_011;

  it('has averages of blocks that are those of its readings, the last block too', () => {
    const curve = noisyFall(n, 1);
    for (const wanted of [32, 64, 1024]) {
      const { means, size } = thinnedTo(curve, 0.0301 * wanted);
      assert.equal(size, wanted);
      const direct = blockMeans(curve.x, curve.y, { first: 0, last: n }, size);
      assert.equal(means.x.length, direct.x.length);
      direct.x.forEach((x, k) => {
        assert.ok(Math.abs(means.x[k] - x) <= 1e-12 * Math.max(1, x), `abscissa of block ${k} of ${size}`);
        assert.ok(Math.abs(means.y[k] - direct.y[k]) <= 1e-13 * 20, `ordinate of block ${k} of ${size}`);
      });
      assert.deepEqual(means.counts, direct.counts);
    }
  });

  it('has the extremes of its readings over any range', () => {
    const curve = noisyFall(n, 2);
    const random = seeded(3);
    for (let k = 0; k < 300; k++) {
      const first = Math.floor(n * random.uniform());
      const last = first + 1 + Math.floor((k % 3 === 0 ? 100 : n - first - 1) * random.uniform());
      const part = curve.y.slice(first, Math.min(n, last));
      const found = extremesOver(curve, { first, last: Math.min(n, last) });
      assert.deepEqual(found, {
        least: part.reduce((a, b) => Math.min(a, b)),
        most: part.reduce((a, b) => Math.max(a, b)),
      });
    }
  });

  it('passes a level where a look at every reading finds it', () => {
    const curve = noisyFall(n, 4);
    const noise = estimateNoise(curve);
    const { x, y } = curve;
    for (const value of [19.95, 19.5, 19.25, 19.001]) {
      for (const which of ['first', 'last'] as const) {
        const options = { of: 'signal', level: { value }, way: 'either', which, smooth: 5, noise } as const;
        const found = crossing(curve, { from: x[0], to: x[n - 1] }, options);
        const band = Math.min(3 * noise.sigma, (Math.max(...y) - value) / 2, (value - Math.min(...y)) / 2);
        const expected = passages(x, (i) => y[i] - value, 0, n, band).at(which === 'first' ? 0 : -1);
        assert.equal(found?.at.value, expected?.time, `${which} passage of ${value}`);
        assert.equal(found?.crossings, expected?.crossings);
      }
    }
  });

  it('gives back what was put in within three standard uncertainties', async () => {
    const steps = [
      { at: 300, width: 8, loss: 10 },
      { at: 600, width: 10, loss: 25 },
    ];
    const data = syntheticRun({ every: 0.06, steps });
    const engine = new Engine(new MemoryHost({ 'a.csv': data }, '/lab'));
    const { results } = await engine.evaluate(
      '/lab/a.gloss',
      'run "a.csv"\n  mass 20.000 ± 0.001 mg\nstep First 200..420 °C\nstep Second 480..750 °C\nresidue Rest at 950 °C\n',
    );
    const truths = {
      'First.loss': 10,
      'First.inflection': 300,
      'Second.loss': 25,
      'Second.inflection': 600,
      'Rest.remaining': 65,
    };
    for (const [id, truth] of Object.entries(truths)) {
      const { value, uncertainty } = results.find((r) => r.id === id)!;
      assert.ok(value !== null && uncertainty !== null);
      assert.ok(Math.abs(value - truth) <= 3 * uncertainty, `${id}: ${value} ± ${uncertainty}, put in ${truth}`);
    }
    assert.ok(data.split('\n').length > 97_000);
  });
});
