import type { Curve } from '../../analysis/curve';
import { levelAt, stretchAt, stretchSlope } from '../../analysis/level';
import type { Noise } from '../../analysis/noise';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { StatementOutcome } from '../outcome';
import { edgeShift } from '../place';
import { defaults, widthOf } from '../settings';
import { partsOfSums } from '../states';
import { temperatureAt } from './buoyancy';
import type { CheckContext } from './context';
import { allowance } from './gas';
import { at, celsius, moveEdge, percent, placeText, plain } from './wording';

/** Whether the ends of a window stand on level ground, and what it does to the result if not. */
export function checkEdges(context: CheckContext, outcome: StatementOutcome): Finding[] {
  // What is not detected has no edge that could matter.
  if (outcome.quantities.some((q) => q.limit !== null)) return [];
  // The parts of a sum meet where nothing is level; that is why they are summed.
  if (partsOfSums(context.program).has(outcome.name)) return [];
  if (outcome.analysis?.of === 'step') return stepEdges(context, outcome);
  return outcome.analysis?.of === 'peak' ? peakEdges(context, outcome) : [];
}

interface Edge {
  readonly token: 'window.from' | 'window.to';
  readonly word: 'start' | 'end';
  readonly time: number;
  /** Seconds a kelvin; null in a hold. */
  readonly perKelvin: number | null;
  /** Length of the level stretch, s. */
  readonly span: number;
  /** -1: out of the window is earlier. */
  readonly outward: 1 | -1;
}

function stepEdges(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed, source } = outcome;
  const signal = context.run.signals.get('mass');
  const curve = signal?.curve(placed?.segment ?? null) ?? null;
  if (analysis?.of !== 'step' || placed === null || signal === undefined || curve === null) return [];
  const written = 'span' in source.statement ? source.statement.span : null;
  const span = widthOf(placed, written, defaults.span);
  const per = placed.secondsPerKelvin;
  const edges: Edge[] = [
    {
      token: 'window.from',
      word: 'start',
      time: placed.window.from,
      perKelvin: per?.from ?? null,
      span: span.from,
      outward: -1,
    },
    { token: 'window.to', word: 'end', time: placed.window.to, perKelvin: per?.to ?? null, span: span.to, outward: 1 },
  ];
  const noise = signal.noise(placed.segment);
  return edges.flatMap((edge) => {
    const sensitive = moved(context, outcome, curve, noise, edge);
    return sensitive.length > 0 ? sensitive : sloping(context, outcome, curve, noise, edge);
  });
}

/** The edge 5 K earlier and later (in a hold 30 s): what the level does to the result. */
function moved(context: CheckContext, outcome: StatementOutcome, curve: Curve, noise: Noise, edge: Edge): Finding[] {
  if (outcome.analysis?.of !== 'step') return [];
  const { step, scale } = outcome.analysis;
  const shift = edge.perKelvin === null ? edgeShift.seconds : edgeShift.kelvin * edge.perKelvin;
  const here = levelAt(curve, edge.time, edge.span).at(edge.time);
  const measured = edge.word === 'start' ? step.massStart : step.massEnd;
  const sure = 2 * Math.SQRT2 * measured.noise;
  let worst = { change: 0, way: 'later' };
  for (const [way, sign] of [
    ['earlier', -1],
    ['later', 1],
  ] as const) {
    const time = edge.time + sign * shift;
    if (time < curve.x[0] || time > curve.x[curve.x.length - 1]) continue;
    const change = Math.abs(levelAt(curve, time, edge.span).at(time) - here);
    if (change > worst.change) worst = { change, way };
  }
  const certain = Math.max(0, worst.change - sure);
  const absolute = certain * Math.abs(scale);
  const relative = (100 * certain) / Math.abs(step.change.value);
  const limit = context.limit('window-edge-sensitive');
  const ofItself = fixedLimit('window-edge-sensitive', 1);
  if (!(absolute > limit) || !(relative > ofItself)) return [];
  const by = edge.perKelvin === null ? `${edgeShift.seconds} s` : `${edgeShift.kelvin} K`;
  return [
    makeFinding(
      'window-edge-sensitive',
      at(outcome, edge.token),
      `With its ${edge.word} ${by} ${worst.way} the step changes by ${percent(worst.change * Math.abs(scale))}, ${percent((100 * worst.change) / Math.abs(step.change.value))} of itself (limits ${percent(limit)} and ${percent(ofItself)}).${levelText(context, outcome, curve, noise, edge)}`,
      { about: outcome.name, fixes: levelFix(context, outcome, curve, noise, edge) },
    ),
  ];
}

/** Slope of the mass at an edge, as far as noise, lift and blank do not explain it: units of the signal per s. */
function sureSlope(
  context: CheckContext,
  curve: Curve,
  noise: Noise,
  time: number,
  span: number,
): { slope: number; sure: number } {
  const slope = stretchSlope(curve, stretchAt(curve, time, span), noise);
  const blank = context.run.signals.get('mass')?.blank ?? null;
  // A blank repeats to within its repeatability over some fifty kelvins; without one the lift itself slopes.
  const length = blank === null ? 60 : 5 * span;
  const explained = allowance(context, time - length / 2, time + length / 2) / length;
  return { slope: slope.value, sure: Math.max(0, Math.abs(slope.value) - 2 * slope.noise - explained) };
}

function sloping(context: CheckContext, outcome: StatementOutcome, curve: Curve, noise: Noise, edge: Edge): Finding[] {
  if (outcome.analysis?.of !== 'step') return [];
  const { step, scale } = outcome.analysis;
  const { slope, sure } = sureSlope(context, curve, noise, edge.time, edge.span);
  const limit = context.limit('window-edge-not-level');
  const share = fixedLimit('window-edge-not-level', 1);
  const perShift = sure * (edge.perKelvin === null ? edgeShift.seconds : edgeShift.kelvin * edge.perKelvin);
  const small = (100 * perShift) / Math.abs(step.change.value) > share && (100 * sure) / step.maxima.largest > share;
  const steep = edge.perKelvin !== null && sure * edge.perKelvin * Math.abs(scale) > limit;
  if (!steep && !small) return [];
  const shown =
    edge.perKelvin === null
      ? `${plain(60 * Math.abs(slope * scale))} %/min`
      : `${plain(edge.perKelvin * Math.abs(slope * scale))} %/K`;
  return [
    makeFinding(
      'window-edge-not-level',
      at(outcome, edge.token),
      `At the ${edge.word} of the window the mass changes by ${shown} (limit ${plain(limit)} %/K, or ${percent(share)} of the step within ${edgeShift.kelvin} K).${levelText(context, outcome, curve, noise, edge)}`,
      { about: outcome.name, fixes: levelFix(context, outcome, curve, noise, edge) },
    ),
  ];
}

/** How far a level stretch is looked for, K. */
const REACH = 60;

/** The nearest time at which the mass is level, outward first; null where there is none within 60 K. */
function nearestLevel(
  context: CheckContext,
  outcome: StatementOutcome,
  curve: Curve,
  noise: Noise,
  edge: Edge,
): number | null {
  const { placed } = outcome;
  if (edge.perKelvin === null || !placed?.segment) return null;
  const limit = ((context.limit('window-edge-not-level') / 100) * context.run.mass.reference) / edge.perKelvin;
  for (let kelvins = 5; kelvins <= REACH; kelvins += 5) {
    for (const way of [edge.outward, -edge.outward]) {
      const time = edge.time + way * kelvins * edge.perKelvin;
      const inside = time > placed.segment.start + edge.span / 2 && time < placed.segment.end - edge.span / 2;
      const keeps = edge.word === 'start' ? time < placed.window.to : time > placed.window.from;
      if (inside && keeps && sureSlope(context, curve, noise, time, edge.span).sure <= limit) return time;
    }
  }
  return null;
}

function levelText(context: CheckContext, outcome: StatementOutcome, curve: Curve, noise: Noise, edge: Edge): string {
  const time = nearestLevel(context, outcome, curve, noise, edge);
  return time === null ? '' : ` It is level at ${celsius(temperatureAt(context, time))}.`;
}

function levelFix(context: CheckContext, outcome: StatementOutcome, curve: Curve, noise: Noise, edge: Edge) {
  const time = nearestLevel(context, outcome, curve, noise, edge);
  const { placed } = outcome;
  if (time === null || placed === null || placed.shown.unit !== '°C') return [];
  return moveEdge(outcome, placed, edge.word, Math.round(temperatureAt(context, time)));
}

/** The heat flow just outside the limits of a peak, against its baseline carried on. */
function peakEdges(context: CheckContext, outcome: StatementOutcome): Finding[] {
  if (outcome.analysis?.of !== 'peak' || outcome.placed === null) return [];
  const { checks } = outcome.analysis.peak;
  const unit = context.run.signals.get(outcome.signal!)?.unit ?? '';
  const limit = fixedLimit('window-edge-not-level', 2);
  const edges = [
    { token: 'window.from', word: 'before the start', state: checks?.from ?? null, time: outcome.placed.window.from },
    { token: 'window.to', word: 'after the end', state: checks?.to ?? null, time: outcome.placed.window.to },
  ];
  return edges.flatMap(({ token, word, state, time }) => {
    if (state === null || state.level) return [];
    const off = state.sigmas > limit;
    const what = off
      ? `${plain(Math.abs(state.distance.value))} ${unit} off its baseline, ${plain(state.sigmas)} times the noise (limit ${plain(limit)})`
      : `inclined against its baseline by ${plain(60 * Math.abs(state.slope.value))} ${unit}/min, ${plain(state.slopeErrors)} standard errors (limit ${plain(limit)})`;
    return [
      makeFinding(
        'window-edge-not-level',
        at(outcome, token),
        `Just ${word} of the window, at ${placeText(context.run, outcome.placed!.segment, time)}, the heat flow is ${what}: the effect goes on there.`,
        { about: outcome.name },
      ),
    ];
  });
}
