import { extrapolatedOnset } from '../../analysis/extrapolatedOnset';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { StatementOutcome } from '../outcome';
import { defaults, smoothing, widthOf } from '../settings';
import { temperatureAt } from './buoyancy';
import type { CheckContext } from './context';
import { at, celsius, kelvin, percent } from './wording';

/** An onset with its fit a little shorter and longer: a number that stands does not mind. */
export function checkOnset(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { statement } = outcome.source;
  const { placed, signal } = outcome;
  if (statement.kind !== 'onset' || placed === null || signal === null || placed.secondsPerKelvin === null) return [];
  const curve = context.run.signals.get(signal)?.curve(placed.segment) ?? null;
  if (curve === null) return [];
  const change = fixedLimit('onset-unstable', 1) / 100;
  const span = widthOf(placed, statement.span, defaults.span).from;
  const smooth = smoothing(placed, statement.smooth).seconds;
  const found: number[] = [];
  for (const s of [1 - change, 1, 1 + change]) {
    for (const w of smooth === null ? [1] : [1 - change, 1, 1 + change]) {
      const options = { span: span * s, smooth: smooth === null ? null : smooth * w, noise: null, propagate: false };
      const onset = extrapolatedOnset(curve, placed.window, options)?.onset.value;
      if (onset !== undefined) found.push(onset);
    }
  }
  if (found.length < 2) return [];
  const [low, high] = [Math.min(...found), Math.max(...found)];
  const spread = (high - low) / placed.secondsPerKelvin.from;
  const limit = context.limit('onset-unstable');
  if (spread <= limit) return [];
  return [
    makeFinding(
      'onset-unstable',
      at(outcome, 'window'),
      `With span and smoothing ${percent(100 * change)} shorter and longer the onset lies between ${celsius(temperatureAt(context, low))} and ${celsius(temperatureAt(context, high))}, ${kelvin(spread)} apart (limit ${kelvin(limit)}).`,
      { about: outcome.name },
    ),
  ];
}
