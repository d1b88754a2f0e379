import { strict as assert } from 'node:assert';
import type { Curve, Window } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import type { Measured } from '../../server/src/analysis/measured';
import type { Noise } from '../../server/src/analysis/noise';
import { noisy, type NoiseKind } from './heatCurves';

/** The quantities of one evaluation by name; a quantity may be missing. */
export type Quantities<Name extends string> = Readonly<Record<Name, Measured | null>>;

export interface CoverageCase<Name extends string> {
  readonly exact: Curve;
  readonly window: Window;
  /** 5 K in seconds: how far an end is moved to see its influence. */
  readonly edge: number;
  readonly read: (curve: Curve, window: Window, noise: Noise, propagate: boolean) => Quantities<Name>;
  /** The truth of each quantity, which for what is defined by the noise may depend on it. */
  readonly truth: (noise: Noise) => Readonly<Record<Name, number>>;
}

/** How one quantity fared over many draws. */
interface Tally {
  inside: number;
  readonly errors: number[];
  readonly u: number[];
}

/**
 * The figure the project holds itself to: over 200 seeded draws, with U = 2u from noise and edges (half range at ±5 K over
 * √3 for each end), truth lies within U in 90 to 100 % of the draws for every quantity, and the mean u is 0.7 to 3 times
 * the scatter of the values.
 */
export function assertCovered<Name extends string>(of: CoverageCase<Name>, kind: NoiseKind, sigma: number): void {
  const draws = 200;
  const tallies = new Map<Name, Tally>();
  for (let draw = 0; draw < draws; draw++) {
    const curve = noisy(of.exact, kind, sigma, 1000 + draw);
    const noise = estimateNoise(curve);
    const truth = of.truth(noise);
    const { from, to } = of.window;
    const found = of.read(curve, of.window, noise, true);
    const moved = [
      { from: from - of.edge, to },
      { from: from + of.edge, to },
      { from, to: to - of.edge },
      { from, to: to + of.edge },
    ].map((window) => of.read(curve, window, noise, false));
    for (const name of Object.keys(found) as Name[]) {
      const measured = found[name];
      assert.ok(measured !== null, `${name} not found in draw ${draw}`);
      const edge = (a: Measured | null, b: Measured | null) =>
        a === null || b === null ? 0 : Math.abs(a.value - b.value) / 2 / Math.sqrt(3);
      const u = Math.hypot(measured.noise, edge(moved[0][name], moved[1][name]), edge(moved[2][name], moved[3][name]));
      const tally = tallies.get(name) ?? { inside: 0, errors: [], u: [] };
      tallies.set(name, tally);
      tally.errors.push(measured.value - truth[name]);
      tally.u.push(u);
      if (Math.abs(measured.value - truth[name]) <= 2 * u) tally.inside++;
    }
  }
  for (const [name, { inside, errors, u }] of tallies) {
    const share = (100 * inside) / draws;
    const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
    const centre = mean(errors);
    const scatter = Math.sqrt(errors.reduce((sum, e) => sum + (e - centre) ** 2, 0) / (draws - 1));
    const ratio = mean(u) / scatter;
    assert.ok(share >= 90, `${name}: truth within U in ${share} % of draws`);
    assert.ok(ratio >= 0.7 && ratio <= 3, `${name}: mean u is ${ratio.toFixed(2)} times the scatter`);
  }
}
