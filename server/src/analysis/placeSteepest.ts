import type { Curve, Window } from './curve';
import { Kept } from './kept';
import { noiseOf, type Noise, type NoiseComponent } from './noise';
import { fitPolynomial } from './polynomialFit';
import { samplesAround, samplesIn } from './range';
import { thinnedTo } from './thinned';

/** Widths tried to place the steepest point grow by at least this factor, at most so often. */
const GROWTH = 1.25;
const WIDTHS = 8;
/** Placed well enough: a share of the width of the slope's peak at three quarters of its height. */
const PLACED = 0.01;
/** Averages a width is cut into for placing; their own bias is far below any noise. */
const BLOCKS = 40;

/** When a curve is steepest, s, and how well that is known. */
export interface Placed {
  readonly time: number;
  readonly noise: number;
}

/** The peak that the slope has there. */
export interface PeakOfSlope {
  /** Its width at three quarters of its height, s. */
  readonly width: number;
  /** The third derivative of the curve that a parabola of that width has. */
  readonly third: number;
}

export interface PlaceOptions {
  /** Where the slope is largest on a grid, s. */
  readonly start: number;
  /** -1: the steepest fall; 1: rise. */
  readonly sign: number;
  /** Full width of the local polynomial, s. */
  readonly width: number;
  readonly peak: PeakOfSlope | null;
  readonly noise: Noise | null;
}

/** A place, and the times between which readings were looked at for it. */
interface Looked extends Placed {
  readonly from: number;
  readonly to: number;
}

const placed = new Kept<Looked>();

/**
 * The zero of the second derivative of a local quartic next to `start`, widened under noise until it is known; see
 * `steepest`. Readings within `allowed` take part. Where none beyond them is within reach anyway, the place does not depend on the
 * window: it is kept with the curve.
 */
export function placeSteepest(curve: Curve, allowed: Window, options: PlaceOptions): Placed {
  const { start, sign, width, peak, noise } = options;
  const key = `${start} ${sign} ${width} ${peak?.width} ${peak?.third}`;
  const free = placed.of(curve, noise, key, () => place(curve, { from: -Infinity, to: Infinity }, options));
  return free.from >= allowed.from && free.to <= allowed.to ? free : place(curve, allowed, options);
}

function place(curve: Curve, allowed: Window, { start, sign, width, peak, noise }: PlaceOptions): Looked {
  let best: Placed | null = null;
  let wide = width;
  const looked = { from: start, to: start };
  for (let k = 0; k < WIDTHS; k++) {
    const zero = curvatureZero(curve, allowed, best?.time ?? start, wide, sign, noise, looked);
    if (peak === null && zero === null) break;
    const before = wide;
    if (zero === null) {
      wide = Math.min(wide * GROWTH, peak?.width ?? 0);
      if (!(wide > before)) break;
      continue;
    }
    const third = Math.min(zero.third, peak?.third ?? Infinity);
    best = { time: zero.time, noise: third > 0 ? zero.second / third : Infinity };
    if (peak === null || best.noise <= PLACED * peak.width) break;
    // The noise of a second derivative falls with the width to the power 5/2.
    wide = Math.min(wide * Math.max(GROWTH, (best.noise / (PLACED * peak.width)) ** 0.4), peak.width);
    if (!(wide > before)) break;
  }
  const widest = (peak?.width ?? width) / Math.sqrt(12);
  // Where the top is flat the point may lie anywhere in it.
  return best === null
    ? { time: start, noise: widest, ...looked }
    : { time: best.time, noise: Math.min(best.noise, widest), ...looked };
}

/** The zero of the second derivative of a local quartic next to `start`, where the slope is an extremum of that sign. */
function curvatureZero(
  curve: Curve,
  allowed: Window,
  start: number,
  width: number,
  sign: number,
  noise: Noise | null,
  looked: { from: number; to: number },
): { time: number; second: number; third: number } | null {
  const { means, size } = thinnedTo(curve, width / BLOCKS);
  const within = samplesIn(means.x, allowed);
  let centre = start;
  for (let round = 0; round < 12; round++) {
    const { first, last } = samplesAround(means.x, centre, width, 7, within);
    looked.from = Math.min(looked.from, means.x[first]);
    looked.to = Math.max(looked.to, means.x[last - 1]);
    const fit = fitPolynomial(means.x, means.y, first, last, 4, means.counts);
    const third = fit.at(centre, 3);
    if (!(sign * third < 0)) return null;
    const step = -fit.at(centre, 2) / third;
    if (Math.abs(step) > width / 2) return null;
    centre += Math.max(-width / 6, Math.min(width / 6, step));
    if (Math.abs(step) > 1e-7 * width && round < 11) continue;
    if (noise === null) return { time: centre, second: 0, third: Math.abs(third) };
    const of = fit.functional(centre, 2);
    const second = noiseOf({ ...noise, components: averaged(noise.components, means.x, first, last, size) }, means.x, [
      { times: 1, of },
    ]);
    return { time: centre, second, third: Math.abs(third) };
  }
  return null;
}

/** The noise of block means: white noise averages, slow noise hardly. */
function averaged(
  components: readonly NoiseComponent[],
  x: Float64Array,
  first: number,
  last: number,
  size: number,
): readonly NoiseComponent[] {
  if (size === 1) return components;
  const length = (x[last - 1] - x[first]) / (last - 1 - first);
  return components.map(({ variance, time }) => {
    if (time === 0) return { variance: variance / size, time };
    const r = length / time;
    return { variance: variance * Math.max(1 / size, (2 / (r * r)) * (r - 1 + Math.exp(-r))), time };
  });
}
