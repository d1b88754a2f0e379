import type { Curve, Window } from './curve';
import type { Noise } from './noise';
import { slopeAt, slopeCurve } from './slopeCurve';

/** Maxima of the rate of a step, in the direction of the step. */
export interface RateMaxima {
  /** Maxima that rise more than 5 % of the largest (and more than noise does) above the minima beside them. */
  readonly count: number;
  readonly times: readonly number[];
  /** The largest rate, per s, positive. 0 where there is none. */
  readonly largest: number;
  /** The lowest rate between the outermost maxima, and when; null with fewer than two. */
  readonly least: { readonly time: number; readonly rate: number } | null;
}

export const noMaxima: RateMaxima = { count: 0, times: [], largest: 0, least: null };

const PROMINENCE = 0.05;
/** The largest and smallest of some hundred noisy rates lie about six uncertainties apart; eight hardly happens. */
const CHANCE = 8;

/** Counts the maxima of the rate inside a window. `falling`: of -dm/dt, else of dm/dt. */
export function rateMaxima(
  curve: Curve,
  window: Window,
  smooth: number,
  falling: boolean,
  noise: Noise | null,
): RateMaxima {
  const { x, slope } = slopeCurve(curve, window, smooth);
  const rate = new Float64Array(slope.length);
  let largest = 0;
  for (let i = 0; i < rate.length; i++) {
    rate[i] = falling ? -slope[i] : slope[i];
    if (rate[i] > largest) largest = rate[i];
  }
  if (largest === 0) return noMaxima;
  const middle = x[x.length >> 1];
  const noisy = noise === null ? 0 : CHANCE * slopeAt(curve, middle, smooth, noise).noise;
  const times = prominent(rate, Math.max(PROMINENCE * largest, noisy));
  let least: { time: number; rate: number } | null = null;
  if (times.length > 1) {
    for (let i = times[0]; i <= times[times.length - 1]; i++) {
      if (least === null || rate[i] < least.rate) least = { time: x[i], rate: rate[i] };
    }
  }
  return { count: Math.max(1, times.length), times: times.map((i) => x[i]), largest, least };
}

/** Indices of the maxima that stand out by more than `least` from the lower of the ways around them. */
export function prominent(values: ArrayLike<number>, least: number): number[] {
  const peaks: number[] = [];
  // Walks up and down with a hysteresis of `least`: a maximum counts when the walk has come down by it, and up before.
  let top = 0;
  let bottom = 0;
  let rising = true;
  for (let i = 1; i < values.length; i++) {
    if (rising) {
      if (values[i] > values[top]) top = i;
      else if (values[top] - values[i] > least) {
        peaks.push(top);
        rising = false;
        bottom = i;
      }
    } else if (values[i] < values[bottom]) bottom = i;
    else if (values[i] - values[bottom] > least) {
      rising = true;
      top = i;
    }
  }
  return peaks;
}
