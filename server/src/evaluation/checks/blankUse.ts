import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import { numberText } from '../../findings/numberText';
import type { StatementOutcome } from '../outcome';
import { reachedBy } from './blankConditions';
import { liftOver, milligramsPerUnit } from './buoyancy';
import type { BlankRun, CheckContext } from './context';
import { at, count, micrograms, percent, plain } from './wording';

/** Age and unit of each blank. */
export function checkBlankRecords(context: CheckContext): Finding[] {
  return context.blanks.flatMap((blank) => [...tooOld(context, blank), ...ofFraction(context, blank)]);
}

/** A step that a missing blank makes doubtful. */
export function checkStepWithoutBlank(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed } = outcome;
  const signal = context.run.signals.get('mass');
  if (analysis?.of !== 'step' || placed === null || signal === undefined || signal.blank !== null) return [];
  if (outcome.quantities.some((q) => q.limit !== null)) return [];
  const perUnit = milligramsPerUnit(context);
  const change = Math.abs(analysis.step.change.value);
  const share = (100 * change) / context.run.mass.reference;
  const lift = liftOver(context, placed.window.from, placed.window.to);
  const size = perUnit === null ? null : change * perUnit;
  if (size !== null && lift !== null && lift !== 0) {
    const ofLift = (100 * size) / Math.abs(lift);
    const least = context.limit('step-within-buoyancy');
    if (ofLift < least) {
      return [
        makeFinding(
          'step-within-buoyancy',
          at(outcome, 'window'),
          `The step is ${micrograms(size)}, ${percent(ofLift)} of the ${micrograms(Math.abs(lift))} that the lift of the gas is estimated to do there (limit ${percent(least)}), and no blank is subtracted.`,
          { about: outcome.name },
        ),
      ];
    }
  }
  const limit = context.limit('no-blank');
  const multiple = fixedLimit('no-blank', 1);
  const small = share < limit;
  const liftMatters = size !== null && lift !== null && size < multiple * Math.abs(lift);
  if (!small && !liftMatters) return [];
  const estimate = lift === null ? '' : `; the lift of the gas is estimated at ${micrograms(Math.abs(lift))} there`;
  const why = small
    ? `${percent(share)} of the initial mass (limit ${percent(limit)})`
    : `${micrograms(size ?? 0)}, less than ${count(multiple)} times the lift`;
  return [
    makeFinding('no-blank', at(outcome, 'window'), `No blank is subtracted, and the step is ${why}${estimate}.`, {
      about: outcome.name,
    }),
  ];
}

function tooOld(context: CheckContext, blank: BlankRun): Finding[] {
  const own = dayOf(context.program.run?.statement.measured ?? null);
  const other = dayOf(blank.described?.measured ?? null);
  const limit = context.limit('blank-old');
  if (own === null || other === null || Math.abs(own - other) * 24 <= limit) return [];
  return [
    makeFinding(
      'blank-old',
      { statement: blank.id, token: 'file' },
      `${blank.display} was measured on ${blank.described!.measured!}, ${count(Math.abs(own - other))} days ${other < own ? 'before' : 'after'} the run (limit ${numberText(limit / 24, 1)} days).`,
    ),
  ];
}

/** Days since a fixed one, by the proleptic Gregorian calendar; null: no date. */
export function dayOf(date: string | null): number | null {
  const match = date === null ? null : /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (match === null) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  // March first, so that the leap day is the last of its year.
  const y = month <= 2 ? year - 1 : year;
  const m = (month + 9) % 12;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + Math.floor((153 * m + 2) / 5) + day;
}

function ofFraction(context: CheckContext, blank: BlankRun): Finding[] {
  if (!reachedBy(blank).includes('loss')) return [];
  const own = context.run.raw.columns.find((c) => c.signal === 'mass')?.unit;
  const other = blank.signals.get('mass')?.unit;
  if (own === undefined || other === undefined || (own === 'mg' && other === 'mg')) return [];
  const which = other === 'mg' ? 'the run' : blank.display;
  return [
    makeFinding(
      'blank-of-fraction',
      { statement: blank.id, token: 'file' },
      `The mass of ${which} is exported as a fraction, and a blank is subtracted in mg: ${plain(100)} % of an empty crucible is no mass.`,
      { only: reachedBy(blank) },
    ),
  ];
}
