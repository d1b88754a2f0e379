import type { Unit } from '../quantities/unit';

/** A literal with its unit. `u` is the ± as a standard uncertainty, in the same unit; null: none written. */
export interface Amount {
  readonly value: number;
  readonly unit: Unit | null;
  readonly u: number | null;
  /** Normalised text: `20.052 ± 0.010 mg`. */
  readonly text: string;
}

export interface RangeOf {
  readonly from: Amount;
  readonly to: Amount;
}

export interface SegmentName {
  readonly direction: 'heating' | 'cooling' | 'hold';
  /** From 1, per direction in time. */
  readonly index: number;
}

export type SignalName =
  'time' | 'temperature' | 'mass' | 'rate' | 'heatflow' | `ion(${number})` | `absorbance(${number})`;

export type PlaceWindow =
  | { readonly rule: 'range'; readonly range: RangeOf }
  | { readonly rule: 'around'; readonly at: Amount; readonly within: Amount | null };

/** Lacking window only in an override or a sum; lacking segment: the first heating that holds the window. */
export interface Place {
  readonly window: PlaceWindow | null;
  readonly segment: SegmentName | null;
}

export type Basis =
  | { readonly of: 'initial mass' }
  | { readonly of: 'dried mass'; readonly step: string }
  | { readonly of: 'mass at start' }
  | { readonly of: 'mass lost' }
  | { readonly of: 'ignited mass'; readonly residue: string };

export type Expression =
  | { readonly node: 'amount'; readonly amount: Amount; readonly token: string }
  | { readonly node: 'formula'; readonly formula: string; readonly token: string }
  | { readonly node: 'call'; readonly name: FunctionName; readonly args: readonly Expression[]; readonly token: string }
  | { readonly node: 'name'; readonly name: string; readonly quantity: string | null; readonly token: string }
  | { readonly node: 'negate'; readonly of: Expression; readonly token: string }
  | {
      readonly node: 'binary';
      readonly op: '+' | '-' | '*' | '/' | '^';
      readonly left: Expression;
      readonly right: Expression;
      readonly token: string;
    };

export type FunctionName = 'mean' | 'sd' | 'rsd' | 'min' | 'max' | 'abs' | 'sqrt' | 'ln' | 'exp' | 'absolute';

/** Clauses that every statement may have. */
export interface Common {
  readonly id: string;
  readonly override: boolean;
  readonly because: string | null;
  readonly notes: readonly string[];
  readonly allows: readonly AllowClause[];
}

export interface AllowClause {
  readonly code: string;
  readonly because: string;
  /** Token of the clause, `allow` or `allow#2`. */
  readonly token: string;
}

export interface Crucible {
  readonly words: string;
  readonly volume: Amount | null;
  /** What follows commas: `no lid`, `pierced lid`. */
  readonly further: readonly string[];
}

export interface Atmosphere {
  /** Gas names in written order with their share in %; null where one gas stands alone. */
  readonly gases: readonly { readonly words: string; readonly percent: number | null }[];
  readonly flow: Amount | null;
  readonly purity: Amount | null;
  /** Only the first may lack it. */
  readonly from: { readonly time: Amount } | { readonly segment: SegmentName } | null;
}

export interface RunStatement extends Common {
  readonly kind: 'run';
  readonly file: string;
  readonly sample: string | null;
  readonly sampleIsNone: boolean;
  readonly mass: Amount | null;
  readonly crucible: Crucible | null;
  readonly atmospheres: readonly Atmosphere[];
  readonly contains: readonly string[];
  readonly endothermic: 'up' | 'down' | null;
  readonly operator: string | null;
  readonly evaluator: string | null;
  readonly hazards: readonly string[];
  readonly measured: string | null;
  readonly rate: Amount | null;
  readonly calibrated: readonly { readonly signal: SignalName; readonly range: RangeOf; readonly u: Amount | null }[];
}

export interface MethodTitleStatement extends Common {
  readonly kind: 'method';
  readonly title: string;
}

/** `method "FILE"` in a run gloss. */
export interface UseMethodStatement extends Common {
  readonly kind: 'use method';
  readonly file: string;
}

export interface JoinStatement extends Common {
  readonly kind: 'join';
  readonly file: string;
  readonly on: 'time' | 'temperature';
  readonly offset: Amount | null;
}

export interface ColumnsStatement extends Common {
  readonly kind: 'columns';
  readonly of: string | null;
  readonly columns: readonly ColumnChoice[];
}

export interface ColumnChoice {
  readonly signal: SignalName;
  /** By header text, or by number from 1. */
  readonly column: { readonly header: string } | { readonly number: number };
  /** `1` for a plain fraction; null: the header's. */
  readonly unit: Unit | null;
  readonly token: string;
}

export interface ReadingStatement extends Common {
  readonly kind: 'reading';
  readonly of: string | null;
  readonly delimiter: string | null;
  readonly decimal: string | null;
  readonly skip: number | null;
  readonly header: number | null;
  readonly footer: number | null;
  readonly encoding: string | null;
  readonly block: number | null;
}

export interface ProgrammeStatement extends Common {
  readonly kind: 'programme';
  readonly parts: readonly (
    | {
        readonly part: 'heat' | 'cool';
        readonly from: Amount | null;
        readonly to: Amount;
        readonly rate: Amount;
        readonly token: string;
      }
    | { readonly part: 'hold'; readonly time: Amount; readonly token: string }
  )[];
}

export interface BlankStatement extends Common {
  readonly kind: 'blank';
  readonly file: string;
  readonly subtract: readonly SignalName[];
  readonly crucible: Crucible | null;
  readonly atmospheres: readonly Atmosphere[];
  readonly repeatability: Amount | null;
}

export interface GivenStatement extends Common {
  readonly kind: 'given';
  readonly name: string;
  readonly unit: Unit;
}

export interface StepStatement extends Common {
  readonly kind: 'step';
  readonly name: string;
  readonly sumOf: readonly string[] | null;
  readonly place: Place;
  readonly by: 'levels' | 'tangents' | null;
  readonly span: Amount | null;
  /** null: the default; 'none': no smoothing of the derivative. */
  readonly smooth: Amount | 'none' | null;
  readonly per: Basis | null;
  readonly encloses: readonly string[];
}

export interface PeakStatement extends Common {
  readonly kind: 'peak';
  readonly name: string;
  readonly sumOf: readonly string[] | null;
  readonly place: Place;
  readonly of: SignalName | null;
  readonly baseline: BaselineKind | null;
  readonly expect: 'endothermic' | 'exothermic' | null;
  readonly span: Amount | null;
  readonly smooth: Amount | 'none' | null;
  readonly per: Basis | null;
  readonly encloses: readonly string[];
}

export type BaselineKind = 'linear' | 'tangent left' | 'tangent right' | 'sigmoidal';

export interface GlassStatement extends Common {
  readonly kind: 'glass';
  readonly name: string;
  readonly place: Place;
  readonly by: GlassDefinition | null;
  readonly span: Amount | null;
  readonly smooth: Amount | 'none' | null;
}

export type GlassDefinition = 'half height' | 'equal areas' | 'inflection';

export interface OnsetStatement extends Common {
  readonly kind: 'onset';
  readonly name: string;
  readonly place: Place;
  readonly of: SignalName | null;
  readonly span: Amount | null;
  readonly smooth: Amount | 'none' | null;
}

export interface CrossingStatement extends Common {
  readonly kind: 'crossing';
  readonly name: string;
  readonly signal: SignalName;
  readonly level: { readonly amount: Amount } | { readonly percent: number; readonly of: 'maximum' | 'minimum' };
  readonly place: Place;
  readonly way: 'rising' | 'falling' | 'either' | null;
  readonly which: 'first' | 'last' | null;
  readonly per: Basis | null;
}

export interface ResidueStatement extends Common {
  readonly kind: 'residue';
  readonly name: string;
  readonly at: { readonly amount: Amount; readonly segment: SegmentName | null } | { readonly endOf: SegmentName };
  readonly over: Amount | null;
  readonly per: Basis | null;
}

export interface LetStatement extends Common {
  readonly kind: 'let';
  readonly name: string;
  readonly expression: Expression;
  readonly show: Unit | null;
}

export interface RequireStatement extends Common {
  readonly kind: 'require';
  /** `as NAME`. */
  readonly name: string | null;
  readonly left: Expression;
  readonly limit:
    { readonly form: 'in'; readonly range: RangeOf } | { readonly form: '<=' | '>='; readonly right: Expression };
  /** The requirement as written, one blank between tokens, without `require` and `as NAME`. */
  readonly text: string;
  /** The statement it is about, where its clause `on` names one. */
  readonly on?: string;
}

export interface NoteStatement extends Common {
  readonly kind: 'note';
  readonly text: string;
  readonly on: string | null;
}

export interface AllowStatement extends Common {
  readonly kind: 'allow';
  readonly code: string;
  readonly on: string | null;
  readonly reason: string;
}

export interface RuleStatement extends Common {
  readonly kind: 'rule';
  readonly code: string;
  readonly limit: Amount;
  readonly reason: string;
}

export interface MaskStatement extends Common {
  readonly kind: 'mask';
  readonly range: RangeOf;
  readonly reason: string;
}

/** A person stands for the results as they were on a day; what they were is in the record beside the gloss. */
export interface ApprovedStatement extends Common {
  readonly kind: 'approved';
  readonly by: string;
  /** `2026-10-02`. */
  readonly date: string;
  /** First 32 hex digits of a SHA-256 over the record. */
  readonly digest: string;
}

export type EvaluationStatement =
  StepStatement | PeakStatement | GlassStatement | OnsetStatement | CrossingStatement | ResidueStatement;

export type Statement =
  | RunStatement
  | MethodTitleStatement
  | UseMethodStatement
  | JoinStatement
  | ColumnsStatement
  | ReadingStatement
  | ProgrammeStatement
  | BlankStatement
  | GivenStatement
  | EvaluationStatement
  | LetStatement
  | RequireStatement
  | NoteStatement
  | AllowStatement
  | RuleStatement
  | MaskStatement
  | ApprovedStatement;
