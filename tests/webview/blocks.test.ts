import assert from 'node:assert/strict';
import { float64Base64 } from '../../server/src/engine/curves/float64Base64';
import type { SamplesAnswer } from '../../server/src/protocol/view';
import {
  floatsFrom,
  firstNotBelow,
  noBlocks,
  ordinateRange,
  suffices,
  withAnswer,
  type Asked,
  type CurveBlocks,
} from '../../webview/src/state/blocks';

const generation = (revision: number) => ({ uri: 'file:///a.gloss', version: revision, revision });
const answer = (revision: number, xs: number[], complete = false): SamplesAnswer => ({
  generation: generation(revision),
  curves: [
    {
      id: 'mass/heating 1',
      x: float64Base64(Float64Array.from(xs)),
      y: float64Base64(Float64Array.from(xs, (x) => 10 * x)),
      count: xs.length,
      complete,
    },
  ],
});
const asked = (revision: number, from: number, to: number, perPixel: number, isWhole: boolean): Asked => ({
  generation: generation(revision),
  range: { from, to },
  perPixel,
  isWhole,
});
const curve = (store: ReadonlyMap<string, CurveBlocks>): CurveBlocks => store.get('mass/heating 1') ?? noBlocks;

describe('samples from the server', () => {
  it('are bit for bit those that were sent', () => {
    const values = Float64Array.from([0, -0, 1 / 3, 1e-300, -1e300, Math.PI, NaN, Infinity]);
    const read = floatsFrom(float64Base64(values), values.length);
    assert.deepEqual(
      read && [...read].map((v) => (Object.is(v, -0) ? '-0' : String(v))),
      [...values].map((v) => (Object.is(v, -0) ? '-0' : String(v))),
    );
  });

  it('that are broken are none, and what was there stays', () => {
    assert.equal(floatsFrom('***', 1), null);
    assert.equal(floatsFrom('AAAA', 1), null);
    const good = withAnswer(new Map(), answer(1, [1, 2, 3]), asked(1, 0, 10, 1, true));
    const [one] = answer(2, [5]).curves;
    const broken = withAnswer(
      good,
      { generation: generation(2), curves: [{ ...one, count: 7 }] },
      asked(2, 0, 10, 1, true),
    );
    assert.deepEqual(curve(broken), curve(good));
  });

  it('of a close look are drawn with the coarse ones around them, ascending, none twice', () => {
    const whole = withAnswer(new Map(), answer(1, [0, 2, 4, 6, 8, 10]), asked(1, 0, 10, 1, true));
    const both = withAnswer(whole, answer(1, [4, 4.5, 5, 6]), asked(1, 4, 6, 0.1, false));
    assert.deepEqual(
      curve(both).drawn.map((s) => s.x),
      [0, 2, 4, 4.5, 5, 6, 8, 10],
    );
    assert.deepEqual(
      curve(both).drawn.map((s) => s.y),
      [0, 20, 40, 45, 50, 60, 80, 100],
    );
  });

  it('of an older picture are not mixed with those of a newer one', () => {
    const old = withAnswer(
      withAnswer(new Map(), answer(1, [0, 10]), asked(1, 0, 10, 1, true)),
      answer(1, [4, 5]),
      asked(1, 4, 5, 0.1, false),
    );
    const next = withAnswer(old, answer(2, [1, 9]), asked(2, 0, 10, 1, true));
    assert.deepEqual(
      curve(next).drawn.map((s) => s.x),
      [1, 9],
    );
  });

  it('are enough where they are as close as a pixel, or all there are, and for this very picture', () => {
    const coarse = withAnswer(new Map(), answer(1, [0, 5, 10]), asked(1, 0, 10, 1, true));
    assert.ok(suffices(curve(coarse), { from: 0, to: 10 }, 1, 1));
    assert.ok(!suffices(curve(coarse), { from: 0, to: 10 }, 0.5, 1));
    assert.ok(!suffices(curve(coarse), { from: 0, to: 10 }, 1, 2), 'another revision');
    assert.ok(!suffices(curve(coarse), { from: -1, to: 10 }, 1, 1), 'outside what was asked');
    const all = withAnswer(new Map(), answer(1, [0, 5, 10], true), asked(1, 0, 10, 1, true));
    assert.ok(suffices(curve(all), { from: 4, to: 4.001 }, 1e-6, 1));
  });

  it('tell the range of the ordinate in view', () => {
    const samples = [3, 1, 7, 5].map((y, x) => ({ x, y }));
    assert.deepEqual(ordinateRange(samples, { from: 1, to: 2 }), { from: 1, to: 7 });
    assert.equal(ordinateRange(samples, { from: 1.2, to: 1.4 }), null);
    assert.equal(firstNotBelow(samples, 2), 2);
    assert.equal(firstNotBelow(samples, 2, true), 3);
    assert.equal(firstNotBelow(samples, 9), 4);
  });
});
