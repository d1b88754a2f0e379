import type { Curve, Window } from './curve';

/** The part of a window that holds data: a limit moved to see its influence may leave them. */
export function withinData({ x }: Curve, { from, to }: Window): Window {
  return { from: Math.max(from, x[0]), to: Math.min(to, x[x.length - 1]) };
}
