import { fixedLimit } from '../../findings/table';
import { prominent } from '../../analysis/rateMaxima';
import { slopeAt, slopeCurve } from '../../analysis/slopeCurve';
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
  // The analysis counts from 5 %; a higher limit of the gloss is applied to the same curve.
  const { x, slope } = slopeCurve(curve, outcome.placed!.window, smoothSeconds(outcome) ?? 0);
  const rate = slope.map((s) => (change.value >= 0 ? -s : s));
  const counted = prominent(rate, (limit / 100) * maxima.largest).filter((i) =>
    maxima.times.some((t) => Math.abs(t - x[i]) < 1e-6),
  );
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

/** How much of the largest rate the smoothing takes: halved, it shows the rest. */
function wideSmoothing(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed } = outcome;
  const curve = massCurve(context, outcome);
  const seconds = smoothSeconds(outcome);
  if (analysis?.of !== 'step' || placed === null || curve === null || seconds === null || !isDetected(outcome))
    return [];
  const limit = context.limit('smoothing-too-wide');
  const widest = fixedLimit('smoothing-too-wide', 1);
  const per = placed.secondsPerKelvin;
  const kelvins = per === null ? null : seconds / ((per.from + per.to) / 2);
  const sign = analysis.step.change.value >= 0 ? -1 : 1;
  const peakRate = (width: number) => {
    const { x, slope } = slopeCurve(curve, placed.window, width);
    let best = 0;
    for (let i = 1; i < slope.length; i++) if (sign * slope[i] > sign * slope[best]) best = i;
    return { time: x[best], rate: sign * slope[best] };
  };
  const noise = context.run.signals.get('mass')!.noise(placed.segment);
  const full = peakRate(seconds);
  const halved = peakRate(seconds / 2);
  const sure = 4 * slopeAt(curve, halved.time, seconds / 2, noise).noise;
  const lost = halved.rate > 0 ? (100 * (halved.rate - full.rate)) / halved.rate : 0;
  const tooWide = kelvins !== null && kelvins > widest;
  const tooMuch = lost > limit && halved.rate - full.rate > sure;
  if (!tooWide && !tooMuch) return [];
  const why = tooMuch
    ? `halving it raises the largest rate by ${percent(lost)} (limit ${percent(limit)})`
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
