import assert from 'node:assert/strict';
import fc from 'fast-check';
import { verdict } from '../../server/src/quantities/verdict';

describe('the verdict with closed limits (JCGM 106:2012)', () => {
  const cases: readonly (readonly [y: number, U: number | null, low: number | null, high: number | null, string])[] = [
    [62.1, 0.6, 60, 65, 'met'],
    [64.8, 0.6, 60, 65, 'inconclusive'],
    [65.2, 0.6, 60, 65, 'inconclusive'],
    [65.8, 0.6, 60, 65, 'not met'],
    [59.0, 0.6, 60, 65, 'not met'],
    [62.5, 4, 60, 65, 'inconclusive'],
    [65, 0, 60, 65, 'met'],
    [60.5, 0.5, 60, 65, 'met'],
    [65.6, 0.6, 60, 65, 'inconclusive'],
    [0.4, 0.1, null, 0.5, 'met'],
    [0.7, 0.1, null, 0.5, 'not met'],
    [3, 0.1, 2, null, 'met'],
    [1, 0.1, 2, null, 'not met'],
    [62, null, 60, 65, 'inconclusive'],
    [NaN, 1, 60, 65, 'inconclusive'],
    [0.1 + 0.2, 0, null, 0.3, 'met'],
    [0.3, 0, 0.1 + 0.2, null, 'met'],
    [1e-9, 0, null, 0, 'not met'],
  ];
  for (const [y, U, low, high, expected] of cases) {
    it(`${y} ± ${U ?? '?'} in ${low ?? ''}..${high ?? ''} is ${expected}`, () => {
      assert.equal(verdict(y, U, low, high), expected);
    });
  }

  it('a larger U never turns one decided verdict into the other', () => {
    const number = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(number, fc.double({ min: 0, max: 5, noNaN: true }), number, (y, U, low) => {
        const narrow = verdict(y, U / 2, low, low + 3);
        const wide = verdict(y, U, low, low + 3);
        assert.ok(wide === 'inconclusive' || wide === narrow);
      }),
      { seed: 91, numRuns: 500 },
    );
  });
});
