import type { Abscissa } from '../../protocol/view';
import { sampleAt, type CurveLane, type RunCurve, type RunCurves } from './runCurves';
import { firstAbove, nearestPlace } from './samplesIn';

/** Where a cursor stands and what every lane says there. Values in the units asked for; text is made in `presentation`. */
export interface CursorPlace {
  readonly part: string;
  /** s of the file's own time, of the sample it stands on. */
  readonly time: number;
  /** °C; null where the run has none. */
  readonly temperature: number | null;
  readonly values: readonly CursorValue[];
}

export interface CursorValue {
  readonly lane: string;
  readonly unit: string;
  readonly y: number;
  /** Key of the curves it is of: empty for the run itself. */
  readonly key: string;
}

export interface CursorQuestion {
  readonly abscissa: Abscissa;
  /** °C or s. */
  readonly at: number;
  /** The part the cursor is on; null: the first shown that holds the point, else the nearest. */
  readonly part: string | null;
  /** Samples to walk from there, to the right where positive; 0: the nearest sample. */
  readonly step: number;
  readonly shownParts: readonly string[];
  /** Units by lane; the lane's usual one where it is not named. */
  readonly units: Readonly<Record<string, string>>;
}

/**
 * The sample nearest to a point, or so many samples to the right of it, and the nearest sample of every lane there.
 *
 * It walks over the samples of the lane with the most of them, from one part into the next over time; over temperature
 * it stops at the ends of its part, for the neighbours there are those of another ramp. Lanes are read at the same time,
 * overlaid runs at the same place of the abscissa in the part of the same name. A lane without a sample near (five
 * usual intervals) says nothing. Null where no part shown has samples.
 */
export function cursorAt(run: RunCurves, others: readonly RunCurves[], question: CursorQuestion): CursorPlace | null {
  const found = walked(run, question);
  if (found === null) return null;
  const { curve, sample, at } = found;
  const time = curve.time[sample];
  const values = run.lanes.flatMap((lane) => {
    const near = lane === found.lane ? { curve, sample } : nearestInTime(lane, curve.part, time);
    return valuesOf(lane, near, run.key, question);
  });
  for (const other of others) {
    for (const lane of other.lanes) {
      values.push(...valuesOf(lane, nearestOver(lane, curve.part, question.abscissa, at), other.key, question));
    }
  }
  return { part: curve.part, time, temperature: temperatureOf(run, curve, sample), values };
}

/** The next place with another abscissa: a cursor is told by its abscissa, and would never leave equal ones. */
function afterEqual({ curves, abscissa, length }: Track, start: number): number {
  let before = 0;
  for (const curve of curves) {
    const { x } = curve.drawn(abscissa)!.axis;
    if (start < before + x.length) return before + firstAbove(x, x[start - before], start - before, x.length);
    before += x.length;
  }
  return length;
}

interface Sample {
  readonly curve: RunCurve;
  readonly sample: number;
}

function walked(
  run: RunCurves,
  { abscissa, at, part, step, shownParts }: CursorQuestion,
): (Sample & { readonly lane: CurveLane; readonly at: number }) | null {
  const names = run.parts.map((p) => p.name).filter((name) => shownParts.includes(name));
  const tracks = names.flatMap((name) => trackOf(run, name, abscissa) ?? []);
  if (tracks.length === 0) return null;
  let index = tracks.findIndex((t) => t.part === part);
  if (index < 0) index = nearestTrack(tracks, at);
  const start = placeOn(tracks[index], at);
  let place = step > 0 ? Math.max(start + step, afterEqual(tracks[index], start)) : start + step;
  if (abscissa === 'time') {
    for (; place < 0 && index > 0; index--) place += tracks[index - 1].length;
    for (; place >= tracks[index].length && index + 1 < tracks.length; index++) place -= tracks[index].length;
  }
  const track = tracks[index];
  place = Math.min(Math.max(place, 0), track.length - 1);
  for (const curve of track.curves) {
    const axis = curve.drawn(abscissa)!.axis;
    if (place < axis.x.length) return { curve, sample: sampleAt(axis, place), lane: track.lane, at: axis.x[place] };
    place -= axis.x.length;
  }
  return null;
}

/** The samples of one part that a cursor walks over, in the order of the abscissa. */
interface Track {
  readonly part: string;
  readonly abscissa: Abscissa;
  readonly lane: CurveLane;
  readonly curves: readonly RunCurve[];
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

function trackOf(run: RunCurves, part: string, abscissa: Abscissa): Track | null {
  let best: Track | null = null;
  for (const lane of run.lanes) {
    const curves = lane.curves.filter((c) => c.part === part && (c.drawn(abscissa)?.axis.x.length ?? 0) > 0);
    const x = (curve: RunCurve): Float64Array => curve.drawn(abscissa)!.axis.x;
    const length = curves.reduce((sum, c) => sum + x(c).length, 0);
    if (length === 0 || (best !== null && length <= best.length)) continue;
    curves.sort((a, b) => x(a)[0] - x(b)[0]);
    const end = x(curves[curves.length - 1]);
    best = { part, abscissa, lane, curves, length, from: x(curves[0])[0], to: end[end.length - 1] };
  }
  return best;
}

/** The first track that holds the point, else the nearest one. */
function nearestTrack(tracks: readonly Track[], at: number): number {
  const distances = tracks.map((t) => Math.max(0, t.from - at, at - t.to));
  return distances.indexOf(Math.min(...distances));
}

/** The place of the nearest sample, counted over all curves of a track. */
function placeOn(track: Track, at: number): number {
  let best = 0;
  let least = Infinity;
  let before = 0;
  for (const curve of track.curves) {
    const { x } = curve.drawn(track.abscissa)!.axis;
    const place = nearestPlace(x, at);
    const distance = Math.abs(x[place] - at);
    if (distance < least) {
      least = distance;
      best = before + place;
    }
    before += x.length;
  }
  return best;
}

function nearestInTime(lane: CurveLane, part: string, time: number): Sample | null {
  return nearest(
    lane,
    part,
    (curve) => curve.time,
    time,
    (_, place) => place,
  );
}

function nearestOver(lane: CurveLane, part: string, abscissa: Abscissa, at: number): Sample | null {
  return nearest(
    lane,
    part,
    (curve) => curve.drawn(abscissa)?.axis.x ?? new Float64Array(0),
    at,
    (curve, place) => sampleAt(curve.drawn(abscissa)!.axis, place),
  );
}

/** Samples farther away than this many usual intervals are not near. */
const NEAR = 5;

function nearest(
  lane: CurveLane,
  part: string,
  axis: (curve: RunCurve) => Float64Array,
  at: number,
  sample: (curve: RunCurve, place: number) => number,
): Sample | null {
  let best: Sample | null = null;
  let least = Infinity;
  for (const curve of lane.curves) {
    const x = axis(curve);
    if (curve.part !== part || x.length === 0) continue;
    const place = nearestPlace(x, at);
    const distance = Math.abs(x[place] - at);
    const usual = (x[x.length - 1] - x[0]) / Math.max(1, x.length - 1);
    if (distance >= least || distance > NEAR * usual) continue;
    least = distance;
    best = { curve, sample: sample(curve, place) };
  }
  return best;
}

function valuesOf(lane: CurveLane, near: Sample | null, key: string, { units }: CursorQuestion): CursorValue[] {
  const unit = units[lane.id] ?? lane.units[0];
  const factor = near?.curve.factor(unit) ?? null;
  if (near === null || factor === null) return [];
  return [{ lane: lane.id, unit, y: near.curve.values[near.sample] * factor, key }];
}

/** As read beside the sample where it was, else of the fitted programme. */
function temperatureOf(run: RunCurves, curve: RunCurve, sample: number): number | null {
  const axis = curve.drawn('temperature')?.axis ?? null;
  if (axis === null) return null;
  const place = axis.order === null ? sample : axis.order.indexOf(sample);
  return place < 0 ? run.temperatureAt(curve.part, curve.time[sample]) : axis.x[place];
}
