import type { SignalName } from '../../language/model';
import type { StoredUnit } from '../../runs/run';

/** The mass that percentages refer to and the mass in mg, where they are known. */
export interface LaneMass {
  /** In the unit of the mass signal. */
  readonly reference: number;
  readonly milligrams: number | null;
}

/** Units in which a signal can be shown, the usual one first. `largest`: the largest size of a value as stored. */
export function unitsOf(signal: SignalName, stored: StoredUnit, mass: LaneMass, largest: () => number): string[] {
  const { milligrams } = mass;
  const known = milligrams !== null && milligrams !== 0;
  switch (stored) {
    case 'mg':
      return mass.reference === 0 ? ['mg'] : ['%', 'mg'];
    case '%/min':
      return known ? ['%/min', '%/K', 'mg/min', 'mg/K'] : ['%/min', '%/K'];
    case 'mW':
      return known ? ['mW', 'W/g'] : ['mW'];
    case 'W/g':
      return known ? ['W/g', 'mW'] : ['W/g'];
    case 'µV':
      return known ? ['µV', 'µV/mg'] : ['µV'];
    case 'µV/mg':
      return known ? ['µV/mg', 'µV'] : ['µV/mg'];
    case 'A':
      return currents(largest());
    case '1':
      if (signal !== 'mass') return ['1'];
      return known ? ['%', 'mg'] : ['%'];
    default:
      return [stored];
  }
}

const currentUnits = [
  { unit: 'A', factor: 1 },
  { unit: 'mA', factor: 1e3 },
  { unit: 'µA', factor: 1e6 },
  { unit: 'nA', factor: 1e9 },
  { unit: 'pA', factor: 1e12 },
] as const;

/** The one in which the largest value lies between 1 and 1000 comes first. */
function currents(largest: number): string[] {
  const usual = currentUnits.find(({ factor }) => largest * factor >= 1)?.unit ?? 'pA';
  const all = currentUnits.map(({ unit }) => unit);
  return [usual, ...all.filter((unit) => unit !== usual)];
}

/**
 * What a stored value is multiplied by to be shown in `unit`; null where the one does not go into the other. Percentages
 * are of the initial mass; heat flows per gram are over the initial mass; per kelvin goes through the heating rate of the
 * part (K/min, its size: a loss stays positive on cooling).
 */
export function unitFactor(stored: string, unit: string, mass: LaneMass, rate: number | null): number | null {
  if (stored === unit) return 1;
  const { reference, milligrams } = mass;
  const perKelvin = rate === null || rate === 0 ? null : 1 / Math.abs(rate);
  const over = (a: number | null, b: number | null): number | null =>
    a === null || b === null || b === 0 ? null : a / b;
  const times = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a * b);
  switch (`${stored} > ${unit}`) {
    case 'mg > %':
    case '1 > %':
      return over(100, reference);
    case '1 > mg':
      return over(milligrams, reference);
    case '%/min > %/K':
      return perKelvin;
    case '%/min > mg/min':
      return times(milligrams, 0.01);
    case '%/min > mg/K':
      return times(times(milligrams, 0.01), perKelvin);
    // A slope of the mass as it is computed, per second of the mass signal.
    case 'mg/s > %/min':
    case '1/s > %/min':
      return over(6000, reference);
    case 'mg/s > %/K':
    case '1/s > %/K':
      return times(over(6000, reference), perKelvin);
    case 'mg/s > mg/min':
      return 60;
    case 'mg/s > mg/K':
      return times(60, perKelvin);
    case '1/s > mg/min':
      return times(over(60, reference), milligrams);
    case '1/s > mg/K':
      return times(times(over(60, reference), milligrams), perKelvin);
    // mW/mg is W/g.
    case 'mW > W/g':
    case 'µV > µV/mg':
      return over(1, milligrams);
    case 'W/g > mW':
    case 'µV/mg > µV':
      return milligrams;
    default: {
      if (stored !== 'A') return null;
      return currentUnits.find((c) => c.unit === unit)?.factor ?? null;
    }
  }
}
