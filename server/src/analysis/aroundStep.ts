import type { Curve, Window } from './curve';
import { levelSearch, type LevelSearch, type LevelSearchOptions } from './levelSearch';
import { silent, type Noise } from './noise';
import { firstAtOrAfter } from './range';

export interface AroundOptions extends LevelSearchOptions {
  /** The point given, s. */
  readonly at: number;
  /** How far an end may lie from it, s. */
  readonly within: number;
}

/** The tail is looked at from the level slope up to so many times of it. */
const TAIL = 10;
/** A window ends where the tail has fallen to this share of the level slope. */
const FLAT = 0.1;

/**
 * The window of the mass step around a point: on both sides the first level stretch met on the way out, or a little beyond.
 * Level is a stretch whose slope is at most `levelSlope` and at most the share `relativeRate` of the largest rate passed.
 * The way starts at the point; where nothing happens there, the nearest rate that is a step's counts as passed. The largest
 * rate counts for both ends, so that a small foot does not end the way to a large step. Data decide, never other windows.
 *
 * At the level slope itself the tail of a broad reaction, which falls to 1/e in some 20 K, still holds 0.1 % of the mass. So
 * the end is moved out to where the tail has fallen to a tenth of the level slope: taken as exponential and fitted between
 * ten times and once the level slope, where it stands clear of the noise (the flank of a reaction is one, for as long as
 * 1/T is straight in T). It never passes a next step, and stays inside the data and `within`.
 *
 * Null where no level stretch lies within reach on both sides. Times in s; O(readings within reach).
 */
export function aroundStep(curve: Curve, noise: Noise | null, options: AroundOptions): Window | null {
  const { at, within, span } = options;
  const reach = within + span;
  const search = levelSearch(curve, { from: at - reach, to: at + reach }, noise ?? silent, options);
  return search && walkOut(search, at, within);
}

/**
 * Both ends of the step around a point of a search; see `aroundStep`. `open`: a side without a level stretch ends with the
 * data instead.
 */
export function walkOut(search: LevelSearch, at: number, within: number, open = false): Window | null {
  const { grid, rate, least } = search;
  const start = Math.min(grid.length - 1, firstAtOrAfter(grid, at));
  let passed = 0;
  for (let d = 0; passed <= least; d++) {
    const low = start - d;
    const high = start + d;
    if (low < 0 && high >= grid.length) return null;
    if (low >= 0) passed = Math.max(passed, rate[low]);
    if (high < grid.length) passed = Math.max(passed, rate[high]);
  }
  let low = start;
  let high = start;
  for (;;) {
    const before = passed;
    const right = walk(search, start, 1, passed) ?? (open ? grid.length - 1 : null);
    const left = walk(search, start, -1, passed) ?? (open ? 0 : null);
    if (right === null || left === null) return null;
    high = right;
    low = left;
    for (let i = low; i <= high; i++) passed = Math.max(passed, rate[i]);
    if (passed === before) break;
  }
  const from = endOfTail(search, low, -1, at - within, passed);
  const to = endOfTail(search, high, 1, at + within, passed);
  return at - from > within || to - at > within || !(from < to) ? null : { from, to };
}

function walk(search: LevelSearch, start: number, way: 1 | -1, passed: number): number | null {
  let largest = passed;
  for (let i = start; i >= 0 && i < search.grid.length; i += way) {
    largest = Math.max(largest, search.rate[i]);
    if (search.level(i, largest)) return i;
  }
  return null;
}

function endOfTail(search: LevelSearch, first: number, way: 1 | -1, end: number, passed: number): number {
  const { grid } = search;
  const tail = fittedTail(search, first, way, passed);
  const sought = tail === null ? grid[first] : way * tail > way * grid[first] ? tail : grid[first];
  const last = way * (end - sought) < 0 && way * (end - grid[first]) >= 0 ? end : sought;
  for (let i = first; i >= 0 && i < grid.length; i += way) {
    if (way * (grid[i] - last) >= 0) return last;
    // Noise about the level slope is no next step; twice of it is.
    if (Math.abs(search.slope[i]) > 2 * search.limit(Infinity)) return grid[i - way];
  }
  return way > 0 ? Math.min(last, grid[grid.length - 1]) : Math.max(last, grid[0]);
}

/** Where the exponential tail inside a first level stretch reaches a tenth of the level slope; null without a tail. */
function fittedTail(search: LevelSearch, first: number, way: 1 | -1, passed: number): number | null {
  const { grid, slope } = search;
  const low = search.limit(passed);
  const high = TAIL * search.plain(passed);
  const t0 = grid[first];
  let weight = 0;
  let st = 0;
  let sr = 0;
  const points: [t: number, log: number, weight: number][] = [];
  for (let i = first - way; i >= 0 && i < grid.length; i -= way) {
    const size = Math.abs(slope[i]);
    if (size < low) continue;
    // Noise of a logarithm goes with one over the size.
    const w = size * size;
    points.push([grid[i] - t0, Math.log(size), w]);
    weight += w;
    st += w * (grid[i] - t0);
    sr += w * Math.log(size);
    if (size > high) break;
  }
  if (points.length < 3) return null;
  let stt = 0;
  let str = 0;
  for (const [t, log, w] of points) {
    stt += w * (t - st / weight) ** 2;
    str += w * (t - st / weight) * (log - sr / weight);
  }
  const fall = str / stt;
  if (!(way * fall < 0)) return null;
  return t0 + st / weight + (Math.log(FLAT * search.plain(passed)) - sr / weight) / fall;
}
