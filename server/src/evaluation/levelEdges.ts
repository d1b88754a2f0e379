import { nearestLevel } from '../analysis/nearestLevel';
import { nearestStraight } from '../analysis/nearestStraight';
import { numberText } from '../findings/numberText';
import type { Amount } from '../language/model';
import { levelSlope } from './massStepParts';
import type { Placed, StatementOutcome } from './outcome';
import { isTime } from './place';
import type { PreparedRun } from './preparedRun';
import { defaults, smoothing, widthOf } from './settings';

/** Where one written end of a window would stand on level ground. */
export interface LevelEdge {
  /** The token of the end as written. */
  readonly token: 'window.from' | 'window.to';
  /** Earlier or later in time. */
  readonly word: 'start' | 'end';
  /** The number to write, in the unit that stands there; null where nothing is to be written, with the reason. */
  readonly number: string | null;
  /** For people: `652 °C`, or why there is nothing to write. */
  readonly text: string;
}

/** How far a level stretch is looked for: 60 K, in a hold 6 min (common practice: farther off it is another effect's). */
const reach = { kelvin: 60, seconds: 360 };

/**
 * The nearest level stretch beside each written end of a step's or peak's window, by the rules that also find `around`
 * windows. Empty for a window that a rule found and for statements whose windows need not end on levels.
 */
export function levelEdges(run: PreparedRun, outcome: StatementOutcome): LevelEdge[] {
  const { placed, source, signal } = outcome;
  const { statement } = source;
  if (placed === null || signal === null || (statement.kind !== 'step' && statement.kind !== 'peak')) return [];
  const { window } = statement.place;
  if (window === null || window.rule !== 'range') return [];
  const prepared = run.signals.get(signal);
  const curve = prepared?.curve(placed.segment) ?? null;
  if (prepared === undefined || curve === null) return [];
  const noise = prepared.noise(placed.segment);
  const span = widthOf(placed, statement.span, defaults.span);
  const falling = placed.segment?.direction === 'cooling' && !isTime(window.range.from);
  const forward = window.range.from.value <= window.range.to.value !== falling;
  return (['from', 'to'] as const).map((edge) => {
    const word = edge === 'from' ? 'start' : 'end';
    const token = (edge === 'from') === forward ? 'window.from' : 'window.to';
    const per = placed.secondsPerKelvin?.[edge] ?? null;
    const far = per === null ? reach.seconds : reach.kelvin * per;
    const found =
      signal === 'mass'
        ? nearestLevel(curve, noise, {
            window: placed.window,
            edge,
            reach: far,
            span: span[edge],
            levelSlope: levelSlope(run, placed),
            relativeRate: 0.02,
            smooth: smoothing(placed, statement.smooth).seconds ?? span[edge] / 2,
          })
        : nearestStraight(curve, noise, {
            edge: placed.window[edge],
            outward: edge === 'from' ? -1 : 1,
            reach: far,
            span: span[edge],
          });
    const what = signal === 'mass' ? 'mass' : signal === 'heatflow' ? 'heat flow' : signal;
    if (found === null) {
      const distance = per === null ? `${numberText(reach.seconds / 60, 0)} min` : `${numberText(reach.kelvin, 0)} K`;
      return { token, word, number: null, text: `the ${what} is level nowhere within ${distance} of the ${word}` };
    }
    if (found.already) return { token, word, number: null, text: `the ${what} is level at the ${word} already` };
    const amount = token === 'window.from' ? window.range.from : window.range.to;
    const number = written(run, placed, amount, window.range.to, found.at);
    return { token, word, number, text: `${number} ${(amount.unit ?? window.range.to.unit)?.text ?? ''}`.trim() };
  });
}

/** A time as a number in the unit in which the end is written. */
function written(run: PreparedRun, placed: Placed, amount: Amount, last: Amount, time: number): string {
  const unit = amount.unit ?? last.unit;
  if (unit !== null && isTime({ ...amount, unit })) {
    const minutes = unit.factor >= 60;
    return numberText((time - (placed.segment?.start ?? 0)) / unit.factor, minutes ? (unit.factor > 60 ? 3 : 1) : 0);
  }
  const map = placed.segment === null ? null : run.map(placed.segment);
  const celsius = Math.round(map?.temperatureAt(time) ?? NaN);
  if (unit === null || unit.offset !== 0) return numberText(celsius, 0);
  return numberText((celsius + 273.15) / unit.factor, 2);
}
