const gasConstant = 8.314462618;

/** First order, order 1.5, or contracting area. */
export type Law = 'F1' | 'F1.5' | 'R2';

export interface Reaction {
  readonly name: string;
  /** Share of the specimen lost when complete, %. */
  readonly loss: number;
  /** kJ/mol. */
  readonly energy: number;
  /** Decimal logarithm of the pre-exponential factor in 1/s. */
  readonly logFactor: number;
  readonly law: Law;
  /** Heat taken up when complete, J per g of the specimen. */
  readonly heat: number;
}

/** Rate constant in 1/s at a temperature in °C. */
export function rateConstant(reaction: Reaction, temperature: number): number {
  const kelvin = temperature + 273.15;
  return Math.exp(reaction.logFactor * Math.LN10 - (1000 * reaction.energy) / (gasConstant * kelvin));
}

/**
 * Conversion 0..1 from the integral of the rate constant over time. Each law is integrated in closed form
 * (g(α) = ∫k dt), so no step size enters: F1 −ln(1−α), F1.5 2((1−α)^−½ − 1), R2 1 − (1−α)^½.
 */
export function conversion(law: Law, integral: number): number {
  if (law === 'F1') return 1 - Math.exp(-integral);
  if (law === 'F1.5') return 1 - 1 / ((1 + integral / 2) * (1 + integral / 2));
  const left = Math.max(0, 1 - integral);
  return 1 - left * left;
}

/** f(α), so that dα/dt = k·f. */
export function conversionFunction(law: Law, alpha: number): number {
  const left = Math.max(0, 1 - alpha);
  if (law === 'F1') return left;
  return law === 'R2' ? 2 * Math.sqrt(left) : left * Math.sqrt(left);
}

/** The logarithmic factor with which a reaction of this energy runs fastest at `peak` °C, first order, `rate` K/min. */
export function logFactorForPeak(energy: number, peak: number, rate: number): number {
  const kelvin = peak + 273.15;
  const reduced = (1000 * energy) / (gasConstant * kelvin);
  return (Math.log(((rate / 60) * reduced) / kelvin) + reduced) / Math.LN10;
}
