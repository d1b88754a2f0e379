import { isTemperaturePoint } from '../../quantities/convert';
import { dimensions, isDimensionless, sameDimension } from '../../quantities/dimension';
import type { Dimension, Unit } from '../../quantities/unit';

/** What a written amount measures. It decides which units fit. */
export type Measure =
  | 'temperature'
  | 'difference'
  | 'time'
  | 'mass'
  | 'fraction'
  | 'mass rate'
  | 'fraction rate'
  | 'heating rate'
  | 'flow'
  | 'volume'
  | 'heat flow'
  | 'specific heat flow'
  | 'voltage'
  | 'current'
  | 'number';

export interface MeasureRecord {
  /** With its article, for messages: `a mass`. */
  readonly words: string;
  readonly dimension: Dimension;
  /** The unit to propose; empty for a plain number. */
  readonly unit: string;
}

export const measures: Readonly<Record<Measure, MeasureRecord>> = {
  temperature: { words: 'a temperature', dimension: dimensions.temperature, unit: '°C' },
  difference: { words: 'a temperature difference', dimension: dimensions.temperature, unit: 'K' },
  time: { words: 'a time', dimension: dimensions.time, unit: 'min' },
  mass: { words: 'a mass', dimension: dimensions.mass, unit: 'mg' },
  fraction: { words: 'a fraction', dimension: dimensions.none, unit: '%' },
  'mass rate': { words: 'a mass per time', dimension: dimensions.massRate, unit: 'mg/min' },
  'fraction rate': { words: 'a fraction per time', dimension: dimensions.frequency, unit: '%/min' },
  'heating rate': { words: 'a heating rate', dimension: dimensions.heatingRate, unit: 'K/min' },
  flow: { words: 'a gas flow', dimension: dimensions.volumeFlow, unit: 'mL/min' },
  volume: { words: 'a volume', dimension: dimensions.volume, unit: 'µL' },
  'heat flow': { words: 'a heat flow', dimension: dimensions.power, unit: 'mW' },
  'specific heat flow': { words: 'a heat flow per mass', dimension: dimensions.specificPower, unit: 'W/g' },
  voltage: { words: 'a voltage', dimension: dimensions.voltage, unit: 'µV' },
  current: { words: 'an ion current', dimension: dimensions.current, unit: 'A' },
  number: { words: 'a plain number', dimension: dimensions.none, unit: '' },
};

/**
 * Whether a unit serves a measure. `point`: a °C literal where a difference is due. K may stand where a temperature is
 * due (language.md 4).
 */
export function unitServes(unit: Unit | null, measure: Measure): 'yes' | 'no' | 'point' {
  if (unit === null) return measure === 'number' ? 'yes' : 'no';
  const { dimension } = measures[measure];
  if (measure === 'number') return 'no';
  if (measure === 'fraction') return isDimensionless(unit.dimension) ? 'yes' : 'no';
  if (!sameDimension(unit.dimension, dimension)) return 'no';
  return measure === 'difference' && isTemperaturePoint(unit) ? 'point' : 'yes';
}

/** `a mass or a fraction`. */
export function measureWords(of: readonly Measure[]): string {
  return of.map((measure) => measures[measure].words).join(' or ');
}
