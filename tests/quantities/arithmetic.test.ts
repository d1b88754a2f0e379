import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  add,
  divide,
  exact,
  isDefined,
  multiply,
  negate,
  power,
  scale,
  shift,
  subtract,
  withU,
} from '../../server/src/quantities/arithmetic';
import { correlation, covariance } from '../../server/src/quantities/correlation';
import { contributions, standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import type { Uncertain } from '../../server/src/quantities/uncertain';
import { near, nearRelative } from './near';

const a = withU(3, 0.3, 'a', null);
const b = withU(4, 0.4, 'b', null);

describe('uncertain arithmetic, first order (JCGM 100, 5.1)', () => {
  it('independent influences add in squares: 0.3 and 0.4 make 0.5', () => {
    near(standardUncertainty(add(a, b)), 0.5, 1e-15);
    near(standardUncertainty(subtract(a, b)), 0.5, 1e-15);
  });

  it('a value is fully correlated with itself: x - x and x / x are exact, x + x has twice the uncertainty', () => {
    assert.equal(standardUncertainty(subtract(a, a)), 0);
    assert.equal(standardUncertainty(divide(a, a)), 0);
    near(standardUncertainty(add(a, a)), 0.6, 1e-15);
    assert.equal(contributions(subtract(a, a)).length, 1, 'the influence stays listed');
  });

  it('relative uncertainties of a product and a quotient add in squares (JCGM 100, 5.1.6)', () => {
    nearRelative(standardUncertainty(multiply(a, b)) / 12, Math.hypot(0.1, 0.1), 1e-14);
    nearRelative(standardUncertainty(divide(a, b)) / 0.75, Math.hypot(0.1, 0.1), 1e-14);
  });

  it('powers: x² like x·x, an uncertain exponent by a^b·ln a', () => {
    near(standardUncertainty(power(a, exact(2))), standardUncertainty(multiply(a, a)), 1e-14);
    near(standardUncertainty(power(exact(3), b)), 81 * Math.log(3) * 0.4, 1e-12);
    near(power(a, exact(-2)).parts[0]?.u ?? NaN, -2 * 3 ** -3 * 0.3, 1e-15);
    assert.ok(isDefined(power(withU(-2, 0.1, 'c', null), exact(2))));
    assert.ok(!isDefined(power(withU(-2, 0.1, 'c', null), withU(2, 0.1, 'd', null))));
    assert.ok(!isDefined(power(withU(-2, 0.1, 'c', null), exact(0.5))));
    assert.equal(power(withU(0, 0.1, 'c', null), exact(0)).value, 1);
  });

  it('division by zero comes back undefined and does not throw', () => {
    assert.ok(!isDefined(divide(a, exact(0))));
    assert.ok(isDefined(divide(exact(0), a)));
  });

  it('an influence with u = 0 contributes nothing and stays listed', () => {
    const stated = add(a, withU(1, 0, 'blank', null));
    assert.deepEqual(contributions(stated), [
      { input: 'a', u: 0.3 },
      { input: 'blank', u: 0 },
    ]);
  });

  it('parts that come unsorted or twice are merged by input with their signs', () => {
    const split: Uncertain = {
      value: 1,
      parts: [
        { input: 'z', u: 0.3, dof: null },
        { input: 'a', u: 0.1, dof: 5 },
        { input: 'z', u: -0.1, dof: 9 },
      ],
    };
    near(standardUncertainty(split), Math.hypot(0.2, 0.1), 1e-15);
    assert.deepEqual(
      scale(split, 1).parts.map((p) => [p.input, p.dof]),
      [
        ['a', 5],
        ['z', 9],
      ],
    );
  });
});

const number = fc.double({ min: 0.1, max: 100, noNaN: true });
const uncertain = fc
  .tuple(
    number,
    fc.array(
      fc.tuple(
        fc.constantFrom('p', 'q', 'r', 's'),
        fc.integer({ min: -1000, max: 1000 }).map((n) => n / 1000),
      ),
    ),
  )
  .map(([value, parts]): Uncertain => ({ value, parts: parts.map(([input, u]) => ({ input, u, dof: null })) }));

describe('for any uncertain values', () => {
  it('sums and products do not depend on the order of their operands, bit for bit', () => {
    fc.assert(
      fc.property(uncertain, uncertain, (x, y) => {
        assert.deepEqual(add(x, y), add(y, x));
        assert.deepEqual(multiply(x, y), multiply(y, x));
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it('x - y is the negative of y - x, and (x·y)/y has the uncertainty of x', () => {
    fc.assert(
      fc.property(uncertain, uncertain, (x, y) => {
        nearRelative(standardUncertainty(negate(subtract(y, x))), standardUncertainty(subtract(x, y)), 1e-12);
        const back = divide(multiply(x, y), y);
        nearRelative(back.value, x.value, 1e-12);
        near(standardUncertainty(back), standardUncertainty(x), 1e-10 * (1 + standardUncertainty(y) * x.value));
      }),
      { seed: 22, numRuns: 300 },
    );
  });

  it('a correlation lies in -1..1, is 1 with itself and symmetric', () => {
    fc.assert(
      fc.property(uncertain, uncertain, (x, y) => {
        const r = correlation(x, y);
        assert.ok(r >= -1 && r <= 1);
        near(r, correlation(y, x), 1e-12);
        if (standardUncertainty(x) > 0) near(correlation(x, x), 1, 1e-12);
      }),
      { seed: 23, numRuns: 300 },
    );
  });

  it('u²(x + y) = u²(x) + u²(y) + 2 cov(x, y) (JCGM 100, 5.2.2)', () => {
    fc.assert(
      fc.property(uncertain, uncertain, (x, y) => {
        const left = standardUncertainty(add(x, y)) ** 2;
        const right = standardUncertainty(x) ** 2 + standardUncertainty(y) ** 2 + 2 * covariance(x, y);
        near(left, right, 1e-12 * (1 + left));
      }),
      { seed: 24, numRuns: 300 },
    );
  });

  it('an exact number shifts and scales the value and scales the uncertainty only', () => {
    fc.assert(
      fc.property(uncertain, fc.integer({ min: -5000, max: 5000 }), (x, hundredths) => {
        const k = hundredths / 100;
        near(standardUncertainty(shift(x, k)), standardUncertainty(x), 1e-15 * (1 + standardUncertainty(x)));
        const scaled = Math.abs(k) * standardUncertainty(x);
        near(standardUncertainty(scale(x, k)), scaled, 1e-12 * scaled);
      }),
      { seed: 25, numRuns: 200 },
    );
  });
});
