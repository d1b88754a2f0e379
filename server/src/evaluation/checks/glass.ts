import type { GlassChecks, LineState } from '../../analysis/glassChecks';
import { levelAt } from '../../analysis/level';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { GlassStatement } from '../../language/model';
import type { Segment } from '../../runs/run';
import type { Placed, StatementOutcome } from '../outcome';
import { defaults, widthOf } from '../settings';
import type { CheckContext } from './context';
import { usesOf } from './references';
import { at, celsius, insertClause, kelvin, percent, placeText, plain, replaceToken } from './wording';

interface Glass {
  readonly outcome: StatementOutcome;
  readonly statement: GlassStatement;
  readonly placed: Placed;
  readonly segment: Segment;
}

/** History, size, lines and surroundings of a glass transition. */
export function checkGlass(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed, source } = outcome;
  const { statement } = source;
  if (analysis?.of !== 'glass' || placed === null || placed.segment === null || statement.kind !== 'glass') return [];
  const glass = { outcome, statement, placed, segment: placed.segment };
  if (outcome.quantities.some((q) => q.limit !== null)) return history(context, glass);
  return [
    ...history(context, glass),
    ...(analysis.glass.checks === null ? [] : lines(context, glass, analysis.glass.checks)),
    ...(analysis.glass.checks === null ? [] : overshoot(context, glass, analysis.glass.checks)),
    ...smallStep(context, glass),
    ...nearStart(context, glass),
    ...massLost(context, glass),
  ];
}

function history(context: CheckContext, { outcome, statement, segment }: Glass): Finding[] {
  const cooled = context.run.segments.some((s) => s.direction === 'cooling' && s.end <= segment.start + 1);
  if (segment.direction !== 'heating' || cooled || statement.notes.length > 0) return [];
  return [
    makeFinding(
      'history-unknown',
      at(outcome, 'name'),
      `No cooling precedes ${segment.name}, so how the specimen was cooled and stored before ${outcome.name} is not on record.`,
      { about: outcome.name },
    ),
  ];
}

function lines(context: CheckContext, glass: Glass, checks: GlassChecks): Finding[] {
  const { outcome, placed, statement } = glass;
  const per = placed.secondsPerKelvin;
  if (per === null) return [];
  const limit = context.limit('lines-too-short');
  const sides: readonly (readonly [string, LineState, number, string, number])[] = [
    ['before', checks.from, per.from, 'window.from', placed.window.from],
    ['after', checks.to, per.to, 'window.to', placed.window.to],
  ];
  return sides.flatMap(([word, line, seconds, token, time]) => {
    const findings: Finding[] = [];
    const length = line.length / seconds;
    // A line loses up to one reading at its ends.
    if (length < limit - (2 * context.facts.interval) / seconds) {
      findings.push(
        makeFinding(
          'lines-too-short',
          at(outcome, statement.span === null ? 'window' : 'span.value'),
          `The line ${word} ${outcome.name} rests on ${kelvin(length)} (limit ${kelvin(limit)}).`,
          {
            about: outcome.name,
            fixes:
              statement.span === null
                ? []
                : [replaceToken('Write the default, 15 K', at(outcome, 'span.value'), '15 K')],
          },
        ),
      );
    }
    if (!line.straight) {
      findings.push(
        makeFinding(
          'window-edge-not-level',
          at(outcome, token),
          `The line ${word} ${outcome.name}, at ${placeText(context.run, placed.segment, time)}, is bent by ${percent(100 * line.ofStep)} of the step: another effect reaches into it.`,
          { about: outcome.name },
        ),
      );
    }
    return findings;
  });
}

/** An overshoot must be told from noise before it biases anything. */
const SURE = 5;

function overshoot(context: CheckContext, { outcome, statement }: Glass, { overshoot: found }: GlassChecks): Finding[] {
  const limit = context.limit('relaxation-overshoot');

  const share = 100 * found.ofStep;
  if (statement.by === 'equal areas' || share <= limit || found.sigmas <= SURE) return [];
  const fix =
    statement.by === null
      ? insertClause(outcome.source.id, 'by equal areas')
      : replaceToken('Read it by equal areas', at(outcome, 'by.value'), 'equal areas');
  return [
    makeFinding(
      'relaxation-overshoot',
      at(outcome, 'name'),
      `At ${placeText(context.run, outcome.placed!.segment, found.time)} the curve overshoots the line after ${outcome.name} by ${percent(share)} of the step (limit ${percent(limit)}): the specimen had aged.`,
      { about: outcome.name, fixes: [fix] },
    ),
  ];
}

function smallStep(context: CheckContext, { outcome }: Glass): Finding[] {
  const step = outcome.quantities.find((q) => q.quantity === 'delta_cp')?.uncertain?.value ?? null;
  const limit = context.limit('glass-step-small');
  if (step === null || Math.abs(step) >= limit) return [];
  return [
    makeFinding(
      'glass-step-small',
      at(outcome, 'name'),
      `The step of ${outcome.name} is ${plain(Math.abs(step))} J/(g·K) (limit ${plain(limit)} J/(g·K)).`,
      { about: outcome.name },
    ),
  ];
}

function nearStart(context: CheckContext, { outcome, segment }: Glass): Finding[] {
  const onset = outcome.quantities.find((q) => q.quantity === 'onset')?.uncertain?.value ?? null;
  const limit = context.limit('glass-near-start');
  if (onset === null || segment.direction !== 'heating' || onset - segment.from >= limit) return [];
  return [
    makeFinding(
      'glass-near-start',
      at(outcome, 'name'),
      `${outcome.name} begins at ${celsius(onset)}, ${kelvin(onset - segment.from)} above the start of ${segment.name} at ${celsius(segment.from)} (limit ${kelvin(limit)}).`,
      { about: outcome.name },
    ),
  ];
}

function massLost(context: CheckContext, { outcome, placed, segment }: Glass): Finding[] {
  const { run } = context;
  const signal = run.signals.get('mass');
  const curve = signal?.curve(segment) ?? null;
  if (signal === undefined || curve === null) return [];
  const mass = levelAt(curve, placed.window.to, widthOf(placed, null, defaults.span).to).at(placed.window.to);
  const lost = (100 * (signal.first - mass)) / run.mass.reference;
  const limit = context.limit('mass-lost-before-glass');
  if (lost <= limit) return [];
  return [
    makeFinding(
      'mass-lost-before-glass',
      at(outcome, 'window'),
      `By the end of the window ${percent(lost)} of the initial mass is lost (limit ${percent(limit)}): the specimen was drying.`,
      { about: outcome.name },
    ),
  ];
}

const temperatures = ['onset', 'midpoint', 'inflection', 'end'];

/** Glass transitions of different rates in one expression. */
export function checkGlassRates(context: CheckContext): Finding[] {
  const limit = context.limit('glass-rates-differ');
  const perDecade = fixedLimit('glass-rates-differ', 1);
  return usesOf(context.program).flatMap(({ statement, references }) => {
    const used = references.flatMap((r) => {
      const outcome = context.outcomes.get(r.name);
      const rate = outcome?.placed?.segment?.rate ?? null;
      const isGlass = outcome?.analysis?.of === 'glass' && temperatures.includes(r.quantity);
      return isGlass && rate !== null ? [{ name: r.name, rate: Math.abs(rate) }] : [];
    });
    if (used.length < 2) return [];
    const sorted = [...used].sort((a, b) => a.rate - b.rate);
    const [slow, fast] = [sorted[0], sorted[sorted.length - 1]];
    const shift = perDecade * Math.log10(fast.rate / slow.rate);
    if (shift <= limit) return [];
    return [
      makeFinding(
        'glass-rates-differ',
        { statement, token: 'expression' },
        `${slow.name} was heated at ${plain(slow.rate)} and ${fast.name} at ${plain(fast.rate)} K/min: about ${kelvin(shift)} of their difference is to be expected from the rate alone (limit ${kelvin(limit)}).`,
      ),
    ];
  });
}
