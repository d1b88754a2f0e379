import assert from 'node:assert/strict';
import fc from 'fast-check';
import { ascending } from '../../server/src/engine/curves/ascending';
import { extremePyramid, ExtremeSearch } from '../../server/src/engine/curves/extremePyramid';
import { float64Base64 } from '../../server/src/engine/curves/float64Base64';
import {
  firstAbove,
  firstNotBelow,
  nearestPlace,
  samplesIn,
  type Drawn,
} from '../../server/src/engine/curves/samplesIn';
import { seeded } from '../support/random';

// Every claim is checked against a count by brute force over all samples, without binary search, pyramid or order.

interface Point {
  readonly x: number;
  readonly y: number;
}

function drawnOf(x: readonly number[], y: readonly number[]): Drawn {
  const values = Float64Array.from(y);
  const axis = ascending(Float64Array.from(x));
  return { axis, values, pyramid: () => extremePyramid({ values, order: axis.order, length: axis.x.length }) };
}

/** The samples to be drawn, found by looking at every sample in every column. */
function bruteForce(drawn: Drawn, from: number, to: number, pixels: number): Point[] {
  const { axis, values } = drawn;
  const all = [...axis.x].map((x, place) => ({ x, y: values[axis.order === null ? place : axis.order[place]] }));
  const inside = all.filter((p) => p.x >= from && p.x <= to);
  const before = all.filter((p) => p.x < from).slice(-1);
  const after = all.filter((p) => p.x > to).slice(0, 1);
  if (inside.length <= 4 * pixels) return [...before, ...inside, ...after];
  const width = (to - from) / pixels;
  const columns: Point[][] = Array.from({ length: pixels }, () => []);
  for (const p of inside) {
    let column = 0;
    while (column < pixels - 1 && p.x >= from + (column + 1) * width) column++;
    columns[column].push(p);
  }
  return [
    ...before,
    ...columns.flatMap((points) => {
      if (points.length <= 4) return points;
      const ys = points.map((p) => p.y);
      const least = ys.indexOf(Math.min(...ys));
      const greatest = ys.indexOf(Math.max(...ys));
      const kept = [...new Set([0, least, greatest, points.length - 1])].sort((a, b) => a - b);
      return kept.map((i) => points[i]);
    }),
    ...after,
  ];
}

function pointsOf(drawn: Drawn, from: number, to: number, pixels: number): Point[] {
  const { x, y, count } = samplesIn(drawn, from, to, pixels, 1);
  assert.equal(x.length, count);
  assert.equal(y.length, count);
  return Array.from(x, (v, i) => ({ x: v, y: y[i] }));
}

/** An abscissa as instruments give it. */
const shapes: Readonly<Record<string, (i: number, n: number, noise: number) => number>> = {
  'rising ramp': (i) => 30 + 0.1 * i,
  'falling ramp': (i) => 500 - 0.1 * i,
  'rising ramp with noise': (i, _, noise) => 30 + 0.01 * i + 0.2 * noise,
  'falling ramp with noise': (i, _, noise) => 500 - 0.01 * i + 0.2 * noise,
  hold: (_, __, noise) => 850 + 0.1 * noise,
  'values repeated': (i) => Math.floor(i / 7),
  'loop up and down': (i, n) => 300 - Math.abs(300 - (600 * i) / n),
};

describe('samples for a visible range', () => {
  for (const [name, shape] of Object.entries(shapes)) {
    it(`are as many as counted by brute force, and the same ones (${name})`, () => {
      const checked = fc.property(
        fc.integer({ min: 0, max: 3000 }),
        fc.integer({ min: 1, max: 40 }),
        fc.tuple(fc.double({ min: -0.2, max: 1.2, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
        fc.integer(),
        (n, pixels, [start, share], seed) => {
          const random = seeded(seed);
          const x = Array.from({ length: n }, (_, i) => shape(i, n, random.normal()));
          const y = x.map(() => Math.round(20 * random.normal()) / 8);
          const drawn = drawnOf(x, y);
          const low = Math.min(...x, 0);
          const span = Math.max(...x, 1) - low;
          const from = low + start * span;
          const to = from + share * span;
          assert.deepEqual(pointsOf(drawn, from, to, pixels), bruteForce(drawn, from, to, pixels));
        },
      );
      fc.assert(checked, { numRuns: 60, seed: 1 });
    });
  }

  it('of two thousand samples in ten columns: four a column and the neighbours, the spike at its own place', () => {
    const x = Array.from({ length: 2000 }, (_, i) => i / 4);
    const y = x.map((v) => (v === 156.75 ? 1 : 0.001 * Math.sin(v)));
    const points = pointsOf(drawnOf(x, y), 100, 300, 10);
    assert.ok(points.length <= 42, String(points.length));
    assert.deepEqual(
      points.filter((p) => p.y === 1),
      [{ x: 156.75, y: 1 }],
    );
    assert.equal(points[0].x, 99.75);
    assert.equal(points[points.length - 1].x, 300.25);
  });

  it('are none of an empty curve, the one of a single sample, and that one as neighbour beside the range', () => {
    assert.deepEqual(pointsOf(drawnOf([], []), 0, 1, 10), []);
    assert.deepEqual(pointsOf(drawnOf([5], [2]), 0, 10, 10), [{ x: 5, y: 2 }]);
    assert.deepEqual(pointsOf(drawnOf([5], [2]), 6, 10, 10), [{ x: 5, y: 2 }]);
    assert.deepEqual(pointsOf(drawnOf([5], [2]), 10, 6, 10), []);
  });

  it('at one abscissa, where a thousand samples lie: first, least, greatest and last', () => {
    const y = Array.from({ length: 1000 }, (_, i) => ((i * 37) % 1000) / 10);
    const drawn = drawnOf(new Array<number>(1000).fill(850), y);
    const points = pointsOf(drawn, 850, 850, 1);
    assert.deepEqual(
      points.map((p) => p.y),
      [
        y[0],
        ...[0, 99.9]
          .map((v) => [y.indexOf(v), v])
          .sort((a, b) => a[0] - b[0])
          .map(([, v]) => v),
        y[999],
      ].filter((v, i, all) => i === 0 || v !== all[i - 1]),
    );
  });

  it('say that they are complete exactly where every sample of the range is in them', () => {
    const x = Array.from({ length: 5000 }, (_, i) => i);
    const drawn = drawnOf(
      x,
      x.map((v) => v % 17),
    );
    for (const [from, to, pixels] of [
      [0, 4999, 100],
      [100, 499, 100],
      [100, 500, 100],
      [2000, 2009, 1],
    ]) {
      const found = samplesIn(drawn, from, to, pixels, 1);
      const inside = [...found.x].filter((v) => v >= from && v <= to).length;
      assert.equal(found.complete, inside === to - from + 1, `${from}..${to} in ${pixels}`);
    }
  });

  it('reach every raw sample when zoomed in, each exactly once, also of a noisy cooling ramp', () => {
    const random = seeded(7);
    const x = Array.from({ length: 20_000 }, (_, i) => 500 - 0.02 * i + 0.1 * random.normal());
    const y = x.map(() => random.normal());
    const drawn = drawnOf(x, y);
    const seen: Point[] = [];
    const zoom = (from: number, to: number): void => {
      const found = samplesIn(drawn, from, to, 50, 1);
      const middle = (from + to) / 2;
      if (!found.complete) {
        zoom(from, middle);
        zoom(middle, to);
        return;
      }
      found.x.forEach((v, i) => {
        if (v >= from && v < to) seen.push({ x: v, y: found.y[i] });
      });
    };
    zoom(90, 510);
    const key = (p: Point): string => `${p.x} ${p.y}`;
    assert.deepEqual(seen.map(key).sort(), x.map((v, i) => key({ x: v, y: y[i] })).sort());
  });

  it('are multiplied by the factor of their unit and otherwise untouched', () => {
    const found = samplesIn(drawnOf([1, 2, 3], [0.1, 0.7, 0.3]), 0, 4, 10, -8);
    assert.deepEqual([...found.y], [-0.8, -8 * 0.7, -8 * 0.3]);
    assert.deepEqual([...found.x], [1, 2, 3]);
  });
});

describe('the ascending order', () => {
  it('is a stable sort of the finite values, by whatever way they came', () => {
    const value = fc.oneof(
      { weight: 8, arbitrary: fc.integer({ min: -50, max: 50 }) },
      fc.constantFrom(NaN, Infinity, -Infinity),
    );
    const checked = fc.property(fc.array(value, { maxLength: 400 }), fc.boolean(), (list, sorted) => {
      const values = Float64Array.from(sorted ? [...list].sort((a, b) => a - b) : list);
      const { x, order } = ascending(values);
      const indices = [...(order ?? values.keys())];
      const finite = [...values.keys()].filter((i) => Number.isFinite(values[i]));
      assert.deepEqual(
        [...indices].sort((a, b) => a - b),
        finite,
      );
      assert.deepEqual(
        [...x],
        indices.map((i) => values[i]),
      );
      for (let k = 1; k < x.length; k++) assert.ok(x[k] >= x[k - 1]);
      const down = finite.length > 0 && values[finite[finite.length - 1]] < values[finite[0]];
      for (let k = 1; k < x.length; k++) {
        if (x[k] === x[k - 1]) assert.ok(down ? indices[k] < indices[k - 1] : indices[k] > indices[k - 1]);
      }
    });
    fc.assert(checked, { numRuns: 400, seed: 2 });
  });

  it('keeps the very array of a ramp that only rises', () => {
    const ramp = Float64Array.from([1, 2, 2, 3]);
    assert.equal(ascending(ramp).x, ramp);
    assert.equal(ascending(ramp).order, null);
  });
});

describe('the pyramid of extremes', () => {
  it('finds the first least and greatest value of any stretch, in any order', () => {
    const random = seeded(3);
    const values = Float64Array.from({ length: 10_000 }, () => random.integer(500));
    const order = Uint32Array.from(values.keys()).reverse();
    for (const drawn of [
      { values, order: null, length: values.length },
      { values, order, length: values.length },
    ]) {
      const search = new ExtremeSearch(extremePyramid(drawn), drawn);
      const inOrder = drawn.order === null ? [...values] : [...order].map((i) => values[i]);
      for (let k = 0; k < 300; k++) {
        const first = random.integer(values.length);
        const last = first + 1 + random.integer(values.length - first);
        search.between(first, last);
        const part = inOrder.slice(first, last);
        assert.equal(search.least, first + part.indexOf(Math.min(...part)));
        assert.equal(search.greatest, first + part.indexOf(Math.max(...part)));
      }
    }
  });
});

describe('places on an abscissa', () => {
  it('are those a search from the start finds', () => {
    const list = fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 30 });
    const checked = fc.property(list, fc.integer({ min: -2, max: 32 }), (numbers, at) => {
      const x = Float64Array.from(numbers.sort((a, b) => a - b));
      const or = (found: number): number => (found < 0 ? x.length : found);
      assert.equal(firstNotBelow(x, at, 0, x.length), or(x.findIndex((v) => v >= at)));
      assert.equal(firstAbove(x, at, 0, x.length), or(x.findIndex((v) => v > at)));
      const nearest = nearestPlace(x, at);
      if (x.length === 0) assert.equal(nearest, -1);
      else assert.equal(Math.abs(x[nearest] - at), Math.min(...[...x].map((v) => Math.abs(v - at))));
    });
    fc.assert(checked, { numRuns: 300, seed: 4 });
  });
});

describe('numbers in base64', () => {
  it('are the bytes that another encoder writes, and come back bit for bit', () => {
    const checked = fc.property(fc.array(fc.double(), { maxLength: 50 }), (numbers) => {
      const values = Float64Array.from(numbers);
      const text = float64Base64(values);
      const buffer = Buffer.alloc(8 * values.length);
      values.forEach((v, i) => buffer.writeDoubleLE(v, 8 * i));
      assert.equal(text, buffer.toString('base64'));
    });
    fc.assert(checked, { numRuns: 200, seed: 5 });
    const long = Float64Array.from({ length: 40_001 }, (_, i) => Math.sqrt(i));
    const back = Buffer.from(float64Base64(long.subarray(1)), 'base64');
    for (const i of [0, 1, 20_000, 39_999]) assert.equal(back.readDoubleLE(8 * i), Math.sqrt(i + 1));
  });
});
