import type { Window } from '../analysis/curve';
import type { GlassTransition } from '../analysis/glassTransition';
import type { HeatPeak } from '../analysis/heatPeak';
import type { MassStep } from '../analysis/massStep';
import type { Finding } from '../findings/finding';
import type { Effective } from '../language/program';
import type { EvaluationStatement, SignalName } from '../language/model';
import type { Uncertain } from '../quantities/uncertain';
import type { Kind, Unit } from '../quantities/unit';
import type { Segment } from '../runs/run';
import type { Construction, ResultWindow } from './result';

/** What one evaluation statement came to, before findings act on it. Memoised by content; holds no positions. */
export interface StatementOutcome {
  readonly source: Effective<EvaluationStatement>;
  readonly name: string;
  /** Code that failed the whole statement. */
  readonly failure: string | null;
  readonly placed: Placed | null;
  readonly signal: SignalName | null;
  readonly quantities: readonly QuantityOutcome[];
  readonly method: string;
  readonly findings: readonly Finding[];
  readonly construction: Construction | null;
  /** Masses read at the ends (a residue has only `end`), in the unit of the run's mass signal, for bases. */
  readonly masses: { readonly start: Uncertain | null; readonly end: Uncertain | null } | null;
  /** The numbers behind it, for checks. */
  readonly analysis: Analysis | null;
}

export type Analysis =
  | { readonly of: 'step'; readonly step: MassStep; readonly scale: number }
  | { readonly of: 'peak'; readonly peak: HeatPeak }
  | { readonly of: 'glass'; readonly glass: GlassTransition }
  | { readonly of: 'residue'; readonly driftPerMinute: number }
  | { readonly of: 'other' };

export interface Placed {
  /** null: a time window over several segments. */
  readonly segment: Segment | null;
  /** s. */
  readonly window: Window;
  /** As shown: °C, or min. */
  readonly shown: ResultWindow;
  /** s a kelvin at each edge; null in a hold. */
  readonly secondsPerKelvin: { readonly from: number; readonly to: number } | null;
}

export interface QuantityOutcome {
  readonly quantity: string;
  /** In `unit` (for °C a point). null: failed, with the reason code. */
  readonly uncertain: Uncertain | null;
  readonly unit: Unit;
  readonly kind: Kind;
  readonly basis: string | null;
  /** Detection limit in `unit` where the size is below it. */
  readonly limit: number | null;
  readonly reason: string | null;
}
