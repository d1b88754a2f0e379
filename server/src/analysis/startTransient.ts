import { checkedCurve, type Curve } from './curve';
import type { Noise } from './noise';
import { fitPolynomial } from './polynomialFit';
import { firstAfter, firstAtOrAfter } from './range';
import { noiseOfTimeBlocks, timeBlocks, type TimeBlocks } from './timeBlocks';

/** A decaying exponential at the start of a segment, `amplitude` at its first sample, unit of y. */
export interface StartTransient {
  readonly amplitude: number;
  readonly time: number;
}

/**
 * Time constants tried, s: those of furnaces and sensors (common practice: start transients last minutes). A longer one is
 * the bend of the zero line.
 */
const SHORTEST = 15;
const LONGEST = 240;
const FACTOR = 1.3;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Left out at the very start, where lags of the sensor still build up; the stretch then tried, in steps, s. */
const SETTLING = 20;
const FIRST_REACH = 90;
const LAST_REACH = 900;
/** A fit is good while its residuals are so many times what noise does, or so small a share of the amplitude. */
const GOOD = 1.5;
const SHARE = 3e-4;

/**
 * The transient with which the zero line of a heat-flow signal begins after a change of heating rate: a straight line
 * plus one exponential fitted to the start of the segment, over as long a stretch as they explain to within the noise.
 * Null where nothing of the kind is there. For detection only: a number is never read from a curve so corrected.
 */
export function startTransient(curve: Curve, noise: Noise): StartTransient | null {
  const { x, y } = curve;
  const start = x[0];
  const range = { first: firstAtOrAfter(x, start + SETTLING), last: firstAfter(x, start + LAST_REACH) };
  if (range.last - range.first < 12) return null;
  const blocks = timeBlocks(x, y, range, 4, start);
  const blockNoise = noiseOfTimeBlocks(noise, blocks);
  let best: StartTransient | null = null;
  let misfits = 0;
  for (let reach = FIRST_REACH; reach <= LAST_REACH && misfits < 3; reach *= 1.25) {
    const n = firstAfter(blocks.x, start + reach);
    if (n < 10) continue;
    const fit = exponentialFit(blocks, n, start);
    const expected = Math.sqrt(blockNoise.components.reduce((sum, c) => sum + c.variance, 0));
    if (fit.scatter > Math.max(GOOD * expected, SHARE * Math.abs(fit.amplitude))) {
      misfits++;
      continue;
    }
    misfits = 0;
    const sure = Math.abs(fit.amplitude) > 6 * fit.unit * expected && fit.time < Math.min(reach / 1.5, LONGEST);
    best = sure ? { amplitude: fit.amplitude, time: fit.time } : best;
  }
  return best;
}

/** The curve less a transient. */
export function withoutTransient(curve: Curve, { amplitude, time }: StartTransient): Curve {
  const start = curve.x[0];
  return (
    checkedCurve(
      curve.x,
      curve.y.map((v, i) => v - amplitude * Math.exp(-(curve.x[i] - start) / time)),
    ) ?? curve
  );
}

interface ExponentialFit extends StartTransient {
  /** Root mean square of the residuals. */
  readonly scatter: number;
  /** Standard deviation of the amplitude for residuals of one unit. */
  readonly unit: number;
}

/** Line plus exponential over the first `n` blocks: the time constant by search, the rest by least squares. */
function exponentialFit(blocks: TimeBlocks, n: number, start: number): ExponentialFit {
  const { x, y } = blocks;
  const line = fitPolynomial(x, y, 0, n, 1);
  const bent = y.subarray(0, n).map((v, k) => v - line.at(x[k]));
  const fit = (time: number): ExponentialFit => {
    const decay = x.subarray(0, n).map((t) => Math.exp(-(t - start) / time));
    const own = fitPolynomial(x, decay, 0, n, 1);
    let cross = 0;
    let square = 0;
    for (let k = 0; k < n; k++) {
      decay[k] -= own.at(x[k]);
      cross += decay[k] * bent[k];
      square += decay[k] * decay[k];
    }
    const amplitude = cross / square;
    let squares = 0;
    for (let k = 0; k < n; k++) squares += (bent[k] - amplitude * decay[k]) ** 2;
    return { amplitude, time, scatter: Math.sqrt(squares / Math.max(1, n - 4)), unit: 1 / Math.sqrt(square) };
  };
  let best = fit(SHORTEST);
  for (let time = SHORTEST * FACTOR; time <= LONGEST; time *= FACTOR) {
    const next = fit(time);
    if (next.scatter < best.scatter) best = next;
  }
  // Between the neighbours of the best by golden section, to a thousandth: the rest of a transient is mistaken for a bend.
  let low = best.time / FACTOR;
  let high = best.time * FACTOR;
  while (high - low > 1e-3 * best.time) {
    const inner = fit(high - GOLDEN * (high - low));
    const outer = fit(low + GOLDEN * (high - low));
    if (inner.scatter < outer.scatter) high = outer.time;
    else low = inner.time;
    if (Math.min(inner.scatter, outer.scatter) < best.scatter) best = inner.scatter < outer.scatter ? inner : outer;
  }
  return best;
}
