import { samplesIn } from '../../analysis/range';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import type { StatementOutcome } from '../outcome';
import type { CheckContext } from './context';
import { at, count, percent, placeText, plain } from './wording';
import { numberText } from '../../findings/numberText';

/** Whether the readings in the window are enough, and evenly heated. */
export function checkSampling(context: CheckContext, outcome: StatementOutcome): Finding[] {
  return [...fewPoints(context, outcome), ...sparsePeak(context, outcome), ...unevenRate(context, outcome)];
}

function fewPoints(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed, signal } = outcome;
  if (placed === null || signal === null || outcome.source.statement.kind === 'residue') return [];
  const curve = context.run.signals.get(signal === 'rate' ? 'mass' : signal)?.curve(placed.segment) ?? null;
  if (curve === null) return [];
  const { first, last } = samplesIn(curve.x, placed.window);
  const limit = context.limit('too-few-points');
  if (last - first >= limit) return [];
  return [
    makeFinding(
      'too-few-points',
      at(outcome, 'window'),
      `${count(last - first)} readings of ${signal} lie in the window (at least ${count(limit)} are needed).`,
      { about: outcome.name },
    ),
  ];
}

function sparsePeak(context: CheckContext, outcome: StatementOutcome): Finding[] {
  if (outcome.analysis?.of !== 'peak') return [];
  const across = outcome.analysis.peak.checks?.readingsAcrossHalf ?? null;
  const limit = context.limit('peak-sparsely-sampled');
  if (across === null || across >= limit) return [];
  return [
    makeFinding(
      'peak-sparsely-sampled',
      at(outcome, 'window'),
      `${count(across)} readings lie across the half width of ${outcome.name} (at least ${count(limit)} are needed).`,
      { about: outcome.name },
    ),
  ];
}

/** Rates are compared over stretches of this many kelvins: shorter ones show the ripple of the controller. */
const STRETCH = 10;

function unevenRate(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { kind } = outcome.source.statement;
  const segment = outcome.placed?.segment ?? null;
  const temperature = context.run.temperature;
  if ((kind !== 'onset' && kind !== 'glass') || segment === null || segment.rate === null || temperature === null) {
    return [];
  }
  const window = outcome.placed!.window;
  const nominal = segment.rate / 60;
  const stretch = STRETCH / Math.abs(nominal);
  const limit = context.limit('rate-uneven');
  let worst = { off: 0, time: window.from, rate: nominal };
  for (let t = window.from; t + stretch <= window.to; t += stretch / 2) {
    const rate = slopeOf(context.run.time, temperature, t, t + stretch);
    if (rate === null) continue;
    const off = Math.abs(rate / nominal - 1);
    if (off > worst.off) worst = { off, time: t + stretch / 2, rate };
  }
  if (100 * worst.off <= limit) return [];
  return [
    makeFinding(
      'rate-uneven',
      at(outcome, 'window'),
      `At ${placeText(context.run, segment, worst.time)} the rate is ${numberText(worst.rate * 60, 2)} K/min, ${percent(100 * worst.off)} off the ${numberText(segment.rate, 2)} K/min of ${segment.name} (limit ${plain(limit)} %).`,
      { about: outcome.name },
    ),
  ];
}

function slopeOf(x: Float64Array, y: Float64Array, from: number, to: number): number | null {
  const { first, last } = samplesIn(x, { from, to });
  let n = 0;
  let mx = 0;
  let my = 0;
  for (let i = first; i < last; i++) {
    if (Number.isNaN(y[i])) continue;
    n++;
    mx += x[i] - from;
    my += y[i] - y[first];
  }
  if (n < 5) return null;
  mx /= n;
  my /= n;
  let xx = 0;
  let xy = 0;
  for (let i = first; i < last; i++) {
    if (Number.isNaN(y[i])) continue;
    xx += (x[i] - from - mx) ** 2;
    xy += (x[i] - from - mx) * (y[i] - y[first] - my);
  }
  return xx > 0 ? xy / xx : null;
}
