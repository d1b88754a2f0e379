import type { Finding } from '../../findings/finding';
import type { StatementOutcome } from '../outcome';
import { checkBlankConditions } from './blankConditions';
import { checkBlankShapes, checkPeakInBlank } from './blankShape';
import { checkBlankRecords, checkStepWithoutBlank } from './blankUse';
import { checkCalibration } from './calibration';
import { checkCautions } from './cautions';
import { checkColumns } from './columns';
import type { CheckContext } from './context';
import { checkCrossing } from './crossings';
import { checkCrucible } from './crucible';
import { checkDetection } from './detection';
import { checkEdges } from './edges';
import { checkFiles } from './files';
import { checkGases, checkSwitchInWindow } from './gas';
import { checkGlass, checkGlassRates } from './glass';
import { checkMassTogether } from './massBalance';
import { checkDrift, checkResidue } from './massHistory';
import { checkStep } from './massSteps';
import { checkMasses } from './masses';
import { checkOnset } from './onsets';
import { checkOverlap } from './overlap';
import { checkPeaksTogether, checkSelfHeating } from './peakEvents';
import { checkPeak } from './peaks';
import { checkProgramme } from './programme';
import { checkRecord, checkRecordInWindow } from './rawSignal';
import { checkSampling } from './sampling';
import { checkWindow } from './windows';

/**
 * Everything that looks at the run, its blanks and its clauses but at no outcome (`context.outcomes` is not read): worth
 * remembering with the run, its blanks, and the statements `run`, `programme` and `rule`. O(rows).
 */
export function checkRunAlone(context: CheckContext): Finding[] {
  return [
    ...checkColumns(context),
    ...checkFiles(context),
    ...checkProgramme(context),
    ...checkCrucible(context),
    ...checkCautions(context),
    ...checkGases(context),
    ...checkBlankRecords(context),
    ...checkBlankShapes(context),
  ];
}

/**
 * Everything about one outcome: depends on it, on the run with its blanks, and on the limits, so it may be remembered
 * under the key of the outcome. O(readings in the window).
 */
export function checkStatement(context: CheckContext, outcome: StatementOutcome): Finding[] {
  if (outcome.failure !== null || outcome.placed === null) return [];
  return [
    ...checkDetection(outcome),
    ...checkWindow(context, outcome),
    ...checkRecordInWindow(context, outcome),
    ...checkSampling(context, outcome),
    ...checkSwitchInWindow(context, outcome),
    ...checkEdges(context, outcome),
    ...checkStepWithoutBlank(context, outcome),
    ...checkStep(context, outcome),
    ...checkResidue(context, outcome),
    ...checkOnset(context, outcome),
    ...checkPeak(context, outcome),
    ...checkSelfHeating(context, outcome),
    ...checkPeakInBlank(context, outcome),
    ...checkGlass(context, outcome),
  ];
}

/** What only several outcomes, or the run beside its outcomes, show. Cheap; run anew each time. */
export function checkTogether(context: CheckContext): Finding[] {
  return [
    ...checkRecord(context),
    ...checkMasses(context),
    ...checkBlankConditions(context),
    ...checkCalibration(context),
    ...checkOverlap(context),
    ...checkMassTogether(context),
    ...checkDrift(context),
    ...checkPeaksTogether(context),
    ...checkGlassRates(context),
    ...[...context.outcomes.values()].flatMap((outcome) => checkCrossing(context, outcome)),
  ];
}
