import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { findSpecimen } from '../../reference/specimens';
import type { StatementOutcome } from '../outcome';
import { blocksOf, largestRise, slopeOfBlocks } from './blocks';
import { liftOver, milligramsPerUnit, switchShift, temperatureAt, timelineOf } from './buoyancy';
import type { CheckContext } from './context';
import { gasSwitches, periodAt, type GasPeriod } from './gasTimeline';
import { fixedLimit } from '../../findings/table';
import { at, celsius, micrograms, minutes, moveEdge, percent, placeText, plain } from './wording';
import type { Segment } from '../../runs/run';

/** Means over this many seconds: single readings would make a gain of their noise. */
const BLOCK = 60;

/** What the gases do to the balance and to the specimen, whatever is evaluated. */
export function checkGases(context: CheckContext): Finding[] {
  if (context.program.run?.statement.sampleIsNone === true) return [];
  return [...switchSteps(context), ...gainInInertGas(context), ...lossInInertHold(context)];
}

/** A switch in the window of a statement, or shortly before it. */
export function checkSwitchInWindow(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed } = outcome;
  if (placed === null || outcome.signal === 'temperature' || outcome.signal === 'time') return [];
  const limit = 60 * context.limit('window-near-gas-switch');
  for (const { before, after } of gasSwitches(timelineOf(context))) {
    const inside = after.from > placed.window.from && after.from < placed.window.to;
    const since = placed.window.from - after.from;
    if (!inside && !(since >= 0 && since < limit)) continue;
    const what = `from ${before.words} to ${after.words}`;
    const message = inside
      ? `The gas changes ${what} inside the window, at ${placeText(context.run, placed.segment, after.from)}.`
      : `The gas changes ${what} ${minutes(since)} before the window begins (limit ${minutes(limit)}).`;
    return [
      makeFinding('window-near-gas-switch', at(outcome, 'window'), message, {
        about: outcome.name,
        fixes: inside ? [] : startLater(outcome, after.from + limit, context),
      }),
    ];
  }
  return [];
}

function startLater(outcome: StatementOutcome, time: number, context: CheckContext) {
  const { placed } = outcome;
  if (placed === null || time >= placed.window.to) return [];
  const from =
    placed.shown.unit === 'min' ? (time - originOf(outcome, placed.segment)) / 60 : temperatureAt(context, time);
  // Rounded into the window: a tenth of a minute, a kelvin.
  const inward = placed.segment?.direction === 'cooling' ? Math.floor(from) : Math.ceil(from);
  return moveEdge(outcome, placed, 'start', placed.shown.unit === 'min' ? Math.ceil(from * 10) / 10 : inward);
}

/** Minutes count from the start of the segment that is named, else from that of the file. */
function originOf(outcome: StatementOutcome, segment: Segment | null): number {
  const { statement } = outcome.source;
  return 'place' in statement && statement.place.segment !== null ? (segment?.start ?? 0) : 0;
}

function switchSteps(context: CheckContext): Finding[] {
  const { program, run } = context;
  const signal = run.signals.get('mass');
  if (program.run === null || signal === undefined || run.temperature === null) return [];
  const limit = context.limit('gas-switch-step') / 1000;
  const corrected = signal.blank !== null && context.blanks.some((b) => (b.described?.atmospheres.length ?? 0) > 1);
  if (corrected) return [];
  return gasSwitches(timelineOf(context)).flatMap(({ before, after }) => {
    if (before.density === null || after.density === null) return [];
    const temperature = temperatureAt(context, after.from);
    const shift = switchShift(before.density, after.density, temperature);
    if (Math.abs(shift) < limit) return [];
    return [
      makeFinding(
        'gas-switch-step',
        { statement: program.run!.id, token: `${after.token}.value` },
        `The change from ${before.words} to ${after.words} at ${celsius(temperature)} shifts the balance by an estimated ${micrograms(shift)} (limit ${micrograms(limit)}), with no change of the specimen.`,
      ),
    ];
  });
}

function gainInInertGas(context: CheckContext): Finding[] {
  const { program, run } = context;
  const signal = run.signals.get('mass');
  if (program.run === null || signal === undefined) return [];
  const limit = context.limit('gain-in-inert-gas');
  const above = fixedLimit('gain-in-inert-gas', 1);
  if (!timelineOf(context).some((period) => period.inert)) return [];
  for (const segment of run.segments) {
    if (segment.direction === 'cooling' || segment.to < above) continue;
    const curve = signal.curve(segment);
    const map = segment.direction === 'hold' ? null : run.map(segment);
    if (curve === null) continue;
    const start = (map !== null && segment.from < above ? map.timeAt(above) : null) ?? segment.start;
    for (const period of inertPeriods(context, start, segment.end)) {
      const found = largestRise(blocksOf(curve.x, curve.y, period, BLOCK));
      if (found === null || !(found.rise > 0)) continue;
      const gain = (100 * found.rise) / run.mass.reference;
      const explained = (100 * allowance(context, found.from.time, found.to.time)) / run.mass.reference;
      if (gain <= limit || gain <= explained) continue;
      return [
        makeFinding(
          'gain-in-inert-gas',
          { statement: program.run.id, token: 'file' },
          `Between ${placeText(run, segment, found.from.time)} and ${placeText(run, segment, found.to.time)} the mass rises by ${percent(gain)} in ${period.words} (limit ${percent(Math.max(limit, explained))}).`,
        ),
      ];
    }
  }
  return [];
}

function inertPeriods(context: CheckContext, from: number, to: number): { from: number; to: number; words: string }[] {
  return timelineOf(context)
    .filter((p) => p.inert)
    .map((p: GasPeriod) => ({ from: Math.max(from, p.from), to: Math.min(to, p.to), words: p.words }))
    .filter((p) => p.to > p.from);
}

/** What lift (without a blank) or the repeatability of the blank explains, in the unit of the signal. */
export function allowance(context: CheckContext, from: number, to: number): number {
  const blank = context.run.signals.get('mass')?.blank ?? null;
  if (blank !== null) return 3 * (blank.standardUncertainty(from, to)?.u ?? 0);
  const lift = liftOver(context, from, to);
  const perUnit = milligramsPerUnit(context);
  return lift === null || perUnit === null ? 0 : (2 * Math.abs(lift)) / perUnit;
}

function lossInInertHold(context: CheckContext): Finding[] {
  const { program, run } = context;
  const signal = run.signals.get('mass');
  if (program.run === null || signal === undefined) return [];
  const carbon = program.run.statement.contains.filter((words) =>
    findSpecimen(words)?.traits.some((t) => t === 'carbon' || t === 'organic'),
  );
  if (carbon.length === 0) return [];
  const limit = context.limit('loss-in-inert-hold');
  const above = fixedLimit('loss-in-inert-hold', 1);
  return run.segments.flatMap((segment) => {
    const curve = signal.curve(segment);
    if (segment.direction !== 'hold' || segment.from < above || curve === null) return [];
    const middle = (segment.start + segment.end) / 2;
    if (periodAt(timelineOf(context), segment.start)?.inert !== true) return [];
    const end = Math.min(segment.end, periodAt(timelineOf(context), segment.start)?.to ?? segment.end);
    // The last half: what was decomposing on the way up has ended there.
    const fit = slopeOfBlocks(blocksOf(curve.x, curve.y, { from: middle, to: end }, 10));
    if (fit === null) return [];
    const slope = (100 * 60 * fit.slope) / run.mass.reference;
    const error = (100 * 60 * fit.error) / run.mass.reference;
    if (-slope - 2 * error <= limit) return [];
    return [
      makeFinding(
        'loss-in-inert-hold',
        { statement: program.run!.id, token: 'file' },
        `In ${segment.name} at ${celsius(segment.from)} the mass falls by ${plain(-slope)} %/min in inert gas (limit ${plain(limit)} %/min), and ${carbon.join(', ')} leaves carbon: oxygen is present.`,
      ),
    ];
  });
}
