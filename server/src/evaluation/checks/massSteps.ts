import { fixedLimit } from '../../findings/table';
import { prominent } from '../../analysis/rateMaxima';
import { slopeCurve } from '../../analysis/slopeCurve';
import { stepSmoothingLoss } from '../../analysis/smoothingLoss';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { findSpecimen } from '../../reference/specimens';
import type { StatementOutcome } from '../outcome';
import { smoothing } from '../settings';
import { temperatureAt, timelineOf } from './buoyancy';
import type { CheckContext } from './context';
import { periodAt } from './gasTimeline';
import { at, celsius, kelvin, percent, placeText, replaceToken } from './wording';

/** What a step's rate and gas say about it. */
export function checkStep(context: CheckContext, outcome: StatementOutcome): Finding[] {
  if (outcome.analysis?.of !== 'step' || outcome.placed === null) return [];
  return [...severalMaxima(context, outcome), ...wideSmoothing(context, outcome), ...carbonate(context, outcome)];
}

function massCurve(context: CheckContext, outcome: StatementOutcome) {
  return context.run.signals.get('mass')?.curve(outcome.placed?.segment ?? null) ?? null;
}

function smoothSeconds(outcome: StatementOutcome): number | null {
  const { statement } = outcome.source;
  if (outcome.placed === null || !('smooth' in statement)) return null;
  return smoothing(outcome.placed, statement.smooth).seconds;
}

function isDetected(outcome: StatementOutcome): boolean {
  return outcome.quantities.every((q) => q.limit === null);
}

function severalMaxima(context: CheckContext, outcome: StatementOutcome): Finding[] {
  if (outcome.analysis?.of !== 'step' || !isDetected(outcome)) return [];
  const { maxima, change } = outcome.analysis.step;
  const curve = massCurve(context, outcome);
  // A sum says itself that it is several effects.
  const { statement } = outcome.source;
  if (statement.kind === 'step' && statement.sumOf !== null) return [];
  if (maxima.count < 2 || curve === null) return [];
  const limit = context.limit('two-rate-maxima');
  // Twice as much smoothing leaves what stands apart and takes what a few readings make of a steep flank.
  const { x, slope } = slopeCurve(curve, outcome.placed!.window, 2 * (smoothSeconds(outcome) ?? 0));
  const rate = slope.map((s) => (change.value >= 0 ? -s : s));
  const largest = rate.reduce((a, b) => Math.max(a, b), 0);
  const counted = prominent(rate, (limit / 100) * largest);
  if (counted.length < 2) return [];
  const places = counted.map((i) => placeText(context.run, outcome.placed!.segment, x[i]));
  return [
    makeFinding(
      'two-rate-maxima',
      at(outcome, 'window'),
      `The rate has ${counted.length} maxima in the window, at ${places.join(', ')}, each standing out by more than ${percent(limit)} of the largest.`,
      { about: outcome.name },
    ),
  ];
}

function wideSmoothing(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed } = outcome;
  const curve = massCurve(context, outcome);
  const seconds = smoothSeconds(outcome);
  if (analysis?.of !== 'step' || placed === null || curve === null || seconds === null || !isDetected(outcome))
    return [];
  const { change, rate, inflection } = analysis.step;
  if (rate === null || inflection === null || rate.value === 0) return [];
  const limit = context.limit('smoothing-too-wide');
  const widest = fixedLimit('smoothing-too-wide', 1);
  const per = placed.secondsPerKelvin;
  const kelvins = per === null ? null : seconds / ((per.from + per.to) / 2);
  // A step as wide as its own height over its rate, under the same polynomial on the same readings.
  const lost = 100 * stepSmoothingLoss(curve, inflection.value, Math.abs(change.value / rate.value), seconds);
  const tooWide = kelvins !== null && kelvins > widest;
  const tooMuch = lost > limit;
  if (!tooWide && !tooMuch) return [];
  const why = tooMuch
    ? `that takes ${percent(lost)} from the largest rate (limit ${percent(limit)})`
    : `the limit is ${kelvin(widest)}`;
  const { statement } = outcome.source;
  const written = 'smooth' in statement && statement.smooth !== null;
  return [
    makeFinding(
      'smoothing-too-wide',
      at(outcome, written ? 'smooth.value' : 'window'),
      `The derivative is smoothed over ${kelvins === null ? `${Math.round(seconds)} s` : kelvin(kelvins)}: ${why}.`,
      {
        about: outcome.name,
        fixes:
          written && kelvins !== null
            ? [replaceToken('Write the default, 5 K', at(outcome, 'smooth.value'), '5 K')]
            : [],
      },
    ),
  ];
}

function carbonate(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed } = outcome;
  const { program, run } = context;
  if (program.run === null || placed === null || run.temperature === null) return [];
  const named = program.run.statement.contains.filter((words) => findSpecimen(words)?.traits.includes('carbonate'));
  const timeline = timelineOf(context);
  const period = periodAt(timeline, (placed.window.from + placed.window.to) / 2);
  const first = timeline.at(0);
  if (named.length === 0 || period === null || first === undefined || !period.oxidising || !first.inert) return [];
  const top = Math.max(temperatureAt(context, placed.window.from), temperatureAt(context, placed.window.to));
  const limit = context.limit('carbonate-in-burn-off');
  const enough = fixedLimit('carbonate-in-burn-off', 1);
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < run.time.length && run.time[i] < period.from; i++) before = Math.max(before, run.temperature[i]);
  if (top <= limit || before >= enough) return [];
  return [
    makeFinding(
      'carbonate-in-burn-off',
      at(outcome, 'window'),
      `The window reaches ${celsius(top)} (limit ${celsius(limit)}) in ${period.words}, and ${named.join(', ')} may decompose there: before, the run went to ${celsius(before)} only (${celsius(enough)} would have decomposed it).`,
      { about: outcome.name },
    ),
  ];
}
