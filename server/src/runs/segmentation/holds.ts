import { dwellIn } from './dwell';
import type { Leg } from './legs';
import { bandLevels, passages, step, type Passages } from './passages';

/** A stretch at one temperature, sample indices, both inclusive. */
export interface Hold {
  readonly from: number;
  readonly to: number;
}

/** A hold stays at least this much longer (s) in its band than the ramps beside it would. */
const longer = 60;
/** And longer than they need for this way (K): a temperature that goes back by less stays no longer. */
const furthest = 3;
/** And this many times as long as in the very next bands: else they belong to one slow ramp. */
const peaked = 1.5;

/** By how much (s) a stay must exceed the usual one beside it. */
function excess(usual: number, band: number, noise: number, least = longer): number {
  return least + (usual * (furthest + 6 * noise)) / (band * step);
}

/** At the start of a record the furnace may only be slow to follow: more is asked for. */
const longerAtStart = 180;

/**
 * Finds the holds of a record: bands (2 K, wider in noise) in which the temperature stays much longer than in the bands
 * beside them. A slow ramp has equal bands beside it and is no hold, whatever its rate. Between two legs the band at the
 * turn is compared with the next bands of both. Ordered in time, not overlapping.
 */
export function findHolds(
  time: Float64Array,
  temperature: Float64Array,
  legs: readonly Leg[],
  noise: number,
): readonly Hold[] {
  const all = legs.map((leg) => passages(temperature, leg));
  const found: Hold[] = [];
  legs.forEach((leg, k) => {
    const turnsBefore = k > 0 && legs[k - 1].to === leg.from;
    const turnsAfter = k + 1 < legs.length && legs[k + 1].from === leg.to;
    found.push(...withinLeg(time, temperature, leg, all[k], !turnsBefore, !turnsAfter, noise));
    if (turnsAfter) {
      const hold = atTurn(time, temperature, leg, legs[k + 1], all[k], all[k + 1], noise);
      if (hold !== null) found.push(hold);
    }
  });
  return merged(found);
}

function withinLeg(
  time: Float64Array,
  temperature: Float64Array,
  leg: Leg,
  passed: Passages,
  isFirst: boolean,
  isLast: boolean,
  noise: number,
): Hold[] {
  const { levels, first, last } = passed;
  const band = bandLevels(noise);
  const dwell = dwellIn(time, passed, band);
  const holds: Hold[] = [];
  let bestAt = -1;
  let bestTime = 0;
  // A band that touches a turn is judged with the turn; one that touches an end of the record, here.
  const top = levels - 1 - band - (isLast ? 0 : 1);
  for (let g = isFirst ? 0 : 1; g <= top; g++) {
    const stays = time[last[g + band]] - time[first[g]];
    const before = dwell.at(g - band);
    const after = dwell.at(g + band);
    // Most bands are ordinary: only the others need to be compared with more.
    let isHold = stays >= longer && (before !== null || after !== null);
    isHold &&= stays >= peaked * Math.max(before ?? 0, after ?? 0);
    if (isHold) {
      const usual = Math.max(dwell.beside(g, -1) ?? 0, dwell.beside(g, 1) ?? 0);
      const extra = excess(usual, band, noise, isFirst && before === null ? longerAtStart : longer);
      isHold = stays - usual >= extra;
    }
    if (isHold && stays > bestTime) {
      bestAt = g;
      bestTime = stays;
    }
    if (bestAt >= 0 && (!isHold || g - bestAt >= band || g === top)) {
      holds.push(core(temperature, first[bestAt], last[bestAt + band], leg, leg, noise));
      bestAt = -1;
      bestTime = 0;
    }
  }
  return holds;
}

function atTurn(
  time: Float64Array,
  temperature: Float64Array,
  before: Leg,
  after: Leg,
  up: Passages,
  down: Passages,
  noise: number,
): Hold | null {
  const band = bandLevels(noise);
  const from = up.first[Math.max(0, up.levels - 1 - band)];
  const to = down.last[Math.min(down.levels - 1, band)];
  const arriving = dwellIn(time, up, band).beside(up.levels - 2 - band, -1);
  const leaving = dwellIn(time, down, band).beside(0, 1);
  const usual = Math.max(arriving ?? 0, leaving ?? 0);
  const ways = (arriving ?? usual) + (leaving ?? usual);
  if (time[to] - time[from] - ways < excess(usual, band, noise)) return null;
  return core(temperature, from, to, before, after, noise);
}

/** The part of a band's stay that is at its level: without the ways in and out. */
function core(temperature: Float64Array, from: number, to: number, arriving: Leg, leaving: Leg, noise: number): Hold {
  const sorted = sampled(temperature, from, to);
  const level = sorted[sorted.length >> 1];
  const spread = sorted[Math.floor(0.9 * (sorted.length - 1))] - sorted[Math.floor(0.1 * (sorted.length - 1))];
  const near = Math.max(0.5, 3 * noise, spread);
  let start = from;
  let end = to;
  while (start < end && arriving.direction * (level - temperature[start]) > near) start++;
  while (end > start && leaving.direction * (temperature[end] - level) > near) end--;
  return { from: start, to: end };
}

/** At most 501 temperatures of a stretch, sorted: a median of more is no better. */
function sampled(temperature: Float64Array, from: number, to: number): Float64Array {
  const count = Math.min(501, to - from + 1);
  const values = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    values[k] = temperature[count === 1 ? from : from + Math.round((k * (to - from)) / (count - 1))];
  }
  return values.sort();
}

/** Holds that touch are one. */
function merged(holds: readonly Hold[]): Hold[] {
  const sorted = [...holds].sort((a, b) => a.from - b.from);
  const result: Hold[] = [];
  for (const hold of sorted) {
    const latest = result[result.length - 1] as Hold | undefined;
    if (latest !== undefined && hold.from <= latest.to) {
      result[result.length - 1] = { from: latest.from, to: Math.max(latest.to, hold.to) };
    } else result.push(hold);
  }
  return result;
}
