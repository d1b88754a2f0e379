import { samplesIn } from '../../analysis/range';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import type { StatementOutcome } from '../outcome';
import type { CheckContext } from './context';
import { usesOf } from './references';
import { at, celsius, kelvin, placeText, plain } from './wording';

/** What a peak is taken for: the same event as a mass loss, an equilibrium, a transition that an onset describes. */
export function checkPeaksTogether(context: CheckContext): Finding[] {
  return [...apartFromRate(context), ...onsetAlone(context), ...undercooled(context)];
}

function peaksOf(context: CheckContext): StatementOutcome[] {
  return [...context.outcomes.values()].filter((o) => o.analysis?.of === 'peak' && o.placed !== null);
}

function temperatureOf(outcome: StatementOutcome, quantity: string): number | null {
  return outcome.quantities.find((q) => q.quantity === quantity)?.uncertain?.value ?? null;
}

/** A peak inside its ramp: the temperature of the specimen against the straight line of the programme. */
export function checkSelfHeating(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed } = outcome;
  const { temperature, time, endothermic } = context.run;
  if (analysis?.of !== 'peak' || placed === null || placed.segment === null || temperature === null) return [];
  if (endothermic === null || analysis.peak.area.value > 0 || placed.segment.rate === null) return [];
  const half = (placed.window.to - placed.window.from) / 2;
  const before = samplesIn(time, {
    from: Math.max(placed.segment.start, placed.window.from - half),
    to: placed.window.from,
  });
  const after = samplesIn(time, { from: placed.window.to, to: Math.min(placed.segment.end, placed.window.to + half) });
  const line = lineThrough(time, temperature, [before, after]);
  if (line === null) return [];
  const { first, last } = samplesIn(time, placed.window);
  let worst = { off: 0, at: placed.window.from };
  for (let i = first + 1; i < last - 1; i++) {
    const mean = (temperature[i - 1] + temperature[i] + temperature[i + 1]) / 3;
    const off = mean - line(time[i]);
    if (off > worst.off) worst = { off, at: time[i] };
  }
  const limit = context.limit('self-heating');
  if (worst.off <= limit) return [];
  return [
    makeFinding(
      'self-heating',
      at(outcome, 'window'),
      `In ${outcome.name} the temperature runs ${kelvin(worst.off)} ahead of the ramp, at ${placeText(context.run, placed.segment, worst.at)} (limit ${kelvin(limit)}).`,
      { about: outcome.name },
    ),
  ];
}

function lineThrough(
  x: Float64Array,
  y: Float64Array,
  ranges: readonly { readonly first: number; readonly last: number }[],
): ((t: number) => number) | null {
  let n = 0;
  let mx = 0;
  let my = 0;
  const start = ranges[0].first;
  if (ranges.some((r) => r.last - r.first < 5)) return null;
  for (const { first, last } of ranges) {
    for (let i = first; i < last; i++) {
      n++;
      mx += x[i] - x[start];
      my += y[i] - y[start];
    }
  }
  mx /= n;
  my /= n;
  let xx = 0;
  let xy = 0;
  for (const { first, last } of ranges) {
    for (let i = first; i < last; i++) {
      xx += (x[i] - x[start] - mx) ** 2;
      xy += (x[i] - x[start] - mx) * (y[i] - y[start] - my);
    }
  }
  const slope = xx > 0 ? xy / xx : 0;
  return (t) => y[start] + my + slope * (t - x[start] - mx);
}

/** Share of the smaller window that two windows must have in common to be about one event. */
const COMMON = 0.5;

function apartFromRate(context: CheckContext): Finding[] {
  const limit = context.limit('peak-apart-from-rate');
  const steps = [...context.outcomes.values()].filter(
    (o) => o.analysis?.of === 'step' && o.analysis.step.maxima.count === 1 && o.placed !== null,
  );
  return peaksOf(context).flatMap((peak) =>
    steps.flatMap((step) => {
      const [p, s] = [peak.placed!, step.placed!];
      if (p.segment === null || p.segment.name !== s.segment?.name) return [];
      const common = Math.min(p.window.to, s.window.to) - Math.max(p.window.from, s.window.from);
      const smaller = Math.min(p.window.to - p.window.from, s.window.to - s.window.from);
      const [own, other] = [temperatureOf(peak, 'peak'), temperatureOf(step, 'inflection')];
      if (common < COMMON * smaller || own === null || other === null || Math.abs(own - other) <= limit) return [];
      return [
        makeFinding(
          'peak-apart-from-rate',
          at(peak, 'window'),
          `${peak.name} peaks at ${celsius(own)}, ${kelvin(Math.abs(own - other))} ${own > other ? 'above' : 'below'} the largest rate of ${step.name} at ${celsius(other)} (limit ${kelvin(limit)}).`,
          { about: peak.name, related: [{ at: at(step, 'window'), message: 'the mass step in the same window' }] },
        ),
      ];
    }),
  );
}

function onsetAlone(context: CheckContext): Finding[] {
  const uses = usesOf(context.program);
  const limit = context.limit('onset-without-peak');
  const used = (name: string, quantity: string) =>
    uses.find((u) => u.references.some((r) => r.name === name && r.quantity === quantity)) ?? null;
  return peaksOf(context).flatMap((outcome) => {
    const use = used(outcome.name, 'onset');
    const [onset, peak] = [temperatureOf(outcome, 'onset'), temperatureOf(outcome, 'peak')];
    if (use === null || used(outcome.name, 'peak') !== null || onset === null || peak === null) return [];
    const edge = Math.abs(peak - onset);
    if (edge <= limit) return [];
    return [
      makeFinding(
        'onset-without-peak',
        { statement: use.statement, token: 'expression' },
        `${outcome.name}.onset at ${celsius(onset)} is used alone, but the flank is ${plain(edge)} K wide (limit ${plain(limit)} K); the peak is at ${celsius(peak)}.`,
      ),
    ];
  });
}

/** A melting this far from a freezing is another transition, K. */
const SAME_TRANSITION = 80;

function undercooled(context: CheckContext): Finding[] {
  if (context.run.endothermic === null) return [];
  const all = peaksOf(context).filter((o) => temperatureOf(o, 'onset') !== null);
  const signed = (o: StatementOutcome) => (o.analysis?.of === 'peak' ? o.analysis.peak.area.value : 0);
  const meltings = all.filter((o) => o.placed!.segment?.direction === 'heating' && signed(o) > 0);
  const freezings = all.filter((o) => o.placed!.segment?.direction === 'cooling' && signed(o) < 0);
  const uses = usesOf(context.program);
  const limit = context.limit('freezing-undercooled');
  return freezings.flatMap((freezing) => {
    const own = temperatureOf(freezing, 'onset')!;
    const melting = meltings
      .map((o) => ({ outcome: o, onset: temperatureOf(o, 'onset')! }))
      .filter(({ onset }) => Math.abs(onset - own) < SAME_TRANSITION)
      .sort((a, b) => Math.abs(a.onset - own) - Math.abs(b.onset - own))
      .at(0);
    if (melting === undefined || melting.onset - own <= limit) return [];
    // The difference of both is the undercooling itself, and nobody takes that for an equilibrium.
    const use = uses.find(
      ({ references }) =>
        references.some((r) => r.name === freezing.name && r.quantity === 'onset') &&
        !references.some((r) => r.name === melting.outcome.name),
    );
    if (use === undefined) return [];
    return [
      makeFinding(
        'freezing-undercooled',
        { statement: use.statement, token: 'expression' },
        `${freezing.name}.onset at ${celsius(own)} lies ${kelvin(melting.onset - own)} below the melting onset of ${melting.outcome.name} at ${celsius(melting.onset)} (limit ${kelvin(limit)}): the melt was undercooled.`,
      ),
    ];
  });
}
