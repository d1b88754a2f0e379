import type { Segment } from './run';
import { findHolds } from './segmentation/holds';
import { findLegs, type Leg } from './segmentation/legs';
import { lineThrough } from './segmentation/lineThrough';
import { temperatureNoise, usableSamples, type Samples } from './segmentation/samples';

/** A turn back by less than this (K) is none; a ramp goes further than this. */
const leastTurn = 3;

/**
 * The segments of a run: heating, cooling and holds, numbered per direction in time.
 *
 * `time` in s, `temperature` in °C, as read (NaN, repeated times and back-steps are passed over). Turns under 3 K (and six
 * standard deviations of the temperature noise) or under 60 s do not count; a hold stays within 2 K for
 * a minute longer than the ramps beside it need for 3 K, so that a slow ramp is none (three minutes at the start of a
 * record, where the furnace may only be slow to follow). Neighbouring ramps of one direction with different rates
 * are one segment. Rates in K/min by least squares over the middle four fifths of a ramp. O(n).
 */
export function findSegments(time: Float64Array, temperature: Float64Array): Segment[] {
  const samples = usableSamples(time, temperature);
  if (samples.time.length < 2) return [];
  const noise = temperatureNoise(samples.temperature);
  const turn = leastTurn + 6 * noise;
  const { legs, temperature: bridged } = findLegs(samples.temperature, samples.time, turn);
  const counts = { heating: 0, cooling: 0, hold: 0 };
  return pieces({ ...samples, temperature: bridged }, legs, noise, turn).map((piece) => {
    const direction = piece.direction === 0 ? 'hold' : piece.direction > 0 ? 'heating' : 'cooling';
    return segment(samples, piece, direction, ++counts[direction]);
  });
}

/** Cuts the legs at their holds and gives what is left over between them to a neighbour. */
function pieces(samples: Samples, legs: readonly Leg[], noise: number, turn: number): Leg[] {
  const { time, temperature } = samples;
  if (legs.length === 1 && legs[0].direction === 0) return [...legs];
  const holds = findHolds(time, temperature, legs, noise);
  const cut: Leg[] = [];
  let next = 0;
  for (const leg of legs) {
    let from = Math.max(leg.from, cut.length > 0 ? cut[cut.length - 1].to : 0);
    for (; next < holds.length && holds[next].from <= leg.to; next++) {
      const hold = holds[next];
      if (hold.from > from) cut.push({ from, to: hold.from, direction: leg.direction });
      cut.push({ ...hold, direction: 0 });
      from = hold.to;
    }
    if (from < leg.to) cut.push({ from, to: leg.to, direction: leg.direction });
  }
  return joinedPieces(cut, temperature, turn);
}

/** A ramp that goes nowhere belongs to the hold beside it, else to the ramp beside it; equal neighbours are one. */
function joinedPieces(cut: readonly Leg[], temperature: Float64Array, turn: number): Leg[] {
  const kept = [...cut];
  const isSmall = ({ from, to, direction }: Leg): boolean =>
    direction !== 0 && Math.abs(temperature[to] - temperature[from]) < turn;
  for (let k = 0; k < kept.length && kept.length > 1;) {
    if (!isSmall(kept[k])) {
      k++;
      continue;
    }
    const before = kept[k - 1] as Leg | undefined;
    const after = kept[k + 1] as Leg | undefined;
    const toAfter = after !== undefined && (before === undefined || (before.direction !== 0 && after.direction === 0));
    if (toAfter) kept.splice(k, 2, { ...after, from: kept[k].from });
    else kept.splice(--k, 2, { ...before!, to: kept[k + 1].to });
  }
  for (let k = 1; k < kept.length;) {
    if (kept[k].direction === kept[k - 1].direction && kept[k].from === kept[k - 1].to) {
      kept.splice(k - 1, 2, { ...kept[k - 1], to: kept[k].to });
    } else k++;
  }
  return kept;
}

function segment(
  { time, temperature, rows }: Samples,
  { from, to }: Leg,
  direction: Segment['direction'],
  index: number,
): Segment {
  const row = (i: number): number => (rows === null ? i : rows[i]);
  return {
    direction,
    index,
    name: `${direction} ${index}`,
    first: row(from),
    last: row(to) + 1,
    from: endTemperature(time, temperature, from, to, direction === 'hold', false),
    to: endTemperature(time, temperature, from, to, direction === 'hold', true),
    start: time[from],
    end: time[to],
    rate: direction === 'hold' ? null : rampRate(time, temperature, from, to),
  };
}

/** A rate from so many samples is as good as one from more. */
const ENOUGH = 20_000;

/** K/min over the samples between 10 % and 90 % of the way: without the furnace's start and its arrival. */
function rampRate(time: Float64Array, temperature: Float64Array, from: number, to: number): number {
  const way = temperature[to] - temperature[from];
  const sign = Math.sign(way);
  let first = from;
  let last = to;
  while (first < to && sign * (temperature[first] - temperature[from]) < 0.1 * Math.abs(way)) first++;
  while (last > from && sign * (temperature[last] - temperature[from]) > 0.9 * Math.abs(way)) last--;
  if (last - first < 2) [first, last] = [from, to];
  const line = lineThrough(time, temperature, first, last, Math.max(1, Math.floor((last - first) / ENOUGH)));
  return 60 * line.slope;
}

/** The temperature at one end, from a line through the samples of the last kelvin (a minute in a hold), at least 3. */
function endTemperature(
  time: Float64Array,
  temperature: Float64Array,
  from: number,
  to: number,
  isHold: boolean,
  atEnd: boolean,
): number {
  const end = atEnd ? to : from;
  const inward = atEnd ? -1 : 1;
  const isNear = (i: number): boolean =>
    isHold ? Math.abs(time[i] - time[end]) <= 60 : Math.abs(temperature[i] - temperature[end]) <= 1;
  let other = end;
  while (other + inward >= from && other + inward <= to && (isNear(other + inward) || Math.abs(other - end) < 2)) {
    other += inward;
  }
  return lineThrough(time, temperature, Math.min(end, other), Math.max(end, other)).at(time[end]);
}
