import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import { slopeAt } from '../../analysis/slopeCurve';
import { add } from '../../quantities/arithmetic';
import { standardUncertainty } from '../../quantities/standardUncertainty';
import type { Uncertain } from '../../quantities/uncertain';
import { joinNearEdges } from '../influences';
import type { StatementOutcome } from '../outcome';
import { smoothing } from '../settings';
import { partsOfSums } from '../states';
import type { CheckContext } from './context';
import { allowance } from './gas';
import { at, insertStatement, percent, placeText } from './wording';

/** Steps beside each other: their boundaries, what lies between them, and whether everything adds up. */
export function checkMassTogether(context: CheckContext): Finding[] {
  return [...boundaries(context), ...unassigned(context), ...balance(context)];
}

interface Step {
  readonly outcome: StatementOutcome;
  readonly placed: NonNullable<StatementOutcome['placed']>;
}

/** Steps with a window, in order of time. */
function steps(context: CheckContext): Step[] {
  return [...context.outcomes.values()]
    .flatMap((outcome) =>
      outcome.analysis?.of === 'step' && outcome.placed !== null ? [{ outcome, placed: outcome.placed }] : [],
    )
    .sort((a, b) => a.placed.window.from - b.placed.window.from);
}

/** Windows that end and begin this close are one boundary, K. */
const SAME_BOUNDARY = 5;

function boundaries(context: CheckContext): Finding[] {
  const all = steps(context).filter(({ outcome }) => !isSum(outcome));
  return all.flatMap((left) =>
    all.flatMap((right) => {
      if (left === right || left.placed.segment?.name !== right.placed.segment?.name) return [];
      const per = left.placed.secondsPerKelvin?.to ?? 6;
      const distance = Math.abs(right.placed.window.from - left.placed.window.to) / per;
      if (distance > SAME_BOUNDARY || right.placed.window.from <= left.placed.window.from) return [];
      return summed(context, left.outcome.name, right.outcome.name) ? [] : boundary(context, left, right);
    }),
  );
}

function isSum({ source }: StatementOutcome): boolean {
  return source.statement.kind === 'step' && source.statement.sumOf !== null;
}

/** Both are parts of one sum: then the boundary is known to mean nothing, and only the sum is reported. */
function summed(context: CheckContext, a: string, b: string): boolean {
  return context.program.order.some(
    ({ statement }) =>
      statement.kind === 'step' &&
      statement.sumOf !== null &&
      statement.sumOf.includes(a) &&
      statement.sumOf.includes(b),
  );
}

function boundary(context: CheckContext, left: Step, right: Step): Finding[] {
  const curve = context.run.signals.get('mass')?.curve(left.placed.segment) ?? null;
  const { statement } = left.outcome.source;
  if (curve === null || statement.kind !== 'step') return [];
  if (left.outcome.analysis?.of !== 'step' || right.outcome.analysis?.of !== 'step') return [];
  const time = (left.placed.window.to + right.placed.window.from) / 2;
  const noise = context.run.signals.get('mass')!.noise(left.placed.segment);
  const slope = slopeAt(curve, time, smoothing(left.placed, statement.smooth).seconds ?? 0, noise);
  const lower = Math.min(left.outcome.analysis.step.maxima.largest, right.outcome.analysis.step.maxima.largest);
  const sure = Math.max(0, Math.abs(slope.value) - 2 * slope.noise);
  const limit = context.limit('boundary-not-level');
  if (!(lower > 0) || 100 * sure <= limit * lower) return [];
  const share = percent((100 * Math.abs(slope.value)) / lower);
  const place = placeText(context.run, left.placed.segment, time);
  const [a, b] = [left.outcome.name, right.outcome.name];
  const fix = insertStatement(`Evaluate ${a} and ${b} as one`, right.outcome.source.id, `step ${a}_${b} = ${a} + ${b}`);
  return [left, right].map((own, i) =>
    makeFinding(
      'boundary-not-level',
      at(own.outcome, i === 0 ? 'window.to' : 'window.from'),
      `Where ${a} and ${b} meet, at ${place}, the rate is ${share} of the lower of their maxima (limit ${percent(limit)}): the division is a choice, only the sum is measured.`,
      {
        about: own.outcome.name,
        fixes: [fix],
        related: [{ at: at((i === 0 ? right : left).outcome, 'window'), message: 'the other step' }],
      },
    ),
  );
}

/** Steps that count once: no parts where their sum is there, and nothing that another encloses. */
function outermost(context: CheckContext): Step[] {
  const parts = partsOfSums(context.program);
  const all = steps(context);
  const enclosed = new Set(
    all.flatMap(({ outcome: { source } }) => (source.statement.kind === 'step' ? source.statement.encloses : [])),
  );
  return all.filter(({ outcome }) => !parts.has(outcome.name) && !enclosed.has(outcome.name));
}

interface Gap {
  readonly left: Step;
  readonly right: Step;
  /** % of the initial mass, loss positive, less what lift or blank explain (sign kept). */
  readonly change: number;
}

function gaps(context: CheckContext): Gap[] {
  const list = outermost(context);
  return list.slice(1).flatMap((right, index) => {
    const left = list[index];
    const [before, after] = [left.outcome.masses?.end, right.outcome.masses?.start];
    if (!before || !after || left.placed.segment?.name !== right.placed.segment?.name) return [];
    if (right.placed.window.from <= left.placed.window.to) return [];
    const raw = before.value - after.value;
    const explained = allowance(context, left.placed.window.to, right.placed.window.from);
    const rest = Math.sign(raw) * Math.max(0, Math.abs(raw) - explained);
    return [{ left, right, change: (100 * rest) / context.run.mass.reference }];
  });
}

function unassigned(context: CheckContext): Finding[] {
  const limit = context.limit('unassigned-change');
  return gaps(context).flatMap(({ left, right, change }) => {
    if (Math.abs(change) <= limit) return [];
    const from = placeText(context.run, left.placed.segment, left.placed.window.to);
    const to = placeText(context.run, right.placed.segment, right.placed.window.from);
    return [
      makeFinding(
        'unassigned-change',
        at(right.outcome, 'window'),
        `Between ${left.outcome.name} and ${right.outcome.name}, from ${from} to ${to}, the mass ${change > 0 ? 'falls' : 'rises'} by ${percent(Math.abs(change))} that no statement names (limit ${percent(limit)}).`,
        { related: [{ at: at(left.outcome, 'window'), message: 'the step before' }] },
      ),
    ];
  });
}

function balance(context: CheckContext): Finding[] {
  const list = outermost(context);
  const residues = [...context.outcomes.values()].filter((o) => o.analysis?.of === 'residue' && o.placed !== null);
  const last = list.at(-1);
  const residue = residues.filter((r) => r.placed!.window.to >= (last?.placed.window.to ?? Infinity) - 60).at(-1);
  if (last === undefined || residue === undefined) return [];
  const own = 'initial mass';
  const shares = [...list.map(({ outcome }) => share(outcome, 'loss')), share(residue, 'remaining')];
  if (shares.some((s) => s === null || (s.basis !== own && s.basis !== 'first reading'))) return [];
  const values = joinNearEdges(shares.map((s) => s!.value));
  const sum = values.reduce((a, b) => add(a, b));
  const u = standardUncertainty(sum);
  const limit = context.limit('mass-balance');
  const multiple = fixedLimit('mass-balance', 1);
  const off = sum.value - 100;
  if (Math.abs(off) <= Math.max(limit, multiple * u)) return [];
  const largest = gaps(context).reduce<Gap | null>(
    (a, b) => (a === null || Math.abs(b.change) > Math.abs(a.change) ? b : a),
    null,
  );
  const where =
    largest === null || Math.abs(largest.change) < Math.abs(off) / 2
      ? ''
      : ` ${percent(Math.abs(largest.change))} of it lies between ${largest.left.outcome.name} and ${largest.right.outcome.name}.`;
  return [
    makeFinding(
      'mass-balance',
      at(residue, 'head'),
      `${[...list.map((s) => s.outcome.name), residue.name].join(' + ')} is ${percent(sum.value)}, ${percent(Math.abs(off))} off 100 % (limit ${percent(Math.max(limit, multiple * u))}).${where}`,
    ),
  ];
}

function share(outcome: StatementOutcome, quantity: string): { value: Uncertain; basis: string | null } | null {
  const found = outcome.quantities.find((q) => q.quantity === quantity);
  return !found?.uncertain ? null : { value: found.uncertain, basis: found.basis };
}
