import { BASELINE_KINDS, type Baseline, type BaselineKind } from './baseline';
import type { Term } from './functional';
import type { Measured } from './measured';
import type { WindowBaselines } from './windowBaselines';

/** The area by one baseline, and by how much it differs from the area by the baseline used. */
export interface OtherArea {
  readonly kind: BaselineKind;
  readonly area: number;
  /** Area less the area used; its noise tells a difference of baselines from one of noise. */
  readonly difference: Measured;
}

/**
 * The areas by every baseline that can be drawn in a window: their spread is what the choice of baseline is worth. A
 * sigmoidal baseline that does not settle, or whose fraction passed leaves 0..1 by more than a tenth, is left out.
 */
export function otherAreas(
  baselines: WindowBaselines,
  used: Baseline,
  measure: (value: number, terms: () => readonly Term[]) => Measured,
): readonly OtherArea[] {
  const areas: OtherArea[] = [];
  for (const kind of BASELINE_KINDS) {
    const other = kind === used.kind ? used : baselines.of(kind);
    if (!other.converged || other.fraction.lowest < -0.1 || other.fraction.highest > 1.1) continue;
    const difference = measure(other.area - used.area, () =>
      other === used ? [] : [...other.areaTerms(), ...used.areaTerms().map((t) => ({ times: -t.times, of: t.of }))],
    );
    areas.push({ kind, area: other.area, difference });
  }
  return areas;
}
