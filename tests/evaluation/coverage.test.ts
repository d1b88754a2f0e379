import assert from 'node:assert/strict';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';
import { exactCurves, type ExactCurve } from './exactCurves';
import { evaluateOn, resultOf } from './onArrays';

const draws = Number(process.env.GLOSS_DRAWS ?? 200);

/** Noise levels that simultaneous and single instruments show: balance 0.4 and 4 µg, heat flow by technique. */
const levels: Readonly<Record<string, readonly [number, number]>> = {
  mass: [0.0004, 0.004],
  heatflow: [0.02, 0.1],
  glass: [0.003, 0.01],
};

/**
 * Uncertainty is tested by coverage: over seeded draws of noise on curves of known truth, the truth lies within U in 90 to
 * 100 % of draws, and the mean u is 0.7 to 3 times the real scatter, for every quantity, with default settings.
 */
describe('coverage of the uncertainty', () => {
  let curves: ExactCurve[] = [];
  before(function () {
    curves = exactCurves(needReference(this));
  });

  for (const colour of ['white', '1/f'] as const) {
    for (const level of [0, 1] as const) {
      it(`${draws} draws of ${colour} noise at level ${level + 1}: the truth is within U and u is of the size of the scatter`, () => {
        const failures: string[] = [];
        for (const [index, curve] of curves.entries())
          failures.push(...coverageOf(curve, colour, level, 1000 * index + level));
        assert.deepEqual(failures, []);
      });
    }
  }
});

function coverageOf(curve: ExactCurve, colour: 'white' | '1/f', level: 0 | 1, seed: number): string[] {
  const random = seeded(seed);
  const signal = curve.columns[curve.columns.length - 1];
  const kind = curve.name.startsWith('glass') ? 'glass' : signal.signal;
  const sigma = levels[kind][level];
  const n = signal.values.length;
  const seen = curve.truths.map(() => ({ values: [] as number[], us: [] as number[], inside: 0 }));
  for (let draw = 0; draw < draws; draw++) {
    const noise = colour === 'white' ? whiteNoise(n, sigma, random) : pinkNoise(n, sigma, random);
    const noisy = { ...signal, values: signal.values.map((v, i) => v + noise[i]) };
    const evaluated = evaluateOn([...curve.columns.slice(0, -1), noisy], curve.gloss, `${draw}`);
    curve.truths.forEach(({ id, truth }, q) => {
      const { value, uncertainty, k } = resultOf(evaluated, id);
      if (value === null || uncertainty === null) return;
      seen[q].values.push(value);
      seen[q].us.push(uncertainty);
      if (Math.abs(value - truth) <= k * uncertainty) seen[q].inside++;
    });
  }
  return curve.truths.flatMap(({ id }, q) => {
    const { values, us, inside } = seen[q];
    const mean = values.reduce((s, v) => s + v, 0) / values.length;
    const scatter = Math.sqrt(values.reduce((s, v) => s + (v - mean) ** 2, 0) / (values.length - 1));
    const ratio = us.reduce((s, u) => s + u, 0) / us.length / scatter;
    const share = inside / draws;
    if (process.env.GLOSS_SHOW_COVERAGE !== undefined) {
      console.log(
        `${curve.name} ${colour} ${sigma} ${id}: ${(100 * share).toFixed(1)} % within U, u/scatter ${ratio.toFixed(2)}`,
      );
    }
    const good = share >= 0.9 && ratio >= 0.7 && ratio <= 3;
    return good
      ? []
      : [`${curve.name}, ${id}: ${(100 * share).toFixed(1)} % within U, u ${ratio.toFixed(2)} times the scatter`];
  });
}
