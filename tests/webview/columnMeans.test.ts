import assert from 'node:assert/strict';
import { columnMeans } from '../../webview/src/draw/columnMeans';
import { scale } from '../../webview/src/geometry/scale';
import { seeded } from '../support/random';

const visible = { from: 0, to: 100 };
const xScale = scale(visible, 50, 450);
const yScale = scale({ from: -10, to: 10 }, 200, 0);

/** Trapezoids over a list of points. */
function integral(points: readonly (readonly [number, number])[]): number {
  return points.slice(1).reduce((sum, [x, y], i) => sum + ((x - points[i][0]) * (y + points[i][1])) / 2, 0);
}

describe('the outline of an area', () => {
  it('of a noisy curve has a point for each column of pixels and keeps the area', () => {
    const random = seeded(5);
    const samples = Array.from({ length: 4001 }, (_, i) => ({
      x: 20 + i * 0.01,
      y: 6 * Math.exp(-(((i - 2000) / 600) ** 2)) + 0.5 * random.normal(),
    }));
    const outline = columnMeans(samples, { low: 20, high: 60, visible, xScale, yScale });
    // 40 of 100 units on 400 pixels: 25 samples a pixel.
    assert.ok(outline.length >= 160 && outline.length <= 161, String(outline.length));
    const every = samples.map(({ x, y }) => [xScale.px(x), yScale.px(y)] as const);
    const [kept, all] = [integral(outline), integral(every)];
    // The first and last column end at their mean: at most a pixel of the 160.
    assert.ok(Math.abs(kept / all - 1) < 0.008, `${kept} of ${all}`);
    for (let i = 1; i < outline.length; i++) assert.ok(outline[i][0] > outline[i - 1][0]);
  });

  it('of few samples goes through each of them', () => {
    const samples = [10, 20, 30, 40].map((x) => ({ x, y: x / 10 }));
    assert.deepEqual(columnMeans(samples, { low: 20, high: 30, visible, xScale, yScale }), [
      [xScale.px(20), yScale.px(2)],
      [xScale.px(30), yScale.px(3)],
    ]);
  });

  it('goes on to one sample beyond the view and never beyond the window', () => {
    const samples = [-30, -20, 40, 120, 130].map((x) => ({ x, y: 1 }));
    const outline = (low: number, high: number): number[] =>
      columnMeans(samples, { low, high, visible, xScale, yScale }).map(([x]) => Math.round(xScale.value(x)));
    assert.deepEqual(outline(-25, 125), [-20, 40, 120]);
    assert.deepEqual(outline(-100, 200), [-20, 40, 120]);
    assert.deepEqual(outline(10, 90), [40]);
    assert.deepEqual(outline(41, 90), []);
  });

  it('leaves out what is no number', () => {
    const samples = [10, 20, 30].map((x) => ({ x, y: x === 20 ? NaN : 1 }));
    assert.equal(columnMeans(samples, { low: 0, high: 100, visible, xScale, yScale }).length, 2);
  });
});
