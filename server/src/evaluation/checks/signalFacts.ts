import type { Curve } from '../../analysis/curve';
import { extentOf } from '../../analysis/extent';
import type { Noise } from '../../analysis/noise';
import type { Segment } from '../../runs/run';
import type { PreparedRun, PreparedSignal } from '../preparedRun';
import { neighbourCorrelation } from './neighbourCorrelation';
import { middle, type Stretch } from './stretch';

/** A single difference that stands out of its surroundings; `size` in multiples of sigma, `change` in the signal. */
export interface Jump extends Stretch {
  readonly change: number;
}

/** What one signal shows, each fact worked out when first asked for. */
export class SignalFacts {
  private readonly known = new Map<string, unknown>();

  constructor(
    private readonly run: PreparedRun,
    private readonly signal: PreparedSignal,
  ) {}

  /** Neighbouring readings more than 1.5 of the intervals around them apart, masked stretches left out; in intervals. */
  get gaps(): readonly Stretch[] {
    return this.once('gaps', () => {
      const isMasked = (gap: Stretch) => this.run.masked.some((m) => gap.from < m.to && gap.to > m.from);
      return gapsOf(this.curves.map((c) => c.x)).filter((gap) => !isMasked(gap));
    });
  }

  /** Time of the first and the last good reading, s. */
  get covers(): { readonly from: number; readonly to: number } | null {
    const first = this.curves.at(0);
    const last = this.curves.at(-1);
    return first === undefined || last === undefined ? null : { from: first.x[0], to: last.x[last.x.length - 1] };
  }

  /** The largest mean over 30 s, and when; null where not even a reading is above `least`. */
  topAbove(least: number): Top | null {
    if (!this.curves.some(({ y }) => !(extentOf(y).most <= least))) return null;
    return this.once('top', () =>
      this.curves.reduce<Top | null>((best, curve) => {
        const own = topOf(curve);
        return best === null || (own !== null && own.mean > best.mean) ? own : best;
      }, null),
    );
  }

  /** Readings in a row that equal the extreme of the signal and stop it short; `size` in readings. */
  get saturated(): readonly Stretch[] {
    return this.once('saturated', () => saturatedOf(this.curves, () => this.signal.noise(this.longest)));
  }

  /** Correlation of neighbouring residuals in the longest segment; null where noise does not show. */
  get correlation(): number | null {
    return this.once('correlation', () => {
      const curve = this.signal.curve(this.longest);
      return curve === null ? null : neighbourCorrelation(curve, this.signal.noise(this.longest));
    });
  }

  get jumps(): readonly Jump[] {
    return this.once('jumps', () =>
      this.run.segments.flatMap((segment) => {
        const curve = this.signal.curve(segment);
        return curve === null ? [] : jumpsOf(curve, () => this.signal.noise(segment).sigma);
      }),
    );
  }

  private get longest(): Segment | null {
    return [...this.run.segments].sort((a, b) => b.last - b.first - (a.last - a.first)).at(0) ?? null;
  }

  /** The signal in the pieces that the evaluation uses too: a segment each, or all of it where there are none. */
  private get curves(): readonly Curve[] {
    return this.once('curves', () => {
      const { segments } = this.run;
      const pieces = segments.length === 0 ? [this.signal.curve(null)] : segments.map((s) => this.signal.curve(s));
      return pieces.filter((c) => c !== null);
    });
  }

  private once<T>(name: string, make: () => T): T {
    if (!this.known.has(name)) this.known.set(name, make());
    return this.known.get(name) as T;
  }
}

/** Intervals on either side that say what is usual here: exports by temperature are denser where it is slower. */
const BESIDE = 5;

/** Gaps within the pieces and from one piece to the next. */
function gapsOf(pieces: readonly Float64Array[]): Stretch[] {
  const gaps: Stretch[] = [];
  pieces.forEach((time, piece) => {
    const next = pieces.at(piece + 1);
    const n = time.length;
    const { leastStep, mostStep } = extentOf(time);
    const isEven = mostStep <= 1.5 * leastStep;
    for (let i = isEven ? n : 1; i < n; i++) {
      const step = time[i] - time[i - 1];
      const before = i > 1 ? time[i - 1] - time[i - 2] : Infinity;
      const after = i + 1 < n ? time[i + 1] - time[i] : Infinity;
      if (step > 1.5 * Math.min(before, after)) addGap(gaps, time, i, time[i]);
    }
    if (next !== undefined) addGap(gaps, time, n, next[0]);
  });
  return gaps;
}

/** The interval that ends at `to`, before which reading `i` - 1 lies, if it is wide for its place. */
function addGap(gaps: Stretch[], time: Float64Array, i: number, to: number): void {
  const beside: number[] = [];
  for (let k = Math.max(1, i - BESIDE); k <= Math.min(time.length - 1, i + BESIDE); k++) {
    if (k !== i) beside.push(time[k] - time[k - 1]);
  }
  const usual = middle(beside);
  const from = time[i - 1];
  if (to - from > 1.5 * usual) gaps.push({ from, to, size: (to - from) / usual });
}

/** Means over half a minute: one reading above a limit is noise. */
const MEAN = 30;

interface Top {
  readonly mean: number;
  readonly time: number;
}

function topOf({ x, y }: Curve): Top | null {
  let top: Top | null = null;
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

/**
 * Runs of readings equal to the largest or smallest value where the curve comes in or goes out steeply: cut off. A level
 * stretch of a rounded signal, and what is padded at an end of the file, is no saturation.
 */
function saturatedOf(pieces: readonly Curve[], noise: () => Noise): Stretch[] {
  const extents = pieces.map(({ y }) => extentOf(y));
  const top = Math.max(...extents.map((e) => e.most));
  const bottom = Math.min(...extents.map((e) => e.least));
  const steep = 0.005 * (top - bottom);
  const found: Stretch[] = [];
  for (const { x, y } of pieces) {
    for (const extreme of new Set([top, bottom])) {
      for (let i = y.indexOf(extreme); i >= 0;) {
        let end = i + 1;
        while (end < y.length && y[end] === extreme) end++;
        const size = end - i;
        if (size >= 3 && i >= 3 && end + 3 <= y.length) {
          const step = Math.max(Math.abs(y[i] - y[i - 3]), Math.abs(y[end + 2] - y[i]));
          if (step > steep && step > 3 * Math.max(noise().resolution, noise().sigma)) {
            found.push({ from: x[i], to: x[end - 1], size });
          }
        }
        i = y.indexOf(extreme, end);
      }
    }
  }
  return found.sort((a, b) => a.from - b.from);
}

/** Differences that exceed five times those of the same sign within three readings: no part of a smooth change. */
function jumpsOf({ x, y }: Curve, sigmaOf: () => number): Jump[] {
  // Differences of neighbours never scatter more than the noise itself does, so nothing is missed by this sieve.
  const least = 5 * differenceScatter(y);
  const found: Jump[] = [];
  const { leastStep, mostStep } = extentOf(y);
  if (!(least > 0) || Math.max(mostStep, -leastStep) < least) return found;
  for (let i = nextChange(y, 1, least); i < y.length; i = nextChange(y, i + 1, least)) {
    const change = y[i] - y[i - 1];
    let beside = 0;
    for (let k = Math.max(1, i - 3); k <= Math.min(y.length - 1, i + 3); k++) {
      if (k !== i) beside = Math.max(beside, Math.sign(change) * (y[k] - y[k - 1]));
    }
    if (Math.abs(change) <= 5 * beside) continue;
    const sigma = sigmaOf();
    if (!(sigma > 0)) return [];
    found.push({ from: x[i - 1], to: x[i], size: Math.abs(change) / sigma, change });
  }
  return found;
}

/** From reading `i` on, the first one that differs by so much from the one before it; the length where there is none. */
function nextChange(y: Float64Array, i: number, least: number): number {
  for (; i < y.length; i++) {
    const change = y[i] - y[i - 1];
    if (change >= least || change <= -least) break;
  }
  return i;
}

/** Scatter of one reading from a sample of second differences: for white noise its sigma, for smoothed noise less. */
function differenceScatter(y: Float64Array): number {
  const stride = Math.max(1, Math.floor(y.length / 2000));
  const bends: number[] = [];
  for (let i = 1; i + 1 < y.length; i += stride) bends.push(Math.abs(y[i - 1] - 2 * y[i] + y[i + 1]));
  const typical = middle(bends);
  if (typical > 0) return (1.4826 * typical) / Math.sqrt(6);
  // Rounded readings: more than half of them lie on a line. Their step is the smallest bend there is.
  const bent = bends.filter((b) => b > 0);
  return bent.length === 0 ? 0 : bent.reduce((a, b) => Math.min(a, b)) / Math.sqrt(12);
}
