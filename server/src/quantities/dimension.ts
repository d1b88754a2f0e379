import type { Dimension } from './unit';

/** Exponents of m, kg, s, K, A, mol, in this order. */
export const dimensions = {
  none: [0, 0, 0, 0, 0, 0],
  length: [1, 0, 0, 0, 0, 0],
  mass: [0, 1, 0, 0, 0, 0],
  time: [0, 0, 1, 0, 0, 0],
  temperature: [0, 0, 0, 1, 0, 0],
  current: [0, 0, 0, 0, 1, 0],
  amount: [0, 0, 0, 0, 0, 1],
  volume: [3, 0, 0, 0, 0, 0],
  volumeFlow: [3, 0, -1, 0, 0, 0],
  frequency: [0, 0, -1, 0, 0, 0],
  massRate: [0, 1, -1, 0, 0, 0],
  heatingRate: [0, 0, -1, 1, 0, 0],
  perKelvin: [0, 0, 0, -1, 0, 0],
  power: [2, 1, -3, 0, 0, 0],
  energy: [2, 1, -2, 0, 0, 0],
  specificPower: [2, 0, -3, 0, 0, 0],
  specificEnergy: [2, 0, -2, 0, 0, 0],
  specificHeat: [2, 0, -2, -1, 0, 0],
  molarMass: [0, 1, 0, 0, 0, -1],
  molarEnergy: [2, 1, -2, 0, 0, -1],
  pressure: [-1, 1, -2, 0, 0, 0],
  density: [-3, 1, 0, 0, 0, 0],
  voltage: [2, 1, -3, 0, -1, 0],
} as const satisfies Record<string, Dimension>;

/** Name of a dimension in words for messages (`specific heat`); the exponents where it has none. */
export function dimensionName(dimension: Dimension): string {
  if (isDimensionless(dimension)) return 'a plain number';
  for (const [name, known] of Object.entries(dimensions)) {
    if (sameDimension(known, dimension)) return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  }
  const base = ['m', 'kg', 's', 'K', 'A', 'mol'];
  const powers = base.flatMap((symbol, i) => (dimension[i] === 0 ? [] : [`${symbol}^${dimension[i]}`]));
  return powers.join('·');
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => exponent === b[i]);
}

export function isDimensionless(dimension: Dimension): boolean {
  return dimension.every((exponent) => exponent === 0);
}

/** Dimension of a product. */
export function timesDimension(a: Dimension, b: Dimension): Dimension {
  return combine(a, b, (x, y) => x + y);
}

/** Dimension of a quotient. */
export function overDimension(a: Dimension, b: Dimension): Dimension {
  return combine(a, b, (x, y) => x - y);
}

/**
 * Dimension of a power. The exponent may be broken (`sqrt` is 0.5) as long as every exponent stays whole;
 * null where it does not: √g has no unit in this language.
 */
export function powerDimension(a: Dimension, exponent: number): Dimension | null {
  // 1/3 is not exact in binary: what is within rounding of a whole number is meant as one.
  const raised = combine(a, a, (x) => {
    const product = x * exponent;
    const whole = Math.round(product);
    return Math.abs(product - whole) < 1e-12 ? whole + 0 : NaN;
  });
  return raised.some((e) => Number.isNaN(e)) ? null : raised;
}

function combine(a: Dimension, b: Dimension, f: (x: number, y: number) => number): Dimension {
  return [f(a[0], b[0]), f(a[1], b[1]), f(a[2], b[2]), f(a[3], b[3]), f(a[4], b[4]), f(a[5], b[5])];
}
