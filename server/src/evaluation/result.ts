import type { Finding, GlossRole } from '../findings/finding';
import type { Uncertain } from '../quantities/uncertain';
import type { Kind, Unit } from '../quantities/unit';

export type ResultState = 'number' | 'not-detected' | 'sum-only' | 'apparent' | 'indicated' | 'failed';

/** One computed number with everything it rests on. Full precision; text is made in `presentation`. */
export interface Result {
  /** `First.loss`; holds no line number. */
  readonly id: string;
  readonly name: string;
  /** Statement kind: step, peak, glass, onset, crossing, residue, let. */
  readonly kind: string;
  readonly quantity: string;
  readonly state: ResultState;
  /** null when not detected, sum only or failed. In `unit`. */
  readonly value: number | null;
  /** Standard uncertainty (k = 1) in `unit` (differences for °C); null unknown, 0 exact. */
  readonly uncertainty: number | null;
  /** Coverage factor at 95 % from the effective degrees of freedom. */
  readonly k: number;
  /** null: many. */
  readonly dof: number | null;
  readonly unit: Unit;
  readonly valueKind: Kind;
  /** Detection limit x where not detected. */
  readonly limit: number | null;
  /** `initial mass`, `dried, Moisture`, `exported`…; null where none applies. */
  readonly basis: string | null;
  readonly segment: string | null;
  readonly window: ResultWindow | null;
  /** How it was computed, in words: `levels, span 10 K; derivative smoothed over 5 K`. */
  readonly method: string;
  /** Merged by input, largest first. */
  readonly contributions: readonly { readonly input: string; readonly u: number }[];
  /** Codes that made it apparent, failed, sum only, with the names they came through. */
  readonly reasons: readonly string[];
  readonly uncertain: Uncertain | null;
  readonly file: GlossRole;
  readonly statement: string;
}

export interface ResultWindow {
  readonly from: number;
  readonly to: number;
  readonly unit: '°C' | 'min';
  /** `around 930 °C` where a rule found the ends; null where written. */
  readonly rule: string | null;
}

/** Construction in data units: what a plot draws for one statement. */
export interface Construction {
  readonly name: string;
  readonly signal: string;
  /** Unit of `y`, where the signal has one. */
  readonly unit?: string;
  readonly shapes: readonly Shape[];
}

/** Abscissa in seconds of the file's own time; the view maps it to temperature through the data. */
export type Shape =
  | { readonly shape: 'line'; readonly role: 'level' | 'tangent' | 'baseline'; readonly points: readonly ShapePoint[] }
  | { readonly shape: 'mark'; readonly quantity: string; readonly at: ShapePoint }
  | { readonly shape: 'area'; readonly from: number; readonly to: number };

export interface ShapePoint {
  readonly time: number;
  /** °C. */
  readonly temperature: number;
  readonly y: number;
}

export type Verdict = 'met' | 'not met' | 'inconclusive' | 'not evaluated';

export interface Requirement {
  readonly name: string | null;
  readonly statement: string;
  readonly file: GlossRole;
  readonly text: string;
  readonly verdict: Verdict;
  readonly state: ResultState;
  /** For `in`: the left side. For `<=` and `>=` with an expression: left − right. */
  readonly value: number | null;
  readonly uncertainty: number | null;
  readonly unit: Unit;
  readonly low: number | null;
  readonly high: number | null;
  readonly k: number;
}

export interface Evaluated {
  readonly results: readonly Result[];
  readonly requirements: readonly Requirement[];
  readonly constructions: readonly Construction[];
  readonly findings: readonly Finding[];
}
