import type { Curve, Window } from './curve';
import { levelSearch, type LevelSearchOptions } from './levelSearch';
import type { Noise } from './noise';
import { firstAtOrAfter } from './range';

export interface NearestLevelOptions extends LevelSearchOptions {
  readonly window: Window;
  /** The end that is to stand on a level: the earlier or the later one. */
  readonly edge: 'from' | 'to';
  /** How far to look, s. */
  readonly reach: number;
}

/**
 * The time (s) nearest to one end of a mass step's window at which a stretch of `span` is level after the step's own rate
 * was passed (language.md 4), outward before inward; null where there is none within reach. `already`: it is level there.
 */
export function nearestLevel(
  curve: Curve,
  noise: Noise,
  options: NearestLevelOptions,
): { readonly at: number; readonly already: boolean } | null {
  const { window, edge, reach } = options;
  const search = levelSearch(curve, { from: window.from - reach, to: window.to + reach }, noise, options);
  if (search === null) return null;
  const { grid, rate } = search;
  let passed = 0;
  grid.forEach((t, i) => {
    if (t >= window.from && t <= window.to) passed = Math.max(passed, rate[i]);
  });
  const time = window[edge];
  const outward = edge === 'from' ? -1 : 1;
  const start = Math.min(grid.length - 1, firstAtOrAfter(grid, time));
  if (search.level(start, passed)) return { at: time, already: true };
  for (let d = 1; d < grid.length; d++) {
    for (const way of [outward, -outward]) {
      const i = start + way * d;
      if (i < 0 || i >= grid.length || Math.abs(grid[i] - time) > reach) continue;
      const keeps = edge === 'from' ? grid[i] < window.to : grid[i] > window.from;
      if (keeps && search.level(i, passed)) return { at: grid[i], already: false };
    }
  }
  return null;
}
