import { samplesIn } from '../../analysis/range';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { StatementOutcome } from '../outcome';
import type { CheckContext } from './context';
import { at, celsius, insertClause, percent, plain } from './wording';

/** A level that the mass passes: not within its noise, and not on account of moisture. */
export function checkCrossing(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { statement } = outcome.source;
  if (statement.kind !== 'crossing' || statement.signal !== 'mass' || outcome.placed === null) return [];
  return [...inNoise(context, outcome), ...withMoisture(context, outcome)];
}

/** The level in the unit of the mass signal; null where it is a share of an extreme. */
function levelOf(context: CheckContext, outcome: StatementOutcome): number | null {
  const { statement } = outcome.source;
  const { run } = context;
  if (statement.kind !== 'crossing' || !('amount' in statement.level)) return null;
  const { value, unit } = statement.level.amount;
  const si = value * (unit?.factor ?? 1);
  if (unit?.dimension[1] !== 1) return si * run.mass.reference;
  return run.signals.get('mass')?.unit === 'mg' ? si * 1e6 : (si * 1e6) / (run.mass.milligrams?.value ?? NaN);
}

function inNoise(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { run } = context;
  const signal = run.signals.get('mass');
  const placed = outcome.placed!;
  const curve = signal?.curve(placed.segment) ?? null;
  const level = levelOf(context, outcome);
  if (signal === undefined || curve === null || level === null) return [];
  const { first, last } = samplesIn(curve.x, placed.window);
  const n = Math.min(10, last - first);
  if (n < 1) return [];
  let start = 0;
  for (let i = first; i < first + n; i++) start += curve.y[i] / n;
  const sigma = signal.noise(placed.segment).sigma;
  const limit = context.limit('crossing-in-noise');
  const distance = Math.abs(start - level);
  if (!(sigma > 0) || distance >= limit * sigma) return [];
  return [
    makeFinding(
      'crossing-in-noise',
      at(outcome, 'level'),
      `The level is ${percent((100 * distance) / run.mass.reference)} away from where the mass starts, ${plain(distance / sigma)} times its noise (limit ${plain(limit)}).`,
      { about: outcome.name },
    ),
  ];
}

function withMoisture(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { statement } = outcome.source;
  if (statement.kind !== 'crossing' || !('amount' in statement.level)) return [];
  if (statement.per !== null && statement.per.of !== 'initial mass') return [];
  const time = outcome.quantities.find((q) => q.quantity === 'temperature')?.uncertain?.value ?? null;
  const limit = context.limit('crossing-includes-moisture');
  const drying = fixedLimit('crossing-includes-moisture', 1);
  for (const other of context.outcomes.values()) {
    const { analysis, placed } = other;
    if (analysis?.of !== 'step' || !placed?.segment || placed.segment.direction !== 'heating') continue;
    if (placed.segment.name !== outcome.placed!.segment?.name) continue;
    const end = Math.max(placed.shown.from, placed.shown.to);
    const loss = (100 * analysis.step.change.value) / context.run.mass.reference;
    if (placed.shown.unit !== '°C' || end > drying || (time !== null && time < end) || loss <= limit) continue;
    return [
      makeFinding(
        'crossing-includes-moisture',
        at(outcome, 'level'),
        `${other.name} takes ${percent(loss)} up to ${celsius(end)} (limit ${percent(limit)}), and the level counts it: a damp specimen crosses earlier.`,
        { about: outcome.name, fixes: [insertClause(outcome.source.id, `per dried mass after ${other.name}`)] },
      ),
    ];
  }
  return [];
}
