import type { RunCurves } from '../engine/curves/runCurves';
import type { Snapshot } from '../engine/snapshot';
import type { ReportInput } from '../presentation/report/model';
import { reportFigures } from './reportFigures';

/** One evaluated gloss as a report takes it, its curves drawn; the same from the command line and in the editor. */
export function reportInput(
  snapshot: Snapshot,
  curves: RunCurves | null,
  of: Pick<ReportInput, 'identity' | 'revision' | 'approvals'>,
): ReportInput {
  const figures = curves === null ? [] : reportFigures(snapshot, curves, of.revision ?? 'revision not known');
  return { snapshot, figures, ...of };
}
