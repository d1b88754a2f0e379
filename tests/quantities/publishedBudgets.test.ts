import { add, divide, exact, multiply, subtract, withU } from '../../server/src/quantities/arithmetic';
import { propagate } from '../../server/src/quantities/propagate';
import { standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import type { Uncertain } from '../../server/src/quantities/uncertain';
import { near } from './near';

/** Standard uncertainty of a rectangular distribution between two limits (JCGM 100, 4.3.7). */
function rectangular(low: number, high: number, name: string): Uncertain {
  return withU((low + high) / 2, (high - low) / 2 / Math.sqrt(3), name, null);
}

describe('published uncertainty budgets', () => {
  it('thermal expansion, NIST Technical Note 1900, example E13: 1.7266e-5 /K, u = 0.176e-5 /K', () => {
    const L0 = withU(1.4999, 0.0001, 'L0', null);
    const L1 = withU(1.5021, 0.0002, 'L1', null);
    const T0 = withU(288.15, 0.02, 'T0', null);
    const T1 = withU(373.1, 0.05, 'T1', null);
    const alpha = divide(subtract(L1, L0), multiply(L0, subtract(T1, T0)));
    near(alpha.value, 1.7266e-5, 0.00005e-5);
    near(standardUncertainty(alpha), 1.7555e-6, 0.0005e-6);
    const numerical = propagate(([l0, l1, t0, t1]) => (l1! - l0!) / (l0! * (t1! - t0!)), [L0, L1, T0, T1]);
    near(standardUncertainty(numerical), 1.7555e-6, 0.0005e-6);
  });

  it('mass calibration, JCGM 101:2008, 9.3, first order: 1.2340 mg, u = 0.0539 mg, 95 % from 1.1285 to 1.3395 mg (table 6)', () => {
    const reference = withU(100_000, 0.05, 'mR,c', null);
    const small = withU(1.234, 0.02, 'δmR,c', null);
    const air = rectangular(1.1, 1.3, 'ρa');
    const weight = rectangular(7000, 9000, 'ρW');
    const standard = rectangular(7950, 8050, 'ρR');
    const buoyancy = multiply(
      subtract(air, exact(1.2)),
      subtract(divide(exact(1), weight), divide(exact(1), standard)),
    );
    const mass = subtract(multiply(add(reference, small), add(exact(1), buoyancy)), exact(100_000));
    const u = standardUncertainty(mass);
    near(mass.value, 1.234, 0.00005);
    near(u, 0.0539, 0.00005);
    near(mass.value - 1.96 * u, 1.1285, 0.00005);
    near(mass.value + 1.96 * u, 1.3395, 0.00005);
  });

  it('a 10 kg weight, EA-4/02, S2: 10 000.025 g, u = 29.3 mg (29.1 with the rounding of its table), U = 59 mg', () => {
    const mass = [
      // U = 45 mg with k = 2; drift ±15 mg, comparison s = 25 mg over √3, eccentricity and buoyancy ±10 mg each.
      withU(10_000.005, 0.0225, 'standard', null),
      withU(0, 0.015 / Math.sqrt(3), 'drift', null),
      withU(0.02, 0.025 / Math.sqrt(3), 'difference', null),
      withU(0, 0.01 / Math.sqrt(3), 'eccentricity', null),
      withU(0, 0.01 / Math.sqrt(3), 'buoyancy', null),
    ].reduce(add);
    near(mass.value, 10_000.025, 1e-9);
    near(1000 * standardUncertainty(mass), 29.26, 0.005);
    near(1000 * standardUncertainty(mass), 29.1, 0.2);
  });

  it('the sum of four standard normal or rectangular quantities has u = 2 (JCGM 101, 9.2)', () => {
    const rectangles = [1, 2, 3, 4].map((i) => rectangular(-Math.sqrt(3), Math.sqrt(3), `X${i}`));
    near(standardUncertainty(rectangles.reduce(add)), 2, 1e-12);
    const wide = [...rectangles.slice(0, 3), rectangular(-10 * Math.sqrt(3), 10 * Math.sqrt(3), 'X4')];
    near(standardUncertainty(wide.reduce(add)), 10.1, 0.05);
  });

  it('Stefan-Boltzmann constant from CODATA 2010 constants: 5.67037e-8 W/(m²·K⁴), u = 2.05e-13', () => {
    const inputs = [
      withU(6.62606957e-34, 2.9e-41, 'h', null),
      withU(8.3144621, 7.5e-6, 'R', null),
      withU(10973731.568539, 5.5e-5, 'R∞', null),
      withU(5.4857990946e-4, 2.2e-13, 'Ar(e)', null),
      withU(7.2973525698e-3, 2.4e-12, 'α', null),
    ];
    const sigma = propagate(([h, R, Rinf, e, a]) => {
      const top = 32 * Math.PI ** 5 * h! * R! ** 4 * Rinf! ** 4;
      return top / (15 * e! ** 4 * 0.001 ** 4 * 299792458 ** 6 * a! ** 8);
    }, inputs);
    near(sigma.value, 5.67037e-8, 0.000005e-8);
    near(standardUncertainty(sigma), 2.046e-13, 0.0005e-13);
  });
});
