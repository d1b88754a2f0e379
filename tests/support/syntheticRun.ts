import { seeded } from './random';

export interface SyntheticStep {
  /** Midpoint, °C. */
  readonly at: number;
  /** Width of the logistic, K. */
  readonly width: number;
  /** % of the initial mass. */
  readonly loss: number;
}

export interface SyntheticRun {
  readonly from?: number;
  readonly to?: number;
  /** K/min. */
  readonly rate?: number;
  /** s. */
  readonly every?: number;
  readonly milligrams?: number;
  /** Standard deviation of the mass, mg. */
  readonly noise?: number;
  readonly seed?: number;
  readonly steps: readonly SyntheticStep[];
}

/** A thermogravimetric run of known truth (logistic steps on one heating ramp) as delimited text. Computed, not measured. */
export function syntheticRun(run: SyntheticRun): string {
  const { from = 30, to = 1000, rate = 10, every = 6, milligrams = 20, noise = 0.0004, seed = 1, steps } = run;
  const random = seeded(seed);
  const lines = ['time / s,temperature / °C,mass / mg'];
  const seconds = ((to - from) / rate) * 60;
  // Not a step added again and again: its rounding would grow to the last digits of a double.
  const readings = Math.floor(seconds / every + 1e-9);
  for (let k = 0; k <= readings; k++) {
    const t = Number((k * every).toFixed(6));
    const temperature = from + (rate * t) / 60;
    const lost = steps.reduce((sum, s) => sum + s.loss / (1 + Math.exp(-(temperature - s.at) / s.width)), 0);
    const mass = milligrams * (1 - lost / 100) + noise * random.normal();
    lines.push(`${t},${temperature.toFixed(3)},${mass.toFixed(5)}`);
  }
  return `${lines.join('\n')}\n`;
}
