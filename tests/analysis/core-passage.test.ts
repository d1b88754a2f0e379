import assert from 'node:assert/strict';
import fc from 'fast-check';
import { passages, type Passage } from '../../server/src/analysis/passage';
import { firstAfter, firstAtOrAfter, samplesAround, samplesIn } from '../../server/src/analysis/range';
import { prominent } from '../../server/src/analysis/rateMaxima';

function of(values: readonly number[], band = 0, hold = 0): Passage[] {
  const x = Float64Array.from(values, (_, i) => i);
  return passages(x, (i) => values[i], 0, values.length, band, hold);
}

describe('A passage of a signal through a level', () => {
  it('lies exactly where the straight line between two readings meets it', () => {
    assert.deepEqual(of([-1, -1, 3, 3]), [{ time: 1.25, before: 1, direction: 'rising', crossings: 1 }]);
    assert.deepEqual(of([2, 1, -3]), [{ time: 1.25, before: 1, direction: 'falling', crossings: 1 }]);
  });

  it('on a reading lies on that reading', () => {
    assert.deepEqual(
      of([-2, -1, 0, 1]).map((p) => p.time),
      [2],
    );
    assert.deepEqual(
      of([2, 1, 0, -1]).map((p) => p.time),
      [2],
    );
  });

  it('is none where the signal touches the level and turns back', () => {
    assert.deepEqual(of([-2, 0, -2]), []);
    assert.deepEqual(of([2, 0, 2]), []);
  });

  it('without noise is every crossing', () => {
    assert.deepEqual(
      of([1, -1, 1, -1]).map((p) => p.direction),
      ['falling', 'rising', 'falling'],
    );
  });

  it('with noise is one, at the middle of the crossings to and fro', () => {
    const found = of([-9, -5, 1, -1, 1, -1, 1, 6, 9], 3);
    assert.equal(found.length, 1);
    assert.equal(found[0].crossings, 5);
    assert.equal(found[0].time, 3.5);
  });

  it('never happened where the signal comes back without having been beyond the band', () => {
    assert.deepEqual(of([-9, -5, 1, 2, -1, -9], 3), []);
  });

  it('must hold where it is asked to: a lobe shorter than that is none', () => {
    const values = [-1, -1, 5, 5, -1, -1, -1, 5, 5, 5, 5, 5, 5];
    assert.deepEqual(
      of(values).map((p) => p.direction),
      ['rising', 'falling', 'rising'],
    );
    const held = of(values, 0, 4);
    assert.equal(held.length, 1);
    assert.ok(held[0].time > 6);
  });

  it('alternates in direction, and every one lies between two readings of opposite sign', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 2, maxLength: 60 }),
        fc.nat(4),
        fc.nat(5),
        (v, band, hold) => {
          const found = of(v, band, hold);
          found.forEach((p, k) => {
            if (k > 0) {
              assert.notEqual(p.direction, found[k - 1].direction);
              assert.ok(p.time >= found[k - 1].time);
            }
            assert.ok(v[p.before] < 0 !== v[p.before + 1] < 0);
            assert.ok(p.time >= p.before && p.time <= p.before + 1);
          });
        },
      ),
    );
  });
});

describe('The readings in a stretch', () => {
  const x = Float64Array.from([0, 1, 2, 3, 10, 11]);

  it('are found by both ends, ends included', () => {
    assert.deepEqual(samplesIn(x, { from: 1, to: 10 }), { first: 1, last: 5 });
    assert.deepEqual(samplesIn(x, { from: 4, to: 9 }), { first: 4, last: 4 });
    assert.equal(firstAtOrAfter(x, 3), 3);
    assert.equal(firstAfter(x, 3), 4);
    assert.equal(firstAfter(x, 99), 6);
  });

  it('about a point are at least so many, the nearest ones', () => {
    assert.deepEqual(samplesAround(x, 3, 1, 3), { first: 1, last: 4 });
    assert.deepEqual(samplesAround(x, 11, 1, 4), { first: 2, last: 6 });
    assert.deepEqual(samplesAround(x, 2, 2, 1), { first: 1, last: 4 });
  });
});

describe('A maximum that stands out', () => {
  it('does so by more than asked from the lower of the ways around it', () => {
    assert.deepEqual(prominent([0, 5, 1, 4, 0], 2), [1, 3]);
    assert.deepEqual(prominent([0, 5, 3, 4, 0], 2), [1]);
    assert.deepEqual(prominent([0, 1, 0.5, 1, 0], 2), []);
  });
});
