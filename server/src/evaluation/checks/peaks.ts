import { levelAt } from '../../analysis/level';
import type { HeatPeak, HeatPeakChecks } from '../../analysis/heatPeak';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { PeakStatement } from '../../language/model';
import type { Placed, StatementOutcome } from '../outcome';
import { defaults, widthOf } from '../settings';
import { temperatureAt } from './buoyancy';
import type { CheckContext } from './context';
import { at, insertClause, kelvin, moveEdge, percent, placeText, plain, replaceToken } from './wording';

interface Peak {
  readonly outcome: StatementOutcome;
  readonly statement: PeakStatement;
  readonly placed: Placed;
  readonly peak: HeatPeak;
  readonly checks: HeatPeakChecks;
  readonly unit: string;
}

/** Baseline, sign, smoothing and mass of a heat-flow effect. */
export function checkPeak(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed, source } = outcome;
  if (analysis?.of !== 'peak' || placed === null || source.statement.kind !== 'peak' || analysis.peak.checks === null) {
    return [];
  }
  // An effect that is not there has no baseline to speak of.
  if (outcome.quantities.some((q) => q.limit !== null)) return [];
  const unit = outcome.signal === null ? '' : (context.run.signals.get(outcome.signal)?.unit ?? '');
  const peak = {
    outcome,
    statement: source.statement,
    placed,
    peak: analysis.peak,
    checks: analysis.peak.checks,
    unit,
  };
  return [
    ...opposite(context, peak),
    ...notConverged(peak),
    ...areas(context, peak),
    ...sign(context, peak),
    ...smoothing(context, peak),
    ...stepUnderneath(context, peak),
    ...massBefore(context, peak),
  ];
}

/** Two effects of opposite sign, or a baseline that cuts the curve. */
function opposite(context: CheckContext, { outcome, placed, checks }: Peak): Finding[] {
  const part = checks.opposite;
  if (part === null || part.sigmas <= fixedLimit('baseline-crosses-curve', 1)) return [];
  const from = placeText(context.run, placed.segment, part.from);
  const to = placeText(context.run, placed.segment, part.to);
  const both = context.limit('exo-and-endo-together');
  if (100 * part.ofArea > both) {
    return [
      makeFinding(
        'exo-and-endo-together',
        at(outcome, 'window'),
        `From ${from} to ${to} the curve lies on the other side of the baseline, with ${percent(100 * part.ofArea)} of the area (limit ${percent(both)}): an endothermic and an exothermic effect cancel.`,
        { about: outcome.name, fixes: cutOff(context, outcome, placed, part.from, part.to) },
      ),
    ];
  }
  const limit = context.limit('baseline-crosses-curve');
  if (100 * part.ofHeight <= limit) return [];
  return [
    makeFinding(
      'baseline-crosses-curve',
      at(outcome, 'window'),
      `From ${from} to ${to} the baseline lies on the wrong side of the curve, by ${percent(100 * part.ofHeight)} of the height (limit ${percent(limit)}).`,
      { about: outcome.name, fixes: cutOff(context, outcome, placed, part.from, part.to) },
    ),
  ];
}

/** Moves the nearer limit past the stretch. */
function cutOff(context: CheckContext, outcome: StatementOutcome, placed: Placed, from: number, to: number) {
  if (placed.shown.unit !== '°C') return [];
  const early = from - placed.window.from < placed.window.to - to;
  return moveEdge(outcome, placed, early ? 'start' : 'end', Math.round(temperatureAt(context, early ? to : from)));
}

/** Noise makes the share of area passed leave 0..1 by about this much before the effect begins. */
const FRACTION_NOISE = 0.02;

function notConverged({ outcome, statement, peak }: Peak): Finding[] {
  if (statement.baseline !== 'sigmoidal') return [];
  const { lowest, highest } = peak.fraction;
  if (peak.converged && lowest >= -FRACTION_NOISE && highest <= 1 + FRACTION_NOISE) return [];
  const why = peak.converged
    ? `the share of area passed runs from ${plain(lowest)} to ${plain(highest)} instead of 0 to 1`
    : 'its area kept changing from one pass to the next';
  return [
    makeFinding(
      'baseline-not-converged',
      at(outcome, 'baseline.value'),
      `The sigmoidal baseline of ${outcome.name} does not settle: ${why}.`,
      {
        about: outcome.name,
        fixes: [replaceToken('Use a straight baseline', at(outcome, 'baseline.value'), 'linear')],
      },
    ),
  ];
}

function areas(context: CheckContext, { outcome, statement, peak, checks }: Peak): Finding[] {
  const area = Math.abs(peak.area.value);
  const limit = context.limit('baseline-matters');
  const sure = checks.areas.filter(({ difference }) => Math.abs(difference.value) > 2 * difference.noise);
  const all = [...sure.map((a) => a.area), peak.area.value];
  const spread = (100 * (Math.max(...all) - Math.min(...all))) / area;
  if (!(spread > limit)) return [];
  const used = statement.baseline ?? 'linear';
  const others = sure
    .filter((a) => a.kind !== used)
    .map((a) => `${a.kind} ${percent((100 * (Math.abs(a.area) - area)) / area)}`)
    .join(', ');
  return [
    makeFinding(
      'baseline-matters',
      at(outcome, statement.baseline === null ? 'name' : 'baseline.value'),
      `The areas over the baselines spread by ${percent(spread)} (limit ${percent(limit)}); against ${used}: ${others}.`,
      { about: outcome.name },
    ),
  ];
}

function sign(context: CheckContext, { outcome, statement, peak, unit }: Peak): Finding[] {
  if (statement.expect === null || context.run.endothermic === null) return [];
  const is = peak.area.value > 0 ? 'endothermic' : 'exothermic';
  if (is === statement.expect) return [];
  return [
    makeFinding(
      'effect-contradicts',
      at(outcome, 'expect.value'),
      `${outcome.name} is ${is} (area ${plain(peak.area.value)} ${unit}·s with endothermic ${context.run.endothermic}) but ${statement.expect} is expected.`,
      {
        about: outcome.name,
        fixes: [
          replaceToken(`Expect an ${is} effect`, at(outcome, 'expect.value'), is),
          ...(context.program.run === null
            ? []
            : [
                replaceToken(
                  'Turn the declared direction',
                  { statement: context.program.run.id, token: 'endothermic.value' },
                  context.run.endothermic === 'up' ? 'down' : 'up',
                ),
              ]),
        ],
      },
    ),
  ];
}

function smoothing(context: CheckContext, { outcome, statement, placed, checks }: Peak): Finding[] {
  const limit = context.limit('smoothing-too-wide');
  const widest = fixedLimit('smoothing-too-wide', 1);
  const lost = 100 * checks.smoothingLoss;
  const per = placed.secondsPerKelvin?.from ?? null;
  const kelvins = per === null ? null : checks.smooth / per;
  if (lost <= limit && (kelvins === null || kelvins <= widest)) return [];
  const width = kelvins === null ? `${plain(checks.smooth)} s` : kelvin(kelvins);
  const why =
    lost > limit
      ? `, which takes ${percent(lost)} from the flank (limit ${percent(limit)})`
      : ` (limit ${kelvin(widest)})`;
  const written = statement.smooth !== null;
  return [
    makeFinding(
      'smoothing-too-wide',
      at(outcome, written ? 'smooth.value' : 'window'),
      `The derivative is smoothed over ${width}${why}.`,
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

function stepUnderneath(context: CheckContext, { outcome, statement, peak, checks, unit }: Peak): Finding[] {
  const used = statement.baseline ?? 'linear';
  if (used !== 'linear') return [];
  const step = Math.abs(checks.step.value);
  const share = (100 * step) / Math.abs(peak.height.value);
  const limit = context.limit('step-under-straight-baseline');
  if (share <= limit || step <= 3 * checks.step.noise) return [];
  const fix =
    statement.baseline === null
      ? insertClause(outcome.source.id, 'baseline sigmoidal')
      : replaceToken('Use a sigmoidal baseline', at(outcome, 'baseline.value'), 'sigmoidal');
  return [
    makeFinding(
      'step-under-straight-baseline',
      at(outcome, statement.baseline === null ? 'name' : 'baseline.value'),
      `The levels before and after ${outcome.name}, continued to the peak, are ${plain(step)} ${unit} apart, ${percent(share)} of its height (limit ${percent(limit)}).`,
      { about: outcome.name, fixes: [fix] },
    ),
  ];
}

function massBefore(context: CheckContext, { outcome, statement, placed }: Peak): Finding[] {
  const { run } = context;
  const curve = run.signals.get('mass')?.curve(placed.segment) ?? null;
  if (curve === null || (statement.per !== null && statement.per.of !== 'initial mass')) return [];
  const span = widthOf(placed, null, defaults.span).from;
  const mass = levelAt(curve, placed.window.from, span).at(placed.window.from);
  const lost = 100 * (1 - mass / run.mass.reference);
  const limit = context.limit('mass-lost-before-peak');
  if (lost <= limit) return [];
  return [
    makeFinding(
      'mass-lost-before-peak',
      at(outcome, statement.per === null ? 'name' : 'per.value'),
      `${percent(lost)} of the initial mass is lost before the window (limit ${percent(limit)}), and the heat is divided by the initial mass.`,
      {
        about: outcome.name,
        fixes:
          statement.per === null
            ? [insertClause(outcome.source.id, 'per mass at start')]
            : [replaceToken('Divide by the mass at the start', at(outcome, 'per.value'), 'mass at start')],
      },
    ),
  ];
}
