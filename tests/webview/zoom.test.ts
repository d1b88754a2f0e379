import assert from 'node:assert/strict';
import fc from 'fast-check';
import { dataRange, looseLimits } from '../../webview/src/geometry/abscissa';
import {
  dragged,
  held,
  outOfView,
  padded,
  panned,
  shows,
  wheelFactor,
  zoomAbout,
} from '../../webview/src/geometry/zoom';
import { scale } from '../../webview/src/geometry/scale';
import { visibleRange } from '../../webview/src/draw/frame';

const near = (a: number, b: number, by = 1e-9): boolean =>
  Math.abs(a - b) <= by * Math.max(1, Math.abs(a), Math.abs(b));
const range = fc
  .tuple(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.double({ min: 1e-2, max: 1e4, noNaN: true }))
  .map(([from, width]) => ({ from, to: from + width }));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('zooming', () => {
  it('leaves the point under the pointer where it is on the screen', () => {
    fc.assert(
      fc.property(range, share, fc.double({ min: 0.1, max: 10, noNaN: true }), (r, at, factor) => {
        const centre = r.from + at * (r.to - r.from);
        const next = zoomAbout(r, centre, factor);
        assert.ok(near((centre - next.from) / (next.to - next.from), at, 1e-6));
        assert.ok(near(next.to - next.from, factor * (r.to - r.from), 1e-6));
      }),
    );
  });

  it('in and out again by the wheel comes back to the same range', () => {
    const there = { from: 25, to: 1000 };
    const closer = zoomAbout(there, 300, wheelFactor(-240));
    const back = zoomAbout(closer, 300, wheelFactor(240));
    assert.ok(closer.to - closer.from < there.to - there.from);
    assert.ok(near(back.from, there.from) && near(back.to, there.to));
  });

  it('takes no single turn of the wheel farther than two and a half times', () => {
    assert.ok(wheelFactor(100_000) <= 2.5 && wheelFactor(-100_000) >= 0.4);
    assert.equal(wheelFactor(0), 1);
  });

  it('takes a drag along an axis as a range, whichever way it went, and a twitch as nothing', () => {
    assert.deepEqual(dragged(700, 300, 120), { from: 300, to: 700 });
    assert.deepEqual(dragged(300, 700, 120), { from: 300, to: 700 });
    assert.equal(dragged(300, 301, 3), null);
    assert.equal(dragged(300, 300, 20), null);
  });
});

describe('the range looked at', () => {
  it('stays inside its limits and keeps its width when panned against the end', () => {
    fc.assert(
      fc.property(range, fc.double({ min: -1e5, max: 1e5, noNaN: true }), (r, by) => {
        const limits = padded(r, 1);
        const moved = held(panned(r, by), limits, 1e-6);
        assert.ok(moved.from >= limits.from - 1e-6 && moved.to <= limits.to + 1e-6);
        assert.ok(near(moved.to - moved.from, r.to - r.from, 1e-6));
      }),
    );
  });

  it('is never narrower than what can be told apart', () => {
    const limits = { from: 0, to: 1000 };
    const tight = held({ from: 500, to: 500.000001 }, limits, 0.01);
    assert.ok(near(tight.to - tight.from, 0.01) && near((tight.from + tight.to) / 2, 500));
  });

  it('returns to the data that are there now, not to those of the first picture', () => {
    const part = (to: number) => [{ name: 'heating 1', shown: true, start: 0, end: 60, from: 25, to }];
    const before = dataRange(part(600), 'temperature');
    const now = dataRange(part(900), 'temperature');
    assert.deepEqual(visibleRange(null, before), before);
    assert.deepEqual(visibleRange(null, now), now);
    assert.ok(now.to > 900 && before.to < 620);
  });

  it('stays a chosen one while the data change about it', () => {
    const chosen = { from: 100, to: 200 };
    assert.deepEqual(visibleRange(chosen, { from: 25, to: 600 }), chosen);
    assert.deepEqual(visibleRange(chosen, { from: 25, to: 900 }), chosen);
  });

  it('moves only as far as a band needs, and not at all where the band is in view', () => {
    const view = { from: 100, to: 200 };
    assert.equal(shows(view, { from: 120, to: 180 }), view);
    const right = shows(view, { from: 250, to: 260 });
    assert.ok(near(right.to - right.from, 100) && right.to >= 260 && right.from <= 250);
    const left = shows(view, { from: 20, to: 30 });
    assert.ok(near(left.to - left.from, 100) && left.from <= 20);
    const wide = shows(view, { from: 300, to: 800 });
    assert.ok(wide.from <= 300 && wide.to >= 800);
    assert.ok(outOfView(view, { from: 201, to: 300 }) && !outOfView(view, { from: 199, to: 300 }));
  });

  it('covers the parts shown, in °C and in s, and all of them where none is shown', () => {
    const parts = [
      { name: 'heating 1', shown: true, start: 0, end: 600, from: 25, to: 125 },
      { name: 'cooling 1', shown: false, start: 600, end: 900, from: 125, to: 5 },
    ];
    const warm = dataRange(parts, 'temperature');
    assert.ok(warm.from < 25 && warm.from > 20 && warm.to > 125 && warm.to < 130);
    const time = dataRange(parts, 'time');
    assert.ok(time.from < 0 && time.to > 600 && time.to < 620);
    const none = dataRange(
      parts.map((p) => ({ ...p, shown: false })),
      'temperature',
    );
    assert.ok(none.from < 5);
    assert.ok(looseLimits(warm).from < warm.from);
  });

  it('is a range also for a run without a temperature and for one of a single temperature', () => {
    const bare = { name: 'whole', shown: true, start: 0, end: 60, from: NaN, to: NaN };
    assert.deepEqual(Object.values(dataRange([bare], 'temperature')).map(Number.isFinite), [true, true]);
    const still = dataRange([{ ...bare, from: 300, to: 300 }], 'temperature');
    assert.ok(still.to > still.from);
  });
});

describe('the scale of an axis', () => {
  it('maps values to pixels and back, also upward', () => {
    const down = scale({ from: 20, to: 120 }, 400, 100);
    assert.equal(down.px(20), 400);
    assert.equal(down.px(120), 100);
    assert.ok(near(down.value(down.px(77.7)), 77.7));
  });
});
