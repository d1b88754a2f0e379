import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import type { StatementOutcome } from '../outcome';
import { blocksOf, largestRise, slopeOfBlocks } from './blocks';
import type { CheckContext } from './context';
import { at, percent, placeText, plain } from './wording';

const BLOCK = 60;

/** Drift of the mass where no statement looks, in the last hold of the run. */
export function checkDrift(context: CheckContext): Finding[] {
  const { program, run } = context;
  const signal = run.signals.get('mass');
  const hold = lastHold(context);
  if (program.run === null || program.run.statement.sampleIsNone || signal === undefined || hold === undefined)
    return [];
  const evaluated = [...context.outcomes.values()].some(
    ({ placed, source }) =>
      placed !== null &&
      source.statement.kind === 'step' &&
      placed.window.to > hold.start + 60 &&
      placed.window.from < hold.end,
  );
  // A residue read there has its own finding.
  const read = [...context.outcomes.values()].some(
    ({ placed, source }) => source.statement.kind === 'residue' && placed?.segment?.name === hold.name,
  );
  const curve = signal.curve(hold);
  if (evaluated || read || curve === null) return [];
  const middle = (hold.start + hold.end) / 2;
  const fit = slopeOfBlocks(blocksOf(curve.x, curve.y, { from: middle, to: hold.end }, 10));
  if (fit === null) return [];
  const slope = (6000 * fit.slope) / run.mass.reference;
  const error = (6000 * fit.error) / run.mass.reference;
  const limit = context.limit('drift-in-hold');
  if (Math.abs(slope) - 2 * error <= limit) return [];
  return [
    makeFinding(
      'drift-in-hold',
      { statement: program.run.id, token: 'file' },
      `In the last half of ${hold.name} the mass changes by ${plain(slope)} %/min (limit ${plain(limit)} %/min), and no statement evaluates it.`,
    ),
  ];
}

/** The last hold that follows a heating: a hold before it belongs to the start of the run. */
function lastHold({ run }: CheckContext) {
  const heated = run.segments.find((s) => s.direction === 'heating');
  return [...run.segments]
    .reverse()
    .find((s) => s.direction === 'hold' && s.end - s.start >= 120 && heated !== undefined && s.start >= heated.end - 1);
}

/** A residue: still changing, negative, or read after mass was taken up in cooling. */
export function checkResidue(context: CheckContext, outcome: StatementOutcome): Finding[] {
  if (outcome.analysis?.of !== 'residue' || outcome.placed === null) return [];
  return [...changing(context, outcome), ...negative(context, outcome), ...regained(context, outcome)];
}

/** The slope is read over this long before the residue (about it in a ramp), s: `over` alone is too short for its noise. */
const SLOPE = { hold: 120, ramp: 60 };

function changing(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { run } = context;
  const placed = outcome.placed!;
  const curve = run.signals.get('mass')?.curve(placed.segment) ?? null;
  if (curve === null || placed.segment === null) return [];
  const time = placed.window.to;
  const window =
    placed.segment.direction === 'hold'
      ? { from: Math.max(placed.segment.start, time - SLOPE.hold), to: time }
      : { from: time - SLOPE.ramp / 2, to: time + SLOPE.ramp / 2 };
  const fit = slopeOfBlocks(blocksOf(curve.x, curve.y, window, (window.to - window.from) / 10));
  if (fit === null) return [];
  const slope = (6000 * fit.slope) / run.mass.reference;
  const error = (6000 * fit.error) / run.mass.reference;
  const limit = context.limit('residue-changing');
  if (Math.abs(slope) - 2 * error <= limit) return [];
  return [
    makeFinding(
      'residue-changing',
      at(outcome, 'head'),
      `Where ${outcome.name} is read the mass still changes by ${plain(slope)} %/min (limit ${plain(limit)} %/min).`,
      { about: outcome.name },
    ),
  ];
}

function negative(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const remaining = outcome.quantities.find((q) => q.quantity === 'remaining')?.uncertain?.value ?? 0;
  const limit = context.limit('residue-negative');
  if (remaining >= -limit) return [];
  return [
    makeFinding(
      'residue-negative',
      at(outcome, 'head'),
      `${outcome.name} is ${percent(remaining)}, below -${percent(limit)}: more is lost than was there.`,
      { about: outcome.name },
    ),
  ];
}

function regained(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { run } = context;
  const time = outcome.placed!.window.to;
  const signal = run.signals.get('mass');
  const limit = context.limit('regain-on-cooling');
  for (const segment of run.segments) {
    const curve = signal?.curve(segment) ?? null;
    if (segment.direction !== 'cooling' || segment.start >= time || curve === null) continue;
    const window = { from: segment.start, to: Math.min(segment.end, time) };
    const found = largestRise(blocksOf(curve.x, curve.y, window, BLOCK));
    if (found === null) continue;
    const gain = (100 * found.rise) / run.mass.reference;
    if (gain <= limit) continue;
    return [
      makeFinding(
        'regain-on-cooling',
        at(outcome, 'head'),
        `Before ${outcome.name} is read, the mass rises by ${percent(gain)} in ${segment.name}, from ${placeText(run, segment, found.from.time)} to ${placeText(run, segment, found.to.time)} (limit ${percent(limit)}).`,
        { about: outcome.name },
      ),
    ];
  }
  return [];
}
