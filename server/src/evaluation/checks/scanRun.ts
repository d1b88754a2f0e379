import type { Curve } from '../../analysis/curve';
import type { Noise } from '../../analysis/noise';
import type { SignalName } from '../../language/model';
import type { Segment } from '../../runs/run';
import type { PreparedRun, PreparedSignal } from '../preparedRun';

/** A stretch of time that shows something, and how much. */
export interface Stretch {
  /** s. */
  readonly from: number;
  readonly to: number;
  readonly size: number;
}

/** What one pass over the columns shows, before any limit is applied. */
export interface RunFacts {
  /** Median distance of readings, s. */
  readonly interval: number;
  /** Rows whose time is not later than every row before. */
  readonly disordered: { readonly count: number; readonly firstRow: number | null; readonly times: readonly number[] };
  /** Reversals of the temperature inside ramps; `size` in K, with the noise of the temperature there. */
  readonly reversals: readonly (Stretch & { readonly sigma: number })[];
  readonly signals: ReadonlyMap<SignalName, SignalFacts>;
}

export interface SignalFacts {
  /** Neighbouring readings more than 1.5 of the intervals around them apart, masked stretches left out; `size` in these. */
  readonly gaps: readonly Stretch[];
  /** Time of the first and the last good reading, s; null where there are none. */
  readonly covers: { readonly from: number; readonly to: number } | null;
  /** The largest mean over 30 s, and when; null for signals other than the mass. */
  readonly top: { readonly mean: number; readonly time: number } | null;
  /** Readings in a row that equal the extreme of the signal and stop it short; `size` in readings. */
  readonly saturated: readonly Stretch[];
  /** Correlation of neighbouring residuals where the signal is quiet; null where noise does not show. */
  readonly correlation: number | null;
  /** Single differences that stand out of their surroundings; `size` in multiples of sigma, `change` in the signal. */
  readonly jumps: readonly (Stretch & { readonly change: number })[];
}

/** One pass over a run: O(rows), to be remembered with the run. */
export function scanRun(run: PreparedRun): RunFacts {
  const interval = medianInterval(run.time);
  const signals = new Map<SignalName, SignalFacts>();
  for (const [name, signal] of run.signals) {
    // The rate is derived from the mass: what it shows the mass shows.
    if (name === 'time' || name === 'temperature' || name === 'rate') continue;
    signals.set(name, scanSignal(run, signal));
  }
  return {
    interval,
    disordered: disorderOf(run),
    reversals: run.segments.flatMap((segment) => reversalsOf(run, segment)),
    signals,
  };
}

function scanSignal(run: PreparedRun, signal: PreparedSignal): SignalFacts {
  const whole = signal.curve(null);
  if (whole === null) return { gaps: [], covers: null, top: null, saturated: [], correlation: null, jumps: [] };
  const noise = signal.noise(null);
  const jumps: (Stretch & { change: number })[] = [];
  for (const segment of run.segments) {
    const curve = signal.curve(segment);
    if (curve !== null) jumps.push(...jumpsOf(curve, signal.noise(segment).sigma));
  }
  const isMasked = (gap: Stretch) => run.masked.some((m) => gap.from < m.to && gap.to > m.from);
  return {
    gaps: gapsOf(whole.x).filter((gap) => !isMasked(gap)),
    covers: { from: whole.x[0], to: whole.x[whole.x.length - 1] },
    top: signal.signal === 'mass' ? topOf(whole) : null,
    saturated: saturatedOf(whole, noise),
    correlation: neighbourCorrelation(whole, noise),
    jumps,
  };
}

/** Means over half a minute: one reading above a limit is noise. */
const MEAN = 30;

function topOf({ x, y }: Curve): SignalFacts['top'] {
  let top: { mean: number; time: number } | null = null;
  let first = 0;
  let sum = 0;
  const origin = y[0];
  for (let i = 0; i < x.length; i++) {
    sum += y[i] - origin;
    while (x[i] - x[first] > MEAN) sum -= y[first++] - origin;
    const n = i - first + 1;
    if (n >= 3 && (top === null || origin + sum / n > top.mean)) {
      top = { mean: origin + sum / n, time: (x[i] + x[first]) / 2 };
    }
  }
  return top;
}

export function medianInterval(time: Float64Array): number {
  const stride = Math.max(1, Math.floor(time.length / 4000));
  const steps: number[] = [];
  for (let i = 1; i < time.length; i += stride) {
    const step = time[i] - time[i - 1];
    if (step > 0) steps.push(step);
  }
  return middle(steps);
}

/** Intervals on either side that say what is usual here: exports by temperature are denser where it is slower. */
const BESIDE = 5;

function gapsOf(time: Float64Array): Stretch[] {
  const gaps: Stretch[] = [];
  const beside: number[] = [];
  for (let i = 1; i < time.length; i++) {
    const step = time[i] - time[i - 1];
    const before = i > 1 ? time[i - 1] - time[i - 2] : Infinity;
    const after = i + 1 < time.length ? time[i + 1] - time[i] : Infinity;
    if (step <= 1.5 * Math.min(before, after)) continue;
    beside.length = 0;
    for (let k = Math.max(1, i - BESIDE); k <= Math.min(time.length - 1, i + BESIDE); k++) {
      if (k !== i) beside.push(time[k] - time[k - 1]);
    }
    const usual = middle(beside);
    if (step > 1.5 * usual) gaps.push({ from: time[i - 1], to: time[i], size: step / usual });
  }
  return gaps;
}

function disorderOf(run: PreparedRun): RunFacts['disordered'] {
  const column = run.raw.columns.find((c) => c.signal === 'time');
  if (column === undefined) return { count: 0, firstRow: null, times: [] };
  const times: number[] = [];
  let firstRow: number | null = null;
  let latest = Number.NEGATIVE_INFINITY;
  let count = 0;
  for (let i = 0; i < column.values.length; i++) {
    const t = column.values[i];
    if (Number.isNaN(t)) continue;
    if (t > latest) {
      latest = t;
      continue;
    }
    count++;
    firstRow ??= i + 1;
    if (times.length < 1000) times.push(t);
  }
  return { count, firstRow, times };
}

/** How far the temperature falls behind its own furthest point within a ramp, from means over three readings. */
function reversalsOf(run: PreparedRun, segment: Segment): (Stretch & { sigma: number })[] {
  const { time, temperature } = run;
  if (temperature === null || segment.direction === 'hold') return [];
  const way = segment.direction === 'heating' ? 1 : -1;
  const sigma = run.signals.get('temperature')?.noise(segment).sigma ?? 0;
  const found: (Stretch & { sigma: number })[] = [];
  let furthest = Number.NEGATIVE_INFINITY;
  let since = segment.first;
  let deepest = 0;
  let until = segment.first;
  const close = (): void => {
    if (deepest > 0.1) found.push({ from: time[since], to: time[until], size: deepest, sigma });
    deepest = 0;
  };
  for (let i = segment.first + 1; i < segment.last - 1; i++) {
    const mean = (way * (temperature[i - 1] + temperature[i] + temperature[i + 1])) / 3;
    if (Number.isNaN(mean)) continue;
    if (mean >= furthest) {
      close();
      furthest = mean;
      since = i;
    } else if (furthest - mean > deepest) {
      deepest = furthest - mean;
      until = i;
    }
  }
  close();
  return found;
}

/**
 * Runs of readings equal to the largest or smallest value where the curve comes in or goes out steeply: cut off. A level
 * stretch of a rounded signal, and what is padded at an end of the file, is no saturation.
 */
function saturatedOf({ x, y }: Curve, noise: Noise): Stretch[] {
  let top = y[0];
  let bottom = y[0];
  for (const value of y) {
    if (value > top) top = value;
    if (value < bottom) bottom = value;
  }
  const steep = Math.max(3 * noise.resolution, 3 * noise.sigma, 0.005 * (top - bottom));
  const found: Stretch[] = [];
  for (let i = 0; i < y.length;) {
    let end = i + 1;
    if (y[i] === top || y[i] === bottom) {
      while (end < y.length && y[end] === y[i]) end++;
      const size = end - i;
      if (size >= 3 && i >= 3 && end + 3 <= y.length) {
        const entry = Math.abs(y[i] - y[i - 3]);
        const exit = Math.abs(y[end + 2] - y[i]);
        if (entry > steep || exit > steep) found.push({ from: x[i], to: x[end - 1], size });
      }
    }
    i = end;
  }
  return found;
}

/** Readings a block of residuals has, and blocks at least. */
const BLOCK = 120;
const FEWEST_BLOCKS = 8;
/** A block whose residuals scatter more than this many sigma holds signal, not noise. */
const QUIET = 1.5;

/**
 * Correlation of neighbouring residuals about parabolas through 120 readings each: the median over the blocks that hold
 * nothing but noise. The parabola takes a little of it: 0.86 (means over 7 readings) comes out as 0.83, 0.80 as 0.76.
 * Rounded readings tell nothing (their residuals follow the rounding), nor do exact curves; null then.
 */
function neighbourCorrelation({ y }: Curve, noise: Noise): number | null {
  if (!(noise.sigma > 0) || (noise.resolution > 0 && noise.sigma < noise.resolution)) return null;
  const correlations: number[] = [];
  const stride = Math.max(BLOCK, Math.floor(y.length / 400));
  let size = 0;
  for (const value of y) size = Math.max(size, Math.abs(value));
  for (let first = 0; first + BLOCK <= y.length; first += stride) {
    const residuals = parabolaResiduals(y.subarray(first, first + BLOCK));
    let power = 0;
    let product = 0;
    for (let i = 0; i < BLOCK; i++) {
      power += residuals[i] ** 2;
      if (i > 0) product += residuals[i] * residuals[i - 1];
    }
    const scatter = Math.sqrt(power / BLOCK);
    if (scatter > 1e-7 * size && scatter < QUIET * noise.sigma) correlations.push(product / power);
  }
  return correlations.length < FEWEST_BLOCKS ? null : middle(correlations);
}

/** Residuals about the least-squares parabola, on evenly spaced readings. */
function parabolaResiduals(y: Float64Array): Float64Array {
  const n = y.length;
  const half = (n - 1) / 2;
  let mean = 0;
  for (const value of y) mean += (value - y[0]) / n;
  let squares = 0;
  let fourths = 0;
  let slope = 0;
  for (let i = 0; i < n; i++) {
    const u = i - half;
    squares += u * u;
    slope += u * (y[i] - y[0]);
  }
  const spread = squares / n;
  let bend = 0;
  for (let i = 0; i < n; i++) {
    const q = (i - half) ** 2 - spread;
    fourths += q * q;
    bend += q * (y[i] - y[0]);
  }
  const residuals = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const u = i - half;
    residuals[i] = y[i] - y[0] - mean - (slope / squares) * u - (bend / fourths) * (u * u - spread);
  }
  return residuals;
}

/** Differences that exceed five times those of the same sign within three readings: no part of a smooth change. */
function jumpsOf({ x, y }: Curve, sigma: number): (Stretch & { change: number })[] {
  const found: (Stretch & { change: number })[] = [];
  if (!(sigma > 0)) return found;
  for (let i = 1; i < y.length; i++) {
    const change = y[i] - y[i - 1];
    const size = Math.abs(change) / sigma;
    if (size < 5) continue;
    let beside = 0;
    for (let k = Math.max(1, i - 3); k <= Math.min(y.length - 1, i + 3); k++) {
      if (k !== i) beside = Math.max(beside, Math.sign(change) * (y[k] - y[k - 1]));
    }
    if (Math.abs(change) > 5 * beside) found.push({ from: x[i - 1], to: x[i], size, change });
  }
  return found;
}

function middle(values: readonly number[]): number {
  if (values.length === 0) return NaN;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
