import assert from 'node:assert/strict';
import { atTimes } from '../../server/src/runs/atTimes';

const at = (t: number[], v: number[], wanted: number[]) => [
  ...atTimes(Float64Array.from(t), Float64Array.from(v), Float64Array.from(wanted)),
];

describe('values at other times', () => {
  it('lie on straight lines between readings and are exact at them', () => {
    assert.deepEqual(at([0, 2, 4], [0, 10, 0], [0, 1, 2, 3, 4]), [0, 5, 10, 5, 0]);
  });

  it('do not exist before the first, after the last reading and inside a gap', () => {
    const [before, inside, gap, after] = at([0, 1, 2, 30, 31], [1, 1, 1, 2, 2], [-1, 0.5, 16, 32]);
    assert.ok(Number.isNaN(before) && Number.isNaN(gap) && Number.isNaN(after));
    assert.equal(inside, 1);
  });

  it('pass over missing numbers, repeated times and back-steps', () => {
    assert.deepEqual(at([0, 1, 1, 0.5, 2], [0, 1, 99, 99, 2], [0.5, 1.5]), [0.5, 1.5]);
    assert.deepEqual(at([0, 1, 2], [0, NaN, 2], [1]), [1]);
  });

  it('stay the same when all times are shifted by 1e9 s', () => {
    const shift = 1e9;
    assert.deepEqual(at([0 + shift, 2 + shift], [0, 4], [1 + shift]), at([0, 2], [0, 4], [1]));
  });
});
