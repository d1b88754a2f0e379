import type { CurveLane, RunCurves } from '../../engine/curves/runCurves';
import type { Snapshot } from '../../engine/snapshot';
import type { GlossText } from '../../features/workspace';
import type { ViewState } from '../../protocol/view';

/** What one gloss came to, with what it was computed from: the ground of a picture. */
export interface Ground {
  readonly snapshot: Snapshot;
  readonly curves: RunCurves | null;
  /** The text evaluated (of a method's view: the run's gloss). */
  readonly gloss: GlossText;
  readonly method: GlossText | null;
}

/** A state as it was sent, with the curves its ids belong to. */
export interface Picture {
  readonly state: ViewState;
  readonly ground: Ground | null;
  /** The run's own, those laid over it, by the ids of their curves. */
  readonly curves: readonly RunCurves[];
  /** Lanes of differences to another revision. */
  readonly differences: readonly CurveLane[];
  /** Names of runs laid over, by key. */
  readonly names: ReadonlyMap<string, string>;
}
