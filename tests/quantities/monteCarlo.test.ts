import assert from 'node:assert/strict';
import fc from 'fast-check';
import * as arithmetic from '../../server/src/quantities/arithmetic';
import { cos, exp, ln, sin, sqrt } from '../../server/src/quantities/functions';
import { propagate } from '../../server/src/quantities/propagate';
import { standardUncertainty } from '../../server/src/quantities/standardUncertainty';
import type { Uncertain } from '../../server/src/quantities/uncertain';
import { seeded } from '../support/random';

/** The same model in uncertain and in plain numbers. */
interface Model {
  readonly title: string;
  readonly uncertain: (x: readonly Uncertain[]) => Uncertain;
  readonly plain: (x: readonly number[]) => number;
}

const { add, divide, exact, multiply, power, subtract } = arithmetic;

const models: readonly Model[] = [
  {
    title: 'mass loss over initial mass',
    uncertain: ([a, b]) => divide(subtract(a!, b!), a!),
    plain: ([a, b]) => (a! - b!) / a!,
  },
  {
    title: 'product, quotient, power',
    uncertain: ([a, b, c]) => divide(multiply(a!, power(b!, exact(1.5))), c!),
    plain: ([a, b, c]) => (a! * b! ** 1.5) / c!,
  },
  {
    title: 'uncertain exponent',
    uncertain: ([a, b, c]) => power(a!, divide(b!, c!)),
    plain: ([a, b, c]) => a! ** (b! / c!),
  },
  {
    title: 'logarithm, exponential, root',
    uncertain: ([a, b, c]) => add(ln(multiply(a!, b!)), sqrt(exp(divide(c!, exact(5))))),
    plain: ([a, b, c]) => Math.log(a! * b!) + Math.sqrt(Math.exp(c! / 5)),
  },
  {
    title: 'sine and cosine',
    uncertain: ([a, b]) => add(multiply(sin(a!), exact(2)), cos(b!)),
    plain: ([a, b]) => 2 * Math.sin(a!) + Math.cos(b!),
  },
];

const values = fc.array(fc.double({ min: 1, max: 5, noNaN: true }), { minLength: 3, maxLength: 3 });

describe('propagation against a simulation by random draws (JCGM 101, 7)', () => {
  for (const [index, model] of models.entries()) {
    it(`${model.title}: u is the scatter of the draws, and y ± 2u covers 95 %`, () => {
      fc.assert(
        fc.property(values, fc.integer({ min: 1, max: 1e6 }), (xs, seed) => {
          const us = xs.map((x) => 0.001 * x);
          const y = model.uncertain(xs.map((x, i) => arithmetic.withU(x, us[i]!, `x${i}`, null)));
          const u = standardUncertainty(y);
          const random = seeded(seed);
          const n = 4000;
          const deviations = Array.from({ length: n }, () => {
            return model.plain(xs.map((x, i) => x + us[i]! * random.normal())) - y.value;
          });
          const scatter = Math.sqrt(deviations.reduce((sum, d) => sum + d * d, 0) / n);
          // Where the slopes nearly vanish, second order rules and first order is not what is tested.
          const size = Math.max(...us.map((_, i) => Math.abs(slope(model.plain, xs, i)) * us[i]!));
          if (size < 1e-4 * Math.max(...us)) return;
          // The scatter of 4000 draws is known to 1/√8000 = 1.1 %: five of those, and 1 % for curvature.
          assert.ok(Math.abs(scatter / u - 1) < 0.066, `${scatter} against ${u}`);
          const covered = deviations.filter((d) => Math.abs(d) <= 2 * u).length / n;
          // 95.45 % for a normal distribution; binomial standard deviation 0.33 %.
          assert.ok(covered > 0.93 && covered < 0.975, `${covered}`);
        }),
        { seed: 31 + index, numRuns: 12 },
      );
    });

    it(`${model.title}: numerical and analytical derivatives agree within 1e-7`, () => {
      fc.assert(
        fc.property(values, (xs) => {
          const inputs = xs.map((x, i) => arithmetic.withU(x, 0.01 * x, `x${i}`, null));
          const analytical = model.uncertain(inputs);
          const numerical = propagate(model.plain, inputs);
          const scale = standardUncertainty(analytical);
          for (const part of analytical.parts) {
            const other = numerical.parts.find((p) => p.input === part.input)?.u ?? NaN;
            assert.ok(Math.abs(other - part.u) <= 1e-7 * scale, `${part.input}: ${other} against ${part.u}`);
          }
        }),
        { seed: 41 + index, numRuns: 100 },
      );
    });
  }
});

function slope(f: (x: readonly number[]) => number, xs: readonly number[], i: number): number {
  const h = 1e-6;
  const moved = (by: number): number => f(xs.map((x, j) => (j === i ? x + by : x)));
  return (moved(h) - moved(-h)) / (2 * h);
}
