import { fromSI, isTemperaturePoint, toSI } from '../../quantities/convert';
import { parseUnit } from '../../quantities/parseUnit';
import type { Unit } from '../../quantities/unit';
import { measures, unitServes, type Measure } from '../../language/vocabulary/measures';
import { plainNumber } from '../../presentation/plainNumber';
import { lineTokens } from '../lineTokens';
import { rows, title, type Block } from '../prose';

/** Other units worth reading a value in, the shorter list the better. */
const readIn = ['K', '°C', 's', 'min', 'h', 'mg', 'g', 'W/g', 'J/g', 'mW', 'K/min', 'mL/min'];

/** A number with its unit: what it measures, and what it is in other units. */
export function amountBlocks(written: string): readonly Block[] {
  const size = written.replace(/^[-\u2212]\s*/, '');
  const [number, unit] = lineTokens(size, 0, size.length);
  if (number?.kind !== 'number' || unit?.kind !== 'unit') return [];
  const parsed = parseUnit(unit.text);
  if (!parsed.ok) return [];
  const sign = /^[-\u2212]/.test(written) ? -1 : 1;
  const value = sign * Number(number.text);
  return [
    title(`${sign < 0 ? '-' : ''}${number.text} ${parsed.value.text}`),
    rows(['measures', measureOf(parsed.value)], ...otherUnits(value, parsed.value)),
  ];
}

function measureOf(unit: Unit): string | null {
  const fitting = (Object.keys(measures) as Measure[]).filter((m) => unitServes(unit, m) === 'yes');
  const words = fitting.map((m) => measures[m].words);
  return words.length === 0 ? null : words.join(' or ');
}

function otherUnits(value: number, unit: Unit): (readonly [string, string])[] {
  return readIn.flatMap((text): (readonly [string, string])[] => {
    const other = parseUnit(text);
    if (!other.ok || other.value.text === unit.text) return [];
    const same = other.value.dimension.every((e, i) => e === unit.dimension[i]);
    // A difference in K is no temperature in °C.
    if (!same || (isTemperaturePoint(other.value) && !isTemperaturePoint(unit))) return [];
    return [[`in ${text}`, `${plainNumber(fromSI(toSI(value, unit), other.value), 7)} ${text}`]];
  });
}
