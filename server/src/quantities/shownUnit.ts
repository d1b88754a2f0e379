import { isDimensionless, sameDimension } from './dimension';
import { parseUnit, unitOne } from './parseUnit';
import { superscript } from './scanUnit';
import type { Dimension, Kind, Unit } from './unit';

/** The units results are shown in unless `show` says otherwise (language.md 4), then SI units with a name of their own. */
const shown = ['mg', 'min', 'K', 'J/g', 'J/(g·K)', 'mW', 'g/mol', 'J', 'Pa', 'V', 'A', 'mol'].map(unit);
const percent = unit('%');
const celsius = unit('°C');
const base = ['m', 'kg', 's', 'K', 'A', 'mol'];

function unit(text: string): Unit {
  const parsed = parseUnit(text);
  if (!parsed.ok) throw new Error(`no such unit: ${text}`);
  return parsed.value;
}

/**
 * The unit in which a result of this dimension and kind is shown: %, °C, mg, min, K, J/g, J/(g·K), mW, g/mol, else SI
 * (base units, `kg/s`). A plain number has the unit one.
 */
export function shownUnit(dimension: Dimension, kind: Kind): Unit {
  if (kind === 'fraction') return percent;
  if (kind === 'temperature') return celsius;
  if (isDimensionless(dimension)) return unitOne;
  return shown.find((known) => sameDimension(known.dimension, dimension)) ?? coherent(dimension);
}

/** The product of base units. Factor 1: kg, not g, is the base unit. */
function coherent(dimension: Dimension): Unit {
  const powers = (sign: 1 | -1): readonly string[] =>
    base.flatMap((symbol, i) => {
      const exponent = dimension[i]! * sign;
      return exponent <= 0 ? [] : [exponent === 1 ? symbol : symbol + superscript(exponent)];
    });
  const above = powers(1).join('·');
  const below = powers(-1);
  const bottom = below.length > 1 ? `/(${below.join('·')})` : below.length === 1 ? `/${below[0]!}` : '';
  return { text: (above === '' ? '1' : above) + bottom, factor: 1, offset: 0, dimension };
}
