import assert from 'node:assert/strict';
import fc from 'fast-check';
import { overlap, placedLabels } from '../../webview/src/geometry/labels';
import { laidTabs } from '../../webview/src/geometry/tabs';

const bounds = { left: 50, top: 0, width: 900, height: 260 };
const points = fc.array(
  fc.record({ x: fc.double({ min: 55, max: 945, noNaN: true }), y: fc.double({ min: 10, max: 250, noNaN: true }) }),
  { minLength: 1, maxLength: 6 },
);

describe('labels of marks', () => {
  it('never cover one another nor leave the lane, for any six points of a lane of usual size', () => {
    fc.assert(
      fc.property(points, (list) => {
        const wanted = list.map((p, i) => ({ id: String(i), ...p, width: 128, height: 17 }));
        const boxes = [...placedLabels(wanted, bounds).values()];
        assert.equal(boxes.length, list.length);
        boxes.forEach((a, i) => {
          assert.ok(a.left >= 50 && a.left + a.width <= 950 && a.top >= 0 && a.top + a.height <= 260);
          for (const b of boxes.slice(i + 1)) assert.equal(overlap(a, b), 0);
        });
      }),
    );
  });

  it('stand near their points', () => {
    const [box] = placedLabels([{ id: 'a', x: 400, y: 100, width: 100, height: 17 }], bounds).values();
    assert.ok(box.left - 400 < 20 && Math.abs(box.top + 8.5 - 100) < 30);
  });

  it('keep clear of other points where there is room', () => {
    const dot = { left: 410, top: 80, width: 8, height: 8 };
    const [box] = placedLabels([{ id: 'a', x: 400, y: 100, width: 100, height: 17 }], bounds, [dot]).values();
    assert.equal(overlap(box, dot), 0);
  });
});

describe('tabs of bands', () => {
  const view = { left: 60, right: 800 };
  const taken = [
    { left: 0, right: 120 },
    { left: 700, right: 810 },
  ];

  it('never cover one another nor the name and the reading of their lane', () => {
    const bands = fc.array(
      fc.record({
        left: fc.double({ min: -100, max: 900, noNaN: true }),
        size: fc.double({ min: 1, max: 400, noNaN: true }),
        width: fc.integer({ min: 20, max: 160 }),
      }),
      { maxLength: 25 },
    );
    fc.assert(
      fc.property(bands, (list) => {
        const wanted = list.map((b, i) => ({ id: String(i), left: b.left, right: b.left + b.size, width: b.width }));
        const tabs = laidTabs(wanted, taken, view);
        const seen = wanted.filter((w) => w.right >= view.left && w.left <= view.right);
        assert.equal(tabs.length, seen.length, 'every band in view has a tab');
        tabs.forEach((tab, i) => {
          assert.ok(tab.left >= view.left && tab.left + tab.width <= view.right);
          const others = [
            ...tabs.slice(i + 1),
            ...(tab.row === 0 ? taken.map((t) => ({ row: 0, left: t.left, width: t.right - t.left })) : []),
          ];
          for (const other of others.filter((o) => o.row === tab.row)) {
            assert.ok(tab.left + tab.width <= other.left || other.left + other.width <= tab.left);
          }
        });
      }),
    );
  });

  it('begin at the left edge of their band, or where the view begins', () => {
    const [cut, whole] = laidTabs(
      [
        { id: 'cut', left: -50, right: 300, width: 60 },
        { id: 'whole', left: 400, right: 500, width: 60 },
      ],
      [],
      view,
    );
    assert.deepEqual([cut.left, whole.left], [60, 400]);
  });

  it('of bands out of view are none', () => {
    assert.deepEqual(laidTabs([{ id: 'far', left: 900, right: 990, width: 60 }], [], view), []);
  });
});
