import assert from 'node:assert/strict';
import fc from 'fast-check';
import { correlated } from '../../server/src/quantities/correlated';
import { correlation } from '../../server/src/quantities/correlation';
import { standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import { near } from './near';

/** A random correlation matrix: of n random vectors in n dimensions. */
const matrices = fc
  .array(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }), {
    minLength: 3,
    maxLength: 3,
  })
  .map((rows) => rows.map((row, i) => row.map((x, j) => (i === j ? x + 2 : x))))
  .map((rows) => rows.map((a) => rows.map((b) => dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b)))));

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * b[i]!, 0);
}

describe('values with a known correlation matrix', () => {
  it('keep their uncertainties and correlations in the parts', () => {
    fc.assert(
      fc.property(matrices, (matrix) => {
        const made = correlated([1, 2, 3], [0.1, 0.2, 0.3], matrix, ['p', 'q', 'r'], [null, null, null]);
        assert.ok(made.ok);
        made.value.forEach((x, i) => {
          near(standardUncertainty(x), 0.1 * (i + 1), 1e-12);
          made.value.forEach((y, j) => near(correlation(x, y), matrix[i]![j]!, 1e-9));
        });
      }),
      { seed: 81, numRuns: 200 },
    );
  });

  it('full correlation is one influence: the second value has none of its own', () => {
    const made = correlated(
      [1, 2],
      [0.1, 0.2],
      [
        [1, -1],
        [-1, 1],
      ],
      ['p', 'q'],
      [null, null],
    );
    assert.ok(made.ok);
    assert.deepEqual(
      made.value.map((x) => x.parts.map((part) => [part.input, part.u])),
      [[['p', 0.1]], [['p', -0.2]]],
    );
  });

  it('what is no correlation matrix fails: too large, not symmetric, contradictory, of the wrong size', () => {
    const attempt = (matrix: number[][]): boolean =>
      correlated([1, 2, 3], [1, 1, 1], matrix, ['p', 'q', 'r'], [null, null, null]).ok;
    assert.ok(
      attempt([
        [1, 0.5, 0.5],
        [0.5, 1, 0.5],
        [0.5, 0.5, 1],
      ]),
    );
    assert.ok(
      !attempt([
        [1, 1.1, 0],
        [1.1, 1, 0],
        [0, 0, 1],
      ]),
    );
    assert.ok(
      !attempt([
        [1, 0.5, 0],
        [0.4, 1, 0],
        [0, 0, 1],
      ]),
    );
    assert.ok(
      !attempt([
        [1, 0.9, -0.9],
        [0.9, 1, 0.9],
        [-0.9, 0.9, 1],
      ]),
    );
    assert.ok(
      !attempt([
        [1, 0.5],
        [0.5, 1],
      ]),
    );
    assert.ok(
      !attempt([
        [2, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ]),
    );
  });
});
