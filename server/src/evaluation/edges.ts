import type { Window } from '../analysis/curve';
import type { Measured } from '../analysis/measured';
import { localInput } from './influences';
import type { Placed } from './outcome';
import { shiftedWindow } from './place';
import type { EdgeInputs, Shifted } from './pointResults';
import type { PreparedRun } from './preparedRun';

/** The influences of a window's two edges and of the levels read at them. */
export function edgeInputs(
  placed: Placed,
  stem: string,
  signal: string,
): { readonly edges: EdgeInputs; readonly level: EdgeInputs } {
  const segment = placed.segment?.name ?? 'the run';
  const { from: first, to: second } = placed.shown;
  const input = (what: 'edge' | 'level noise', at: number) =>
    localInput({ what, signal, segment, at: Math.round(at * 100) / 100, unit: placed.shown.unit, stem });
  return {
    edges: { from: input('edge', first), to: input('edge', second) },
    level: { from: input('level noise', first), to: input('level noise', second) },
  };
}

/** The same evaluation with each edge 5 K earlier and later. */
export function evaluateShifted<T>(
  run: PreparedRun,
  placed: Placed,
  evaluate: (window: Window) => T | null,
): readonly (T | null)[] {
  const at = (from: number, to: number) => evaluate(shiftedWindow(run, placed, from, to));
  return [at(-1, 0), at(1, 0), at(0, -1), at(0, 1)];
}

export function shiftedValues<T>(moved: readonly (T | null)[], of: (t: T) => Measured | null): Shifted {
  return moved.map((m) => (m === null ? NaN : (of(m)?.value ?? NaN))) as unknown as Shifted;
}
