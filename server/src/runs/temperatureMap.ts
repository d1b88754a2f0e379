import { extentOf, partOf } from '../analysis/extent';
import type { Segment } from './run';
import { localLine } from './segmentation/localLine';
import { increasing } from './segmentation/increasing';
import { usableSamples } from './segmentation/samples';

/** The way between time (s) and temperature (°C) inside one segment. */
export interface TemperatureMap {
  /** The time at which the segment passes this temperature; null outside it, and in a hold. */
  timeAt(temperature: number): number | null;
  /** The fitted temperature at this time; that of the nearer end outside the segment. */
  temperatureAt(time: number): number;
  /** K/s over 5 K about this time (a minute in a hold). */
  rateAt(time: number): number;
  /** °C and s at the ends. */
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
}

/** Width (K) over which noise is estimated, and at most smoothed. */
const width = 5;
/** Noise of the fitted temperature that is aimed at (K). */
const aim = 0.01;
/** A temperature this far (K) beyond an end of a ramp is the end. */
const slack = 0.5;
/** Width (s) in a hold, where 5 K never pass. */
const holdWidth = 60;

/**
 * The strictly monotone map between time and temperature of one segment.
 *
 * Exact on linear ramps. Temperatures are smoothed by local straight lines, only as wide as their noise asks for (0.01 K
 * is aimed at) and at most over 5 K, so that a clean record is followed sample by sample; what still runs backwards is
 * pooled (isotonic regression by pooling of violators: Barlow, Bartholomew, Bremner, Brunk 1972, from memory). Between the
 * nodes it is linear. O(n) once, O(log n) a query.
 */
export function temperatureMap(time: Float64Array, temperature: Float64Array, segment: Segment): TemperatureMap {
  const { first, last, rate } = segment;
  const samples = usableSamples(partOf(time, first, last), partOf(temperature, first, last));
  const isHold = rate === null;
  const seconds = isHold ? holdWidth : (60 * width) / Math.max(Math.abs(rate), 1e-9);
  const smooth = smoothed(samples.time, samples.temperature, seconds);
  const sign = isHold || rate >= 0 ? 1 : -1;
  const nodes = isHold ? smooth : increasing(smooth.x, smooth.y, sign);
  const { x, y } = nodes;
  const n = x.length;
  const temperatureAt = (at: number): number => interpolate(x, y, at, 1);
  const half = seconds / 2;
  return {
    timeAt(at) {
      if (isHold || !Number.isFinite(at) || n === 0) return null;
      const beyond = Math.max(sign * (y[0] - at), sign * (at - y[n - 1]));
      if (beyond > slack) return null;
      return interpolate(y, x, at, sign);
    },
    temperatureAt,
    rateAt(at) {
      if (n < 2) return 0;
      const from = Math.max(x[0], Math.min(at - half, x[n - 1] - 2 * half));
      const to = Math.min(x[n - 1], Math.max(at + half, x[0] + 2 * half));
      return (temperatureAt(to) - temperatureAt(from)) / (to - from);
    },
    from: n === 0 ? segment.from : y[0],
    to: n === 0 ? segment.to : y[n - 1],
    start: n === 0 ? segment.start : x[0],
    end: n === 0 ? segment.end : x[n - 1],
  };
}

/** Value at `at` on a chain of straight lines; `sign` is the direction of `x`. The end values outside. */
function interpolate(x: Float64Array, y: Float64Array, at: number, sign: number): number {
  const n = x.length;
  if (n === 0) return NaN;
  if (sign * at <= sign * x[0]) return y[0];
  if (sign * at >= sign * x[n - 1]) return y[n - 1];
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sign * x[middle] <= sign * at) low = middle;
    else high = middle;
  }
  return y[low] + ((y[high] - y[low]) * (at - x[low])) / (x[high] - x[low]);
}

/** Nodes (time, temperature): each sample, smoothed as far as its noise needs. */
function smoothed(
  time: Float64Array,
  temperature: Float64Array,
  seconds: number,
): { x: Float64Array; y: Float64Array } {
  const n = time.length;
  const inWindow = n < 2 ? 1 : (seconds * (n - 1)) / Math.max(time[n - 1] - time[0], 1e-9);
  // Of many samples some tell the noise as well; each window keeps enough of them for a line.
  const every = Math.max(1, Math.floor(Math.min(n / 5000, inWindow / 20)));
  const some = every === 1 ? { x: time, y: temperature } : { x: each(time, every), y: each(temperature, every) };
  const wide = localLine(some.x, some.y, seconds / 2);
  const noise = 1.4826 * medianDistance(some.y, wide);
  if (!(noise > aim / 10)) return { x: time, y: temperature };
  const needed = (noise / aim) ** 2;
  if (needed >= inWindow) return { x: time, y: every === 1 ? wide : localLine(time, temperature, seconds / 2) };
  const half = (0.5 * seconds * needed) / inWindow;
  // Three samples in reach make no line: each is its own.
  if (half < 2 * extentOf(time).leastStep) return { x: time, y: temperature };
  return { x: time, y: localLine(time, temperature, half) };
}

function each(values: Float64Array, every: number): Float64Array {
  const some = new Float64Array(Math.ceil(values.length / every));
  for (let k = 0; k < some.length; k++) some[k] = values[k * every];
  return some;
}

/** Median distance of a curve and its smoothed values. */
function medianDistance(values: Float64Array, smooth: Float64Array): number {
  const distances = smooth.map((value, k) => Math.abs(values[k] - value)).sort();
  return distances.length === 0 ? 0 : distances[distances.length >> 1];
}
