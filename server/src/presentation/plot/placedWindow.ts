import type { Result, ResultWindow } from '../../evaluation/result';
import { celsiusOf, isTime, secondsOf } from '../../evaluation/place';
import type { Amount, SegmentName } from '../../language/model';
import type { PlotCurves, PlotPart } from './plotCurves';
import type { WrittenPlace } from './places';

/** A window as it lies on the run, its ends in the order of time. */
export interface PlacedWindow {
  readonly part: PlotPart | null;
  /** s at which minutes of this window begin to count. */
  readonly origin: number;
  readonly unit: '°C' | 'min';
  readonly from: PlacedEnd;
  readonly to: PlacedEnd;
  /** `around 930 °C`, `hull of A + B` where a rule found the ends; null where they are written. */
  readonly rule: string | null;
}

export interface PlacedEnd {
  /** In the unit of the window. */
  readonly value: number;
  /** s of the file's own time. */
  readonly time: number;
  readonly temperature: number | null;
}

/**
 * Where a statement stands on the run: as its results say, or, where it failed and has none, as it is written, as far as
 * its segment is known: an edge that went too far can then be taken back. Null where there is no such place.
 *
 * @param part the window of a part of a sum, by name: a hull lies where its parts lie
 */
export function placedWindow(
  place: WrittenPlace,
  results: readonly Result[],
  curves: PlotCurves,
  part: (name: string) => PlacedWindow | null,
): PlacedWindow | null {
  const result = results.find((r) => r.name === place.name && r.window !== null);
  if (result !== undefined && result.window !== null) return ofResult(place, result, result.window, curves, part);
  if (place.window?.rule !== 'range') return null;
  const { from, to } = place.window.range;
  const unit = isTime(from) ? 'min' : '°C';
  const rising = curves.parts.find((p) => p.rate !== null && p.rate > 0) ?? null;
  const named = partNamed(curves, place.segment) ?? (unit === '°C' ? rising : null);
  const origin = unit === 'min' ? (partNamed(curves, place.segment)?.start ?? 0) : 0;
  const ends = [from, to].map((amount) => endAt(valueIn(amount, unit), unit, named, origin, curves));
  return withEnds(ends[0], ends[1], { part: named, origin, unit, rule: null });
}

function ofResult(
  place: WrittenPlace,
  result: Result,
  window: ResultWindow,
  curves: PlotCurves,
  part: (name: string) => PlacedWindow | null,
): PlacedWindow | null {
  const { unit, rule } = window;
  const on = curves.parts.find((p) => p.name === result.segment) ?? null;
  if (place.sumOf !== null && place.window === null && place.segment === null) {
    const parts = place.sumOf.map(part).filter((p) => p !== null);
    if (parts.length === 0) return null;
    const first = parts.reduce((a, b) => (b.from.time < a.from.time ? b : a));
    const last = parts.reduce((a, b) => (b.to.time > a.to.time ? b : a));
    return { part: on, origin: first.origin, unit, from: first.from, to: last.to, rule };
  }
  const named = partNamed(curves, place.segment)?.start ?? null;
  const isResidue = place.holder.statement.kind === 'residue';
  // A rule counts its minutes from the start of its segment; what is written does only where the segment is named.
  const shownFrom = rule !== null || isResidue ? (named ?? on?.start ?? 0) : (named ?? 0);
  const from = endAt(window.from, unit, on, shownFrom, curves);
  const to = endAt(window.to, unit, on, shownFrom, curves);
  const origin = unit === '°C' ? 0 : isResidue && place.point !== null ? (named ?? 0) : shownFrom;
  const counted = (end: PlacedEnd | null): PlacedEnd | null =>
    end === null || unit === '°C' ? end : { ...end, value: (end.time - origin) / 60 };
  return withEnds(counted(from), counted(to), { part: on, origin, unit, rule });
}

function withEnds(
  a: PlacedEnd | null,
  b: PlacedEnd | null,
  rest: Pick<PlacedWindow, 'part' | 'origin' | 'unit' | 'rule'>,
): PlacedWindow | null {
  if (a === null || b === null) return null;
  const isTurned = a.time > b.time;
  return { ...rest, from: isTurned ? b : a, to: isTurned ? a : b };
}

function partNamed(curves: PlotCurves, segment: SegmentName | null): PlotPart | null {
  if (segment === null) return null;
  return curves.parts.find((p) => p.name === `${segment.direction} ${segment.index}`) ?? null;
}

function endAt(
  value: number,
  unit: '°C' | 'min',
  part: PlotPart | null,
  origin: number,
  curves: PlotCurves,
): PlacedEnd | null {
  if (unit === 'min') {
    const time = origin + 60 * value;
    const holder = part ?? curves.parts.find((p) => p.start <= time && time <= p.end) ?? null;
    return { value, time, temperature: holder === null ? null : curves.temperatureAt(holder.name, time) };
  }
  if (part === null) return null;
  const time = curves.timeAt(part.name, value);
  return time === null ? null : { value, time, temperature: value };
}

/** An amount in °C or min, whatever unit it is written in. */
export function valueIn(amount: Amount, unit: '°C' | 'min'): number {
  if (amount.unit === null || amount.unit.text === unit) return amount.value;
  const value = unit === 'min' ? secondsOf(amount) / 60 : celsiusOf(amount);
  // 950 K is 676.85 °C, without the last bits of the way there.
  return Number(value.toPrecision(12));
}
