import { extentOf } from '../../analysis/extent';
import type { SignalName } from '../../language/model';
import type { Segment } from '../../runs/run';
import type { PreparedRun } from '../preparedRun';
import { SignalFacts } from './signalFacts';
import { middle, type Stretch } from './stretch';

/**
 * What the columns show before any limit is applied. Depends on the run alone and is worked out when asked for, once: to
 * be remembered with the run.
 */
export class RunFacts {
  private readonly known = new Map<SignalName, SignalFacts | null>();
  private order: Disorder | null = null;
  private turns: readonly Reversal[] | null = null;
  /** Median distance of readings, s. */
  readonly interval: number;

  constructor(private readonly run: PreparedRun) {
    this.interval = medianInterval(run.time);
  }

  /** Facts of a signal of the file; null where the run has none. A rate shows what its mass shows. */
  signal(name: SignalName): SignalFacts | null {
    const of = name === 'rate' ? 'mass' : name;
    const before = this.known.get(of);
    if (before !== undefined) return before;
    const signal = this.run.signals.get(of);
    const made = signal === undefined ? null : new SignalFacts(this.run, signal);
    this.known.set(of, made);
    return made;
  }

  get disordered(): Disorder {
    this.order ??= disorderOf(this.run);
    return this.order;
  }

  get reversals(): readonly Reversal[] {
    this.turns ??= this.run.segments.flatMap((segment) => reversalsOf(this.run, segment));
    return this.turns;
  }
}

/** Rows whose time is not later than every row before. */
export interface Disorder {
  readonly count: number;
  readonly firstRow: number | null;
  readonly times: readonly number[];
}

/** A reversal of the temperature inside a ramp; `size` in K, with the noise of the temperature there. */
export interface Reversal extends Stretch {
  readonly sigma: number;
}

export function scanRun(run: PreparedRun): RunFacts {
  return new RunFacts(run);
}

function medianInterval(time: Float64Array): number {
  const stride = Math.max(1, Math.floor(time.length / 4000));
  const steps: number[] = [];
  for (let i = 1; i < time.length; i += stride) {
    const step = time[i] - time[i - 1];
    if (step > 0) steps.push(step);
  }
  return middle(steps);
}

function disorderOf(run: PreparedRun): Disorder {
  const column = run.raw.columns.find((c) => c.signal === 'time');
  const clock = column === undefined ? null : extentOf(column.values);
  if (column === undefined || (clock!.finite && clock!.leastStep > 0)) return { count: 0, firstRow: null, times: [] };
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

/** Smaller reversals are not looked at, K. */
const LEAST = 0.1;

/** How far the temperature falls behind its own furthest point within a ramp, from means over three readings. */
function reversalsOf(run: PreparedRun, segment: Segment): Reversal[] {
  const { time, temperature } = run;
  if (temperature === null || segment.direction === 'hold') return [];
  const way = segment.direction === 'heating' ? 1 : -1;
  const { finite, leastStep, mostStep } = extentOf(temperature);
  if (finite && (way > 0 ? leastStep >= 0 : mostStep <= 0)) return [];
  const found: Stretch[] = [];
  let furthest = Number.NEGATIVE_INFINITY;
  let since = segment.first;
  let deepest = 0;
  let until = segment.first;
  const close = (): void => {
    if (deepest > LEAST) found.push({ from: time[since], to: time[until], size: deepest });
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
  if (found.length === 0) return [];
  const sigma = run.signals.get('temperature')?.noise(segment).sigma ?? 0;
  return found.map((stretch) => ({ ...stretch, sigma }));
}
