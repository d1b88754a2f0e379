import assert from 'node:assert/strict';
import fc from 'fast-check';
import { niceStep, ticks } from '../../../server/src/presentation/plot/ticks';

const minus = '\u2212';

describe('the marks of an axis', () => {
  it('stand at round numbers with the decimals of their step', () => {
    const texts = (from: number, to: number, most: number, per = 1): string[] =>
      ticks({ from, to }, most, per).map((t) => t.text);
    assert.deepEqual(texts(30, 1000, 6), ['200', '400', '600', '800', '1000']);
    assert.deepEqual(texts(-1.1, 1.1, 5), [`${minus}1.0`, `${minus}0.5`, '0.0', '0.5', '1.0']);
    assert.deepEqual(texts(99.97, 100.03, 3), ['99.98', '100.00', '100.02']);
    assert.deepEqual(
      texts(0, 3e-9, 4),
      ['0', '1e-9', '2e-9', '3e-9'].map((t) => t.replace('-', minus)),
    );
    assert.deepEqual(texts(600, 1800, 4, 60), ['10', '15', '20', '25', '30']);
  });

  it('are values of the axis where it is labelled in another unit', () => {
    assert.deepEqual(
      ticks({ from: 600, to: 1800 }, 4, 60).map((t) => t.value),
      [600, 900, 1200, 1500, 1800],
    );
  });

  it('are few enough, evenly apart, inside the range, and say their value', () => {
    const checked = fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.double({ min: -7, max: 7, noNaN: true }),
      fc.integer({ min: 1, max: 15 }),
      (from, size, most) => {
        const to = from + 10 ** size;
        const found = ticks({ from, to }, most);
        assert.ok(found.length <= most + 1);
        const step = niceStep((to - from) / most).step;
        found.forEach(({ value, text }, i) => {
          assert.ok(value >= from - step * 1e-6 && value <= to + step * 1e-6);
          assert.ok(Math.abs(Number(text.replaceAll(minus, '-')) - value) <= step * 1e-6 + Math.abs(value) * 1e-12);
          if (i > 0)
            assert.ok(Math.abs(value - found[i - 1].value - step) < step * 1e-3 + Math.abs(value) * 4 * Number.EPSILON);
        });
        // Two thirds of the room a mark may have are used, save for ranges that are lost in their own digits.
        if (10 ** size > Math.abs(from) * 1e-9)
          assert.ok(found.length >= Math.floor(most / 2.5) - 1, `${found.length} of ${most}`);
      },
    );
    fc.assert(checked, { numRuns: 500, seed: 1 });
  });

  it('are none where the range is empty, turned round, or no number', () => {
    for (const range of [
      { from: 1, to: 1 },
      { from: 2, to: 1 },
      { from: NaN, to: 1 },
      { from: 0, to: Infinity },
      { from: 1e16, to: 1e16 + 2 },
    ]) {
      assert.ok(ticks(range, 5).length <= 3);
    }
    assert.deepEqual(ticks({ from: 1, to: 1 }, 5), []);
    assert.deepEqual(ticks({ from: NaN, to: 1 }, 5), []);
  });

  it('step by 1, 2 or 5', () => {
    assert.deepEqual(
      [0.011, 0.02, 0.3, 1, 6, 51].map((s) => niceStep(s).step),
      [0.02, 0.02, 0.5, 1, 10, 100],
    );
  });
});
