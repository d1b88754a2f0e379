import { parseUnit } from '../quantities/parseUnit';
import type { Unit } from '../quantities/unit';

function unit(text: string): Unit {
  const parsed = parseUnit(text);
  if (!parsed.ok) throw new Error(`no such unit: ${text}`);
  return parsed.value;
}

/** The units results are shown in. */
export const percent = unit('%');
export const percentPerMinute = unit('%/min');
export const milligram = unit('mg');
export const celsius = unit('°C');
export const kelvin = unit('K');
export const minute = unit('min');
export const joulePerGram = unit('J/g');
export const joule = unit('J');
export const wattPerGram = unit('W/g');
export const milliwatt = unit('mW');
export const heatCapacity = unit('J/(g·K)');
export const microvoltSecond = unit('µV·s');
export const microvolt = unit('µV');
export const one: Unit = { text: '', factor: 1, offset: 0, dimension: [0, 0, 0, 0, 0, 0] };
