import assert from 'node:assert/strict';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { apply, meanFunctional, sumOf, type Functional } from '../../server/src/analysis/functional';
import { localNoise } from '../../server/src/analysis/localNoise';
import { noiseOf, varianceOf, type Noise, type NoiseComponent } from '../../server/src/analysis/noise';
import { CONTRAST, contrastVariance } from '../../server/src/analysis/noiseModel';
import { clippedVariance, scatterOf } from '../../server/src/analysis/robust';
import { pinkNoise, seeded, whiteNoise, type Random } from '../support/random';

function noiseWith(components: readonly NoiseComponent[]): Noise {
  return { sigma: 1, resolution: 0, components, dof: null };
}

function evenly(y: Float64Array, interval: number): Curve {
  return checkedCurve(
    Float64Array.from(y, (_, i) => i * interval),
    y,
  )!;
}

/** The sum over all pairs, as the definition has it. */
function byPairs(noise: Noise, x: Float64Array, pieces: readonly Functional[]): number {
  const at: [number, number][] = pieces.flatMap(({ first, weights }) =>
    [...weights].map((w, i): [number, number] => [x[first + i], w]),
  );
  let sum = 0;
  for (const { variance, time } of noise.components) {
    for (const [i, [s, v]] of at.entries()) {
      for (const [j, [t, w]] of at.entries()) {
        const correlation = time > 0 ? Math.exp(-Math.abs(s - t) / time) : i === j ? 1 : 0;
        sum += variance * v * w * correlation;
      }
    }
  }
  return sum;
}

function near(actual: number, expected: number, relative: number): void {
  assert.ok(Math.abs(actual - expected) <= relative * Math.abs(expected), `${actual} is not ${expected} ± ${relative}`);
}

describe('The variance of a linear functional', () => {
  const x = Float64Array.from([0, 1, 2, 4, 7]);
  const weights = Float64Array.from([1, -2, 0.5, 3, -1]);
  const mixed = noiseWith([
    { variance: 0.3, time: 0 },
    { variance: 0.7, time: 2 },
    { variance: 0.2, time: 50 },
  ]);

  it('is that of the full covariance matrix, computed by numpy (core-reference.py)', () => {
    near(varianceOf(mixed, x, [{ first: 0, weights }]), 12.069875801534012, 1e-9);
  });

  it('does not care into which pieces the functional is cut', () => {
    const pieces = [
      { first: 0, weights: weights.slice(0, 2) },
      { first: 2, weights: weights.slice(2) },
    ];
    near(varianceOf(mixed, x, pieces), 12.069875801534012, 1e-9);
  });

  it('is for long pieces within two hundredths of the sum over all pairs, fast and slow components alike', () => {
    const random = seeded(2);
    const long = Float64Array.from({ length: 900 }, (_, i) => i + 0.3 * random.uniform());
    const slope = { first: 300, weights: Float64Array.from({ length: 301 }, (_, i) => (i - 150) / 2e6) };
    const functionals: [string, readonly Functional[]][] = [
      ['mean', [meanFunctional(50, 450)]],
      [
        'difference of means',
        sumOf([
          { times: 1, of: meanFunctional(0, 300) },
          { times: -1, of: meanFunctional(600, 900) },
        ]),
      ],
      ['slope', [slope]],
      [
        'mean and slope',
        sumOf([
          { times: 1, of: meanFunctional(200, 500) },
          { times: 300, of: slope },
        ]),
      ],
    ];
    for (const [name, pieces] of functionals) {
      for (const time of [0, 0.5, 2, 8, 40, 300, 5000]) {
        const noise = noiseWith([{ variance: 1, time }]);
        const exact = byPairs(noise, long, pieces);
        const found = varianceOf(noise, long, pieces);
        assert.ok(Math.abs(found - exact) <= 0.02 * exact, `${name}, ${time} s: ${found} for ${exact}`);
      }
    }
  });

  it('of the contrast of block means has a closed form', () => {
    for (const time of [0, 0.3, 4, 100]) {
      for (const size of [1, 3, 8]) {
        const spread = Float64Array.from(
          { length: CONTRAST.length * size },
          (_, i) => CONTRAST[Math.floor(i / size)] / size,
        );
        const grid = spread.map((_, i) => i * 0.5);
        const components = [{ variance: 2, time }];
        near(
          contrastVariance(components, size, 0.5),
          byPairs(noiseWith(components), grid, [{ first: 0, weights: spread }]),
          1e-8,
        );
      }
    }
  });
});

describe('Scatter', () => {
  it('is 1.4826 times the median absolute value: 1 over the upper quartile of the normal distribution', () => {
    // 1/0.674490 (tables of the normal distribution).
    near(scatterOf(Float64Array.from([-5, -1, 0.2, 2, 9])), 2 / 0.67449, 1e-4);
  });

  it('of normal numbers is found although most numbers beside them hold a signal of all sizes', () => {
    const random = seeded(8);
    const clean = whiteNoise(2000, 1, random);
    const signal = Float64Array.from({ length: 3000 }, () => Math.exp(12 * random.uniform()));
    near(Math.sqrt(clippedVariance(clean).variance), 1, 0.04);
    near(Math.sqrt(clippedVariance(Float64Array.from([...clean, ...signal])).variance), 1, 0.25);
  });

  it('of nothing but zeros is zero', () => {
    assert.equal(clippedVariance(new Float64Array(9)).variance, 0);
  });
});

describe('The noise of a signal', () => {
  it('has the standard deviation that was drawn', () => {
    for (const seed of [1, 2, 3])
      near(estimateNoise(evenly(whiteNoise(4000, 0.02, seeded(seed)), 1)).sigma, 0.02, 0.06);
  });

  it('is not taken from the reaction: of a run a third of which reacts, the mean of a level is as uncertain as at rest', () => {
    const y = whiteNoise(3000, 1e-3, seeded(4)).map((v, i) => v - 5 / (1 + Math.exp((1500 - i) / 60)));
    const curve = evenly(y, 2);
    near(noiseOf(estimateNoise(curve), curve.x, [{ times: 1, of: meanFunctional(0, 25) }]), 1e-3 / 5, 0.1);
  });

  it('of an exact curve is next to nothing and never divides by it', () => {
    const y = Float64Array.from({ length: 1000 }, (_, i) => 10 - 5 / (1 + Math.exp((500 - i) / 20)));
    const noise = estimateNoise(evenly(y, 1));
    assert.ok(noise.sigma < 1e-5, `${noise.sigma}`);
    for (const c of noise.components) assert.ok(c.variance < 1e-10, `${c.variance}`);
    const flat = estimateNoise(evenly(new Float64Array(100).fill(3), 1));
    assert.equal(flat.sigma, 0);
    assert.equal(
      varianceOf(
        flat,
        Float64Array.from({ length: 100 }, (_, i) => i),
        [meanFunctional(0, 50)],
      ),
      0,
    );
  });

  it('of readings rounded to coarse steps is the error of rounding, step over the root of 12 (JCGM 100, F.2.2.1)', () => {
    const y = whiteNoise(6000, 2e-4, seeded(5)).map((v, i) => Math.round((8 - i / 4000 + v) / 0.01) * 0.01);
    const noise = estimateNoise(evenly(y, 0.1));
    near(noise.resolution, 0.01, 1e-6);
    near(
      noise.components.reduce((sum, c) => sum + c.variance, 0),
      1e-4 / 12,
      1e-6,
    );
    assert.ok(noise.components[0].time > 1, 'neighbouring readings round alike');
    assert.ok(noise.sigma >= 0.01 / Math.sqrt(12) - 1e-12);
  });

  it('shows no rounding where there is none, and where it is below the noise it adds nothing', () => {
    assert.equal(estimateNoise(evenly(whiteNoise(2000, 1, seeded(6)), 1)).resolution, 0);
    const fine = whiteNoise(2000, 1, seeded(6)).map((v) => Math.round(v * 20) / 20);
    const noise = estimateNoise(evenly(fine, 1));
    near(noise.sigma, 1, 0.08);
    near(noise.resolution, 0.05, 1e-3);
  });

  it('is not silenced by a stretch that was filled with one value', () => {
    const y = whiteNoise(2000, 0.01, seeded(9)).map((v, i) => (i < 600 ? 5 : 5 + v));
    const noise = estimateNoise(evenly(y, 1));
    const u = noiseOf(
      noise,
      Float64Array.from({ length: 2000 }, (_, i) => i),
      [{ times: 1, of: meanFunctional(900, 916) }],
    );
    near(u, 0.0025, 0.35);
  });

  it('scales with the signal and does not care where time starts', () => {
    const y = pinkNoise(1500, 0.3, seeded(10));
    const x = Float64Array.from(y, (_, i) => i * 0.5);
    const of = (curve: Curve): number =>
      noiseOf(estimateNoise(curve), curve.x, [{ times: 1, of: meanFunctional(100, 300) }]);
    const u = of(checkedCurve(x, y)!);
    near(
      of(
        checkedCurve(
          x,
          y.map((v) => v * 1e3),
        )!,
      ),
      1e3 * u,
      1e-9,
    );
    near(
      of(
        checkedCurve(
          x.map((t) => t + 1e9),
          y,
        )!,
      ),
      u,
      1e-6,
    );
  });

  it('is larger about a point where the readings scatter more, else that of the segment', () => {
    const y = whiteNoise(2000, 1, seeded(12)).map((v, i) => (i > 900 && i < 1300 ? 6 * v : v));
    const curve = evenly(y, 1);
    const noise = estimateNoise(curve);
    assert.equal(localNoise(noise, curve, 300, 30), noise);
    const of = (n: Noise): number => noiseOf(n, curve.x, [{ times: 1, of: meanFunctional(1090, 1110) }]);
    near(of(localNoise(noise, curve, 1100, 30)), 6 * of(noise), 0.3);
  });
});

describe('Uncertainty from the noise of one run agrees with the scatter of many', () => {
  interface Case {
    readonly name: string;
    readonly draw: (n: number, random: Random) => Float64Array;
    readonly low: number;
    readonly high: number;
  }
  const both = (n: number, random: Random): Float64Array => {
    const slow = pinkNoise(n, 0.5, random);
    return whiteNoise(n, 1, random).map((v, i) => v + slow[i]);
  };
  const averaged = (n: number, random: Random): Float64Array => {
    const raw = whiteNoise(n + 8, Math.sqrt(8), random);
    return Float64Array.from({ length: n }, (_, i) => raw.subarray(i, i + 8).reduce((a, b) => a + b, 0) / 8);
  };
  const cases: readonly Case[] = [
    { name: 'white', draw: (n, r) => whiteNoise(n, 1, r), low: 0.8, high: 1.6 },
    { name: '1/f', draw: (n, r) => pinkNoise(n, 1, r), low: 0.8, high: 1.4 },
    { name: 'white and 1/f', draw: both, low: 0.65, high: 1.5 },
    { name: 'white averaged over eight readings', draw: averaged, low: 0.65, high: 1.8 },
  ];
  const shapes: [string, number, number][] = [
    ['1001 readings 6 s apart', 1001, 6],
    ['2401 readings 0.25 s apart', 2401, 0.25],
  ];
  for (const { name, draw, low, high } of cases) {
    for (const [shape, n, interval] of shapes) {
      it(`${name}, ${shape}: difference of two means over 60 s, slope over 60 s`, () => {
        const span = Math.max(8, Math.round(60 / interval));
        const line = Float64Array.from({ length: span }, (_, i) => i - (span - 1) / 2);
        const squares = line.reduce((sum, v) => sum + v * v, 0);
        const functionals = [
          sumOf([
            { times: 1, of: meanFunctional(20, 20 + span) },
            { times: -1, of: meanFunctional(n - 20 - span, n - 20) },
          ]),
          [{ first: n >> 1, weights: line.map((v) => v / squares) }],
        ];
        const draws = 100;
        const seen = functionals.map(() => ({ squares: 0, u: 0 }));
        for (let seed = 0; seed < draws; seed++) {
          const curve = evenly(draw(n, seeded(100 + seed)), interval);
          const noise = estimateNoise(curve);
          functionals.forEach((pieces, k) => {
            seen[k].squares += pieces.reduce((sum, piece) => sum + apply(piece, curve.y), 0) ** 2;
            seen[k].u += Math.sqrt(varianceOf(noise, curve.x, pieces));
          });
        }
        for (const s of seen) {
          const ratio = s.u / draws / Math.sqrt(s.squares / draws);
          assert.ok(ratio >= low && ratio <= high, `mean u over scatter is ${ratio.toFixed(2)}`);
        }
      });
    }
  }
});
