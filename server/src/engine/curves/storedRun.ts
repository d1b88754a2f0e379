import type { Window } from '../../analysis/curve';
import type { PreparedRun } from '../../evaluation/preparedRun';
import type { SignalName } from '../../language/model';
import type { Abscissa } from '../../protocol/view';
import type { Segment, StoredUnit } from '../../runs/run';
import { ascending, type Ascending } from './ascending';
import { firstAbove, firstNotBelow } from './samplesIn';
import { StoredCurve } from './storedCurve';
import { temperaturesOf } from './temperatures';

/** One lane of a run with its samples as stored. */
export interface StoredLane {
  readonly signal: SignalName;
  readonly unit: StoredUnit;
  /** In order of time. */
  readonly curves: readonly StoredCurve[];
}

/** What a run without a temperature is drawn as. */
export const wholeRun = 'whole run';

/** The lanes of a prepared run, made once for each: glosses and revisions with the same data and clauses share them. */
export function storedLanes(run: PreparedRun): readonly StoredLane[] {
  const steps = lanesInSteps(run);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * The same in steps, and with them what a picture of the whole run looks up: a million readings must not hold up who asks
 * for something else. `abscissa`: what is prepared to be drawn over; null: nothing.
 */
export function* lanesInSteps(
  run: PreparedRun,
  abscissa: Abscissa | null = null,
): Generator<void, readonly StoredLane[]> {
  const lanes = made.get(run) ?? (yield* newLanes(run));
  if (abscissa === null) return lanes;
  for (const curve of lanes.flatMap((lane) => lane.curves)) yield* curve.prepare(abscissa);
  return lanes;
}

function* newLanes(run: PreparedRun): Generator<void, readonly StoredLane[]> {
  const axes = new SharedAxes();
  const lanes: StoredLane[] = [];
  for (const signal of orderedSignals(run)) {
    const prepared = run.signals.get(signal)!;
    const curves: StoredCurve[] = [];
    for (const segment of run.segments.length === 0 ? [null] : run.segments) {
      const curve = prepared.curve(segment);
      yield;
      if (curve === null) continue;
      for (const [first, last] of withoutMasked(curve.x, run.masked)) {
        const time = curve.x.subarray(first, last);
        const temperature = (): Ascending | null =>
          segment === null ? null : axes.of(segment, time, () => temperaturesOf(run, segment, signal, time), signal);
        curves.push(new StoredCurve(segment?.name ?? wholeRun, time, curve.y.subarray(first, last), temperature));
      }
    }
    if (curves.length > 0) lanes.push({ signal, unit: prepared.unit, curves });
  }
  // Somebody else may have been quicker between two steps: all share what was first.
  const known = made.get(run) ?? lanes;
  made.set(run, known);
  return known;
}

const made = new WeakMap<PreparedRun, readonly StoredLane[]>();

const first: readonly SignalName[] = ['mass', 'rate', 'heatflow'];
const last: readonly SignalName[] = ['temperature'];

/** Mass, its rate, heat flow, then the further signals by name and number, then the temperature. */
function orderedSignals(run: PreparedRun): SignalName[] {
  const has = [...run.signals.keys()];
  const further = has.filter((s) => !first.includes(s) && !last.includes(s));
  further.sort((a, b) => {
    const [wordA, numberA] = a.split('(');
    const [wordB, numberB] = b.split('(');
    if (wordA !== wordB) return wordA < wordB ? 1 : -1;
    return parseFloat(numberA) - parseFloat(numberB);
  });
  return [...first.filter((s) => has.includes(s)), ...further, ...last.filter((s) => has.includes(s))];
}

/** Stretches of samples that no mask lies between, as places from and up to. */
function withoutMasked(time: Float64Array, masked: readonly Window[]): readonly (readonly [number, number])[] {
  const windows = [...masked].sort((a, b) => a.from - b.from);
  const stretches: (readonly [number, number])[] = [];
  let start = 0;
  for (const { from, to } of windows) {
    const end = firstNotBelow(time, from, start, time.length);
    if (end > start) stretches.push([start, end]);
    start = Math.max(start, firstAbove(time, to, start, time.length));
  }
  if (start < time.length) stretches.push([start, time.length]);
  return stretches;
}

/** Signals of one file have the same times: their way over the temperature is sorted and kept once. */
class SharedAxes {
  private readonly known = new Map<string, { time: Float64Array; own: boolean; axis: Ascending }[]>();

  of(segment: Segment, time: Float64Array, make: () => Float64Array | null, signal: SignalName): Ascending | null {
    const own = signal !== 'rate';
    const axes = this.known.get(segment.name) ?? [];
    this.known.set(segment.name, axes);
    const found = axes.find((a) => a.own === own && sameTimes(a.time, time));
    if (found !== undefined) return found.axis;
    const temperature = make();
    if (temperature === null) return null;
    const axis = ascending(temperature);
    axes.push({ time, own, axis });
    return axis;
  }
}

function sameTimes(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
