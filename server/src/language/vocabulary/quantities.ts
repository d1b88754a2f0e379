import type { EvaluationStatement } from '../model';

export type EvaluationKind = EvaluationStatement['kind'];

export interface QuantityRecord {
  readonly name: string;
  /** In the spelling of the language; `1` for a plain number. */
  readonly unit: string;
  readonly kind: 'number' | 'fraction' | 'temperature' | 'difference' | 'time' | 'quantity';
  /** Whether it is taken over the basis of its statement. */
  readonly perBasis: boolean;
  readonly definition: string;
  /** All standards are cited from memory. */
  readonly standard: string;
}

const iso11358 = 'ISO 11358-1 (from memory)';
const iso11357 = 'ISO 11357-1 and -3 (from memory)';
const iso11357glass = 'ISO 11357-2 (from memory)';
const own = 'own definition';

function quantity(
  name: string,
  unit: string,
  kind: QuantityRecord['kind'],
  perBasis: boolean,
  standard: string,
  definition: string,
): QuantityRecord {
  return { name, unit, kind, perBasis, definition, standard };
}

function temperature(name: string, standard: string, definition: string): QuantityRecord {
  return quantity(name, '°C', 'temperature', false, standard, definition);
}

const step: readonly QuantityRecord[] = [
  quantity(
    'loss',
    '%',
    'fraction',
    true,
    iso11358,
    'Mass at the start less mass at the end, over the basis. Both are means of `span` about the ends of the window (levels), or read at the midpoint on the lines fitted there (tangents).',
  ),
  quantity('gain', '%', 'fraction', true, iso11358, 'The loss with its sign turned: positive where mass is taken up.'),
  quantity('change', '%', 'fraction', true, iso11358, 'Mass at the end less mass at the start, over the basis.'),
  quantity('remaining', '%', 'fraction', true, iso11358, 'The mass at the end over the basis.'),
  quantity('mass_start', 'mg', 'quantity', false, iso11358, 'The mass at the start of the step.'),
  quantity('mass_end', 'mg', 'quantity', false, iso11358, 'The mass at the end of the step.'),
  quantity('amount', 'mg', 'quantity', false, iso11358, 'The mass lost: mass at the start less mass at the end.'),
  temperature('start', iso11358, 'Where the steepest tangent meets the level before the step.'),
  temperature('midpoint', iso11358, 'Where half of the loss has happened.'),
  temperature('end', iso11358, 'Where the steepest tangent meets the level after the step.'),
  temperature('inflection', iso11358, 'Where the mass changes fastest.'),
  temperature('departure', own, 'Where the curve first leaves the level by 3σ and stays away for 3 K.'),
  quantity('rate', '%/min', 'quantity', true, iso11358, 'The rate of loss at the inflection, over the basis.'),
  quantity('maxima', '1', 'number', false, own, 'The number of maxima of the rate above 5 % of the largest.'),
];

const peak: readonly QuantityRecord[] = [
  temperature('departure', iso11357, 'Where the curve first leaves the baseline by 3σ.'),
  temperature('onset', iso11357, 'Where the tangent of the first flank meets the baseline (extrapolated onset).'),
  temperature('peak', iso11357, 'Where the curve is farthest from the baseline.'),
  temperature('end', iso11357, 'Where the tangent of the last flank meets the baseline (extrapolated end).'),
  temperature('return', iso11357, 'Where the curve is back on the baseline.'),
  quantity(
    'enthalpy',
    'J/g',
    'quantity',
    true,
    iso11357,
    'The area between curve and baseline over time, over the basis, endothermic positive.',
  ),
  quantity('area', 'J', 'quantity', false, iso11357, 'The area between curve and baseline over time, undivided.'),
  quantity('height', 'W/g', 'quantity', true, iso11357, 'The distance from the baseline at the peak, over the basis.'),
  quantity('width', 'K', 'difference', false, own, 'The width at half height.'),
];

const glass: readonly QuantityRecord[] = [
  temperature('onset', iso11357glass, 'Where the steepest tangent meets the line before the transition.'),
  temperature('midpoint', iso11357glass, 'As `by` says: at half height, of equal areas, or at the inflection.'),
  temperature('inflection', iso11357glass, 'Where the curve is steepest.'),
  temperature('end', iso11357glass, 'Where the steepest tangent meets the line after the transition.'),
  quantity(
    'delta_cp',
    'J/(g·K)',
    'quantity',
    false,
    iso11357glass,
    'The gap between the two lines at the midpoint over mass and heating rate.',
  ),
];

const onset: readonly QuantityRecord[] = [
  temperature('temperature', iso11357, 'Where the steepest tangent meets the line through the first stretch.'),
  quantity('time', 'min', 'time', false, iso11357, 'The time of the same point.'),
];

const crossing: readonly QuantityRecord[] = [
  temperature('temperature', own, 'Where the signal first passes the level.'),
  quantity('time', 'min', 'time', false, own, 'When the signal first passes the level.'),
];

const residue: readonly QuantityRecord[] = [
  quantity('remaining', '%', 'fraction', true, iso11358, 'The mean mass over `over` about the place, over the basis.'),
  quantity('amount', 'mg', 'quantity', false, iso11358, 'The mean mass over `over` about the place.'),
  quantity('drift', '%/min', 'quantity', true, own, 'The slope of the mass over `over`, over the basis.'),
];

/** Each °C quantity has a twin in minutes, the only one a hold has; of `temperature` that twin is `time`. */
function withTwins(records: readonly QuantityRecord[]): readonly QuantityRecord[] {
  return records.flatMap((record) =>
    record.kind !== 'temperature' || record.name === 'temperature'
      ? [record]
      : [
          record,
          {
            ...record,
            name: `${record.name}_time`,
            unit: 'min',
            kind: 'time',
            definition: `The time of \`${record.name}\`, in minutes of its segment.`,
          },
        ],
  );
}

/** The quantities of each kind, in the order they are listed to people. */
export const quantities: Readonly<Record<EvaluationKind, readonly QuantityRecord[]>> = {
  step: withTwins(step),
  peak: withTwins(peak),
  glass: withTwins(glass),
  onset: withTwins(onset),
  crossing: withTwins(crossing),
  residue: withTwins(residue),
};

/** What to propose for a bare name of this kind. */
export const usualQuantity: Readonly<Record<EvaluationKind, string>> = {
  step: 'loss',
  peak: 'enthalpy',
  glass: 'midpoint',
  onset: 'temperature',
  crossing: 'temperature',
  residue: 'remaining',
};

export function quantityRecord(kind: EvaluationKind, name: string): QuantityRecord | null {
  return quantities[kind].find((record) => record.name === name) ?? null;
}

/**
 * Unit and kind of `area` and `height` of a peak in another signal than the heat flow; such a peak has no enthalpy.
 * A mass is taken as mg, a rate as %/min.
 */
export function peakQuantityOf(
  signal: string,
  name: string,
): Pick<QuantityRecord, 'unit' | 'kind' | 'perBasis'> | null {
  const word = signal.replace(/\(.*$/, '');
  const units: Readonly<Record<string, readonly [area: string, height: string, perBasis: boolean]>> = {
    mass: ['mg·s', 'mg', false],
    rate: ['%', '%/min', true],
    ion: ['A·s', 'A', false],
    absorbance: ['s', '1', false],
  };
  const row = units[word];
  if (row === undefined || (name !== 'area' && name !== 'height')) return null;
  const unit = name === 'area' ? row[0] : row[1];
  return { unit, kind: unit === '1' ? 'number' : unit === '%' ? 'fraction' : 'quantity', perBasis: row[2] };
}
