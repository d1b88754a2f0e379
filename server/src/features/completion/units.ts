import { isTemperaturePoint } from '../../quantities/convert';
import { parseUnit, unitOne } from '../../quantities/parseUnit';
import type { Unit } from '../../quantities/unit';
import { measures, unitServes, type Measure } from '../../language/vocabulary/measures';
import type { Cursor } from '../cursor';
import type { Offer } from './offer';

/** Spellings worth offering; which of them measure what is the vocabulary's to say. */
const usual = (
  '°C K mg µg g s min h % ppm K/min K/s mL/min L/h %/min mg/min µg/min %/K µL mL mW µW W W/g mW/mg µV V nA A ' +
  'J/g kJ/g J mJ J/(g·K) g/mol kJ/mol'
)
  .split(' ')
  .map((text) => parsed(text));

function parsed(text: string): Unit {
  const unit = parseUnit(text);
  if (!unit.ok) throw new Error(`${text} is no unit`);
  return unit.value;
}

/** Units that measure one of these, the proposed one first. */
export function unitsOf(of: readonly Measure[]): readonly string[] {
  const proposed = of.map((measure) => measures[measure].unit).filter((unit) => unit !== '');
  const further = usual.filter((unit) => of.some((m) => serves(unit, m))).map((unit) => unit.text);
  return [...new Set([...proposed, ...further])];
}

/** A temperature may be written in K, a difference not in °C. */
function serves(unit: Unit, measure: Measure): boolean {
  return unitServes(unit, measure) === 'yes' && !(measure === 'difference' && isTemperaturePoint(unit));
}

export const allUnits: readonly string[] = usual.map((unit) => unit.text);
export const plainUnit = unitOne.text;

/** Units right behind a number, with the blank that stands between. */
export function unitOffers(cursor: Cursor, text: string, units: readonly string[]): Offer[] {
  const start = unitStart(text, cursor);
  const blank = /\d/.test(text.charAt(start - 1)) ? ' ' : '';
  return units.map((unit) => ({
    label: unit,
    kind: 'unit',
    insert: `${blank}${unit}`,
    replace: { start, end: cursor.typed.end },
    // Compared with what stands there; a keyboard has no µ, °, ·.
    filter: typedForms(unit),
  }));
}

/** A unit is no name: it goes on over `°`, `/`, `(`. */
function unitStart(text: string, cursor: Cursor): number {
  const left = text.slice(cursor.line.start, cursor.typed.end);
  const unit = /[\p{L}°%µ·*^/()²³⁻¹]*$/u.exec(left)![0];
  return cursor.typed.end - unit.length;
}

function typedForms(unit: string): string {
  const plain = unit.replace(/µ/g, 'u').replace(/°/g, '').replace(/·/g, '*');
  return plain === unit ? unit : `${unit} ${plain}`;
}
