import { crossing, type Crossing } from '../../analysis/crossing';
import { success, type Outcome } from '../../base/outcome';
import type { CrossingStatement, SignalName } from '../../language/model';
import type { Effective } from '../../language/program';
import { basisMass } from '../basis';
import { constructionOf } from '../construction';
import { failedOutcome, type Failure } from '../failedOutcome';
import { locate } from '../locate';
import type { QuantityOutcome, StatementOutcome } from '../outcome';
import { celsiusOf, secondsOf } from '../place';
import { pointQuantities } from '../pointResults';
import { smoothing } from '../settings';
import type { StatementContext } from '../statementContext';
import type { StoredUnit } from '../../runs/run';

/** The first (or last) passage of a signal through a level, or through a share of its largest or smallest value. */
export function evaluateCrossing(context: StatementContext, source: Effective<CrossingStatement>): StatementOutcome {
  const { run } = context;
  const statement = source.statement;
  const carrier: SignalName = statement.signal === 'rate' ? 'mass' : statement.signal;
  const located = locate(context, statement.place, carrier, null);
  if (!located.ok) return failedOutcome(source, statement.name, located.failure, statement.signal);
  const { placed } = located.value;
  const basis = basisMass(context, statement.per, { massStart: null, change: null });
  const reference = basis.mass?.value ?? run.mass.reference;
  const level = levelInSignal(statement, reference, run.signals.get(carrier)!.unit);
  if (!level.ok) return failedOutcome(source, statement.name, level.failure, statement.signal, placed);
  const smooth = smoothing(placed, null);
  const found: Crossing | null = crossing(located.value.curve, placed.window, {
    of: statement.signal === 'rate' ? 'rate' : 'signal',
    level: level.value,
    way: statement.way ?? 'either',
    which: statement.which ?? 'first',
    smooth: smooth.seconds,
    noise: located.value.noise,
  });
  if (found === null) {
    return failedOutcome(
      source,
      statement.name,
      {
        code: 'crossing-not-found',
        token: 'head',
        message: `${statement.signal} does not pass that level in the window.`,
        candidates: [],
      },
      statement.signal,
      placed,
    );
  }
  const point = pointQuantities(run, placed, statement.name, 'temperature', found.at, null, null);
  const smoothed = statement.signal === 'rate' || found.smoothed ? `; ${smooth.text}` : '';
  return {
    source,
    name: statement.name,
    failure: null,
    placed,
    signal: statement.signal,
    quantities: renamePoint(point),
    method: `${statement.which ?? 'first'} passage${smoothed}`,
    findings: [],
    construction: constructionOf(
      run,
      placed,
      statement.name,
      statement.signal,
      found.shapes,
      statement.signal === 'rate' ? 'per second' : 'as the signal',
    ),
    masses: null,
    analysis: { of: 'other' },
  };
}

/** `temperature_time` is called `time` where the point is the whole result (language.md 3). */
export function renamePoint(point: readonly QuantityOutcome[]): QuantityOutcome[] {
  return point.map((q) => (q.quantity === 'temperature_time' ? { ...q, quantity: 'time' } : q));
}

type Level = { readonly value: number } | { readonly share: number; readonly of: 'maximum' | 'minimum' };

/** The level in the unit the curve is in: mass in mg or as fraction, rate per second, heat flow as exported. */
function levelInSignal(statement: CrossingStatement, reference: number, unit: StoredUnit): Outcome<Level, Failure> {
  if ('percent' in statement.level) {
    return success({ share: statement.level.percent / 100, of: statement.level.of });
  }
  const amount = statement.level.amount;
  const si = amount.value * (amount.unit?.factor ?? 1);
  const dimension = amount.unit?.dimension ?? [0, 0, 0, 0, 0, 0];
  switch (statement.signal) {
    case 'temperature':
      return success({ value: celsiusOf(amount) });
    case 'time':
      return success({ value: secondsOf(amount) });
    case 'mass':
    case 'rate': {
      // A mass (kg) or a fraction of the basis; for rate the same per second, and the mass falls.
      const isMass = dimension[1] === 1;
      const inSignal = isMass ? (unit === 'mg' ? si * 1e6 : (si * 1e6) / reference) : si * reference;
      return success({ value: inSignal });
    }
    default:
      return success({ value: unit === 'mW' ? si * 1e3 : unit === 'W/g' ? si * 1e-3 : unit === 'µV' ? si * 1e6 : si });
  }
}
