import { add, exact, multiply, subtract, withU } from '../../server/src/quantities/arithmetic';
import { effectiveDof } from '../../server/src/quantities/effectiveDof';
import { propagate } from '../../server/src/quantities/propagate';
import { contributions, standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import { studentQuantile } from '../../server/src/quantities/studentT';
import { roundToUncertainty } from '../../server/src/presentation/number';
import assert from 'node:assert/strict';
import { near } from './near';

/**
 * End gauge of nominally 50 mm, JCGM 100:2008, H.1, inputs of H.1.3 and H.1.4, in nm and °C. Degrees of freedom: 18 of
 * the standard's calibration, 24, 5 and 8 of the comparison, 50 and 2 of the differences of expansion and temperature.
 */
const standard = withU(50_000_623, 25, 'calibration of the standard', 18);
const difference = [
  withU(215, 5.8, 'repeated observations', 24),
  withU(0, 3.9, 'random effects of the comparator', 5),
  withU(0, 6.7, 'systematic effects of the comparator', 8),
].reduce(add);
const expansion = withU(11.5e-6, 2e-6 / Math.sqrt(3), 'expansion of the standard', null);
const expansionDifference = withU(0, 1e-6 / Math.sqrt(3), 'difference of the expansions', 50);
const temperature = [
  withU(-0.1, 0.2, 'mean temperature of the bed', null),
  withU(0, 0.35, 'cycle of the bed', null),
].reduce(add);
const temperatureDifference = withU(0, 0.05 / Math.sqrt(3), 'difference of the temperatures', 2);

const inputs = [standard, difference, expansionDifference, temperature, expansion, temperatureDifference];

describe('JCGM 100 H.1, end-gauge calibration', () => {
  const correction = add(multiply(expansionDifference, temperature), multiply(expansion, temperatureDifference));
  const byArithmetic = subtract(add(standard, difference), multiply(standard, correction));
  const byFunction = propagate(([ls, d, da, theta, as, dt]) => ls! + d! - ls! * (da! * theta! + as! * dt!), inputs);

  for (const [way, length] of [
    ['the arithmetic', byArithmetic],
    ['numerical derivatives of the model', byFunction],
  ] as const) {
    it(`${way} gives 50 000 838 nm with u = 31.66 nm, rounded 32 nm (H.1.4)`, () => {
      near(length.value, 50_000_838, 1e-6);
      near(standardUncertainty(length), 31.664, 0.0005);
      assert.deepEqual(roundToUncertainty(length.value, standardUncertainty(length)), {
        value: '50000838',
        uncertainty: '32',
      });
    });

    it(`${way} gives 16 effective degrees of freedom and U99 = 93 nm, 92.5 before rounding of u (H.1.6)`, () => {
      const dof = effectiveDof(length) ?? NaN;
      near(dof, 16.75, 0.01);
      const k99 = studentQuantile(0.99, Math.floor(dof));
      near(k99, 2.92, 0.005);
      near(k99 * standardUncertainty(length), 92.5, 0.05);
      assert.equal((k99 * 32).toFixed(0), '93');
    });

    it(`${way} gives the budget of table H.1: 25, 16.6, 6.7, 5.8, 3.9, 2.9 nm, and 0 of α and of θ`, () => {
      const budget = contributions(length);
      [25, 16.6, 6.7, 5.8, 3.9, 2.9].forEach((u, i) => near(budget[i]?.u ?? NaN, u, 0.05, budget[i]?.input));
      // αs and θ multiply a difference that is estimated as zero.
      for (const { u } of budget.slice(6)) near(u, 0, 1e-6);
    });
  }

  it('an exact standard would leave 19.4 nm: √(31.664² - 25²)', () => {
    const known = subtract(add(exact(50_000_623), difference), multiply(exact(50_000_623), correction));
    near(standardUncertainty(known), Math.sqrt(31.664 ** 2 - 625), 0.001);
  });
});
