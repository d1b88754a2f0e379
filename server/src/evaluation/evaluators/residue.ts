import type { Curve } from '../../analysis/curve';
import { residueLevel } from '../../analysis/residueLevel';
import type { ResidueStatement } from '../../language/model';
import type { Effective } from '../../language/program';
import type { Uncertain } from '../../quantities/uncertain';
import { basisMass, inMilligrams, percentOf } from '../basis';
import { constructionOf } from '../construction';
import { edgeInputs } from '../edges';
import { failedOutcome, type Failure } from '../failedOutcome';
import { influence } from '../influences';
import { signalMissing } from '../locate';
import { blankParts, massScale } from '../massInfluences';
import type { Placed, StatementOutcome } from '../outcome';
import { celsiusOf, findSegment, isTime, secondsOf, segmentMissing } from '../place';
import type { PreparedRun } from '../preparedRun';
import { plainQuantity } from '../quantityOutcome';
import { defaults, widthOf } from '../settings';
import type { StatementContext } from '../statementContext';
import { timeAtClamped } from '../timeAt';
import { milligram, percent, percentPerMinute } from '../units';
import { failed, success, type Outcome } from '../../base/outcome';
import { numberText } from '../../findings/numberText';

/** The mass left at a temperature or at the end of a segment (ISO 11358-1; language.md 3). */
export function evaluateResidue(context: StatementContext, source: Effective<ResidueStatement>): StatementOutcome {
  const { run } = context;
  const statement = source.statement;
  const signal = run.signals.get('mass');
  if (signal === undefined) return failedOutcome(source, statement.name, signalMissing(run, 'mass'), 'mass');
  const spot = residuePlace(run, statement);
  if (!spot.ok) return failedOutcome(source, statement.name, spot.failure, 'mass');
  const { placed, at } = spot.value;
  const over = widthOf(placed, statement.over, defaults.over);
  const curve = signal.curve(placed.segment);
  const noise = signal.noise(placed.segment);
  const level = curve === null ? null : residueLevel(curve, within(curve, at), over.from, noise);
  if (level === null) {
    return failedOutcome(
      source,
      statement.name,
      {
        code: 'too-few-points',
        token: 'head',
        message: `No reading of mass lies within ${over.text} of that point.`,
        candidates: [],
      },
      'mass',
      placed,
    );
  }
  const { level: levelInput } = edgeInputs(placed, run.stem, 'mass');
  const mass: Uncertain = {
    value: level.level.value,
    parts: [
      ...(level.level.noise > 0 ? [{ input: levelInput.from, u: level.level.noise, dof: level.level.dof }] : []),
      ...blankParts(context, placed, placed.shown.from, at),
      ...massScale(context, level.level.value),
    ],
  };
  const basis = basisMass(context, statement.per, { massStart: mass, change: null });
  if (basis.mass === null) {
    return failedOutcome(
      source,
      statement.name,
      { code: 'dependency', token: 'per', message: '', candidates: [] },
      'mass',
      placed,
    );
  }
  const milligrams = inMilligrams(run, mass);
  const drift: Uncertain = {
    value: level.drift.value * 60,
    parts:
      level.drift.noise > 0
        ? [
            {
              input: influence.noise('drift', statement.name, run.stem),
              u: level.drift.noise * 60,
              dof: level.drift.dof,
            },
          ]
        : [],
  };
  const driftPercent = percentOf(drift, basis.mass);
  return {
    source,
    name: statement.name,
    failure: null,
    placed,
    signal: 'mass',
    quantities: [
      plainQuantity('remaining', percentOf(mass, basis.mass), percent, 'fraction', basis.label),
      plainQuantity('amount', milligrams, milligram, 'quantity', null, milligrams === null ? 'mass-missing' : null),
      plainQuantity('drift', driftPercent, percentPerMinute, 'quantity', basis.label),
    ],
    method: `mean over ${over.text}`,
    findings: [],
    construction: constructionOf(run, placed, statement.name, 'mass', [
      {
        shape: 'line',
        role: 'level',
        points: [
          [level.from, level.level.value],
          [level.to, level.level.value],
        ],
      },
    ]),
    masses: { start: null, end: mass },
    analysis: { of: 'residue', driftPerMinute: driftPercent === null ? 0 : driftPercent.value },
  };
}

/** The fitted end of a segment may lie a little outside its readings. */
function within(curve: Curve, at: number): number {
  return Math.min(Math.max(at, curve.x[0]), curve.x[curve.x.length - 1]);
}

interface Spot {
  readonly placed: Placed;
  /** s. */
  readonly at: number;
}

function residuePlace(run: PreparedRun, statement: ResidueStatement): Outcome<Spot, Failure> {
  if ('endOf' in statement.at) {
    const segment = findSegment(run, statement.at.endOf);
    if (segment === null) return failed(segmentMissing(run, statement.at.endOf));
    return success(spotIn(run, segment, segment.end));
  }
  const { amount, segment: named } = statement.at;
  if (isTime(amount)) {
    const segment = named === null ? null : findSegment(run, named);
    if (named !== null && segment === null) return failed(segmentMissing(run, named));
    const at = secondsOf(amount) + (segment?.start ?? 0);
    const holder = segment ?? run.segments.find((s) => s.start <= at && at <= s.end) ?? null;
    if (holder === null || at < holder.start - 1 || at > holder.end + 1) return failed(outside(run, amount.text));
    return success(spotIn(run, holder, at));
  }
  const degrees = celsiusOf(amount);
  const reaches = (s: (typeof run.segments)[number]) =>
    degrees >= Math.min(s.from, s.to) - 1 && degrees <= Math.max(s.from, s.to) + 1;
  if (named !== null) {
    const segment = findSegment(run, named);
    if (segment === null) return failed(segmentMissing(run, named));
    const map = run.map(segment);
    if (map === null || !reaches(segment)) return failed(outside(run, amount.text));
    return success(spotIn(run, segment, timeAtClamped(map, degrees)));
  }
  const heatings = run.segments.filter((s) => s.direction === 'heating' && reaches(s));
  if (heatings.length === 0) return failed(outside(run, amount.text));
  if (heatings.length > 1) {
    return failed({
      code: 'window-ambiguous-segment',
      token: 'head',
      message: `${amount.text} is passed in ${heatings.map((s) => s.name).join(' and in ')}: say which.`,
      candidates: [],
    });
  }
  const map = run.map(heatings[0]);
  if (map === null) return failed(outside(run, amount.text));
  return success(spotIn(run, heatings[0], timeAtClamped(map, degrees)));
}

function spotIn(run: PreparedRun, segment: PreparedRun['segments'][number], at: number): Spot {
  const map = segment.direction === 'hold' ? null : run.map(segment);
  const shown = map === null ? (at - segment.start) / 60 : map.temperatureAt(at);
  const per = map === null ? null : 1 / Math.max(Math.abs(map.rateAt(at)), 1e-9);
  return {
    at,
    placed: {
      segment,
      window: { from: at, to: at },
      shown: { from: shown, to: shown, unit: map === null ? 'min' : '°C', rule: null },
      secondsPerKelvin: per === null ? null : { from: per, to: per },
    },
  };
}

function outside(run: PreparedRun, text: string): Failure {
  const spans = run.segments
    .map((s) => `${s.name} spans ${numberText(s.from, 1)} to ${numberText(s.to, 1)} °C`)
    .join('; ');
  return {
    code: 'window-outside-run',
    token: 'head',
    message: `${text} lies outside the data (${spans}).`,
    candidates: [],
  };
}
