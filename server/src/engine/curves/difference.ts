import type { Abscissa } from '../../protocol/view';
import { extentOf, runCurvesOf } from './curvesOfRun';
import { sampleAt, type CurveLane, type RunCurve, type RunCurves } from './runCurves';
import { firstNotBelow } from './samplesIn';
import { StoredCurve } from './storedCurve';

/**
 * One lane of a run less that of another one (another revision of it), in one unit: at each sample of the run, over the
 * abscissa named, the other's value by a straight line between its samples in the part of the same name. Only where both
 * exist: outside the other's samples and across its gaps there is no difference, and no line is drawn. Null where either
 * lacks the lane, or it has no such unit, or nowhere do both exist.
 */
export function differenceLane(
  own: RunCurves,
  other: RunCurves,
  lane: string,
  abscissa: Abscissa,
  unit: string,
): CurveLane | null {
  const [mine, theirs] = [own.lane(lane), other.lane(lane)];
  if (mine === null || theirs === null) return null;
  const stored = mine.curves.flatMap((curve) =>
    theirs.curves.filter((c) => c.part === curve.part).flatMap((c) => differences(curve, c, abscissa, unit)),
  );
  if (stored.length === 0) return null;
  const id = `difference:${lane}`;
  const factor = (asked: string): number | null => (asked === unit ? 1 : null);
  return {
    id,
    signal: mine.signal,
    units: mine.units.filter((u) => theirs.units.includes(u)),
    curves: runCurvesOf(stored, '', id, factor),
    factor,
    extent: (asked, parts) => extentOf(stored, parts, () => factor(asked)),
  };
}

/** The stretches of one curve over which the other exists. */
function differences(mine: RunCurve, other: RunCurve, abscissa: Abscissa, unit: string): StoredCurve[] {
  const [ours, theirs] = [mine.drawn(abscissa), other.drawn(abscissa)];
  const [factor, otherFactor] = [mine.factor(unit), other.factor(unit)];
  if (ours === null || theirs === null || factor === null || otherFactor === null) return [];
  const x = theirs.axis.x;
  const at = (place: number): number => theirs.values[sampleAt(theirs.axis, place)] * otherFactor;
  const bySample = new Float64Array(mine.points).fill(NaN);
  ours.axis.x.forEach((t, place) => {
    const value = between(x, at, t);
    const sample = sampleAt(ours.axis, place);
    if (value !== null) bySample[sample] = mine.values[sample] * factor - value;
  });
  return stretches(bySample).map(([first, last]) => {
    const axis = (): { x: Float64Array; order: Uint32Array | null } | null => within(mine, first, last);
    return new StoredCurve(mine.part, mine.time.subarray(first, last), bySample.subarray(first, last), axis);
  });
}

/** The value on the line through the samples on both sides; null outside them. */
function between(x: Float64Array, at: (place: number) => number, t: number): number | null {
  const after = firstNotBelow(x, t, 0, x.length);
  if (after === x.length) return null;
  if (x[after] === t) return at(after);
  if (after === 0) return null;
  const share = (t - x[after - 1]) / (x[after] - x[after - 1]);
  return at(after - 1) + share * (at(after) - at(after - 1));
}

/** Samples from `first` up to `last` of a curve, over its temperature. */
function within(curve: RunCurve, first: number, last: number): { x: Float64Array; order: Uint32Array | null } | null {
  const drawn = curve.drawn('temperature');
  if (drawn === null) return null;
  const { x, order } = drawn.axis;
  if (order === null) return { x: x.subarray(first, last), order: null };
  const kept: number[] = [];
  order.forEach((sample, place) => {
    if (sample >= first && sample < last) kept.push(place);
  });
  return { x: Float64Array.from(kept, (p) => x[p]), order: Uint32Array.from(kept, (p) => order[p] - first) };
}

function stretches(values: Float64Array): (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) continue;
    const first = i;
    while (i < values.length && !Number.isNaN(values[i])) i++;
    found.push([first, i]);
  }
  return found;
}
