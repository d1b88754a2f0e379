import type { Term } from './functional';

/** The lines an analyst may choose from (ISO 11357-1: a virtual baseline, straight or following the conversion). */
export type BaselineKind = 'linear' | 'tangent left' | 'tangent right' | 'sigmoidal';

export const BASELINE_KINDS: readonly BaselineKind[] = ['linear', 'tangent left', 'tangent right', 'sigmoidal'];

/** A straight line with its dependence on the samples. */
export interface Line {
  at(t: number): number;
  readonly slope: number;
  /** The value at `t`, and the slope, as functionals of the samples. */
  termsAt(t: number): readonly Term[];
  slopeTerms(): readonly Term[];
}

/** A baseline under an effect, and the area between it and the curve. */
export interface Baseline {
  readonly kind: BaselineKind;
  at(t: number): number;
  slopeAt(t: number): number;
  /** The value and the slope at `t` as functionals of the samples (the slope of a sigmoidal one with its fraction held). */
  termsAt(t: number): readonly Term[];
  slopeTermsAt(t: number): readonly Term[];
  /** The lines that the tangents of the first and of the last flank are met with. */
  readonly before: Line;
  readonly after: Line;
  /** The integral of curve minus baseline over the window, unit of y times s. */
  readonly area: number;
  /** The same as a functional of the samples. */
  areaTerms(): readonly Term[];
  /** Whether an iterated baseline settled; true for straight ones. */
  readonly converged: boolean;
  /** Smallest and largest fraction of area passed inside the window; 0 and 1 for straight ones. */
  readonly fraction: { readonly lowest: number; readonly highest: number };
}
