import type { Curve } from '../../server/src/analysis/curve';
import { gauss, sampled } from './heatCurves';

/**
 * An invented heat-cool-heat run of a polyester preform, 8.2 mg at 10 K/min between `COLD` and `HOT` °C. Sizes and
 * temperatures are those of the invented demo scenario (glass at 76.5 °C with a relaxation peak of 1.8 J/g, cold
 * crystallisation at 128 °C of 31.5 J/g, melting at 250.3 °C of 44 J/g; second heating: glass at 80.2 °C, melting of
 * 40.5 J/g), and so is the zero line with its start transient. No measured material stands behind them.
 */
export const COLD = 20;
export const HOT = 290;
const MASS = 8.2;
const RATE = 10 / 60;

export type Segment = 'first heating' | 'cooling' | 'second heating';

export function celsiusAt(segment: Segment, t: number): number {
  return segment === 'cooling' ? HOT - RATE * t : COLD + RATE * t;
}

/** The zero line of the scenario's instrument, mW: bent in temperature, and with a transient at every start. */
export function zeroLine(celsius: number, t: number): number {
  return -2 + 6e-3 * celsius - 4e-6 * celsius ** 2 + 4 * Math.exp(-t / 90);
}

/** Heat flow, mW, endothermic up, every half second, without noise. */
export function preform(segment: Segment): Curve {
  const beta = segment === 'cooling' ? -RATE : RATE;
  return sampled(0, (HOT - COLD) / RATE, 0.5, (t) => {
    const celsius = celsiusAt(segment, t);
    const glass = segment === 'first heating' ? [76.5, 0.36] : segment === 'cooling' ? [74, 0.29] : [80.2, 0.29];
    const capacity = 1.05 + 0.003 * celsius + (glass[1] / 2) * (1 + Math.tanh((celsius - glass[0]) / 3));
    const heats = effects[segment].map(([heat, at, before, after]) => heat * skew(celsius, at, before, after));
    return MASS * (capacity * beta + RATE * heats.reduce((a, b) => a + b, 0)) + zeroLine(celsius, t);
  });
}

/** Heat (J/g), temperature of the peak, widths before and after it (K). */
const effects: Record<Segment, readonly (readonly [number, number, number, number])[]> = {
  'first heating': [
    [1.8, 79.5, 2, 2],
    [-31.5, 128, 4, 4],
    [44, 250.3, 9, 3.5],
  ],
  cooling: [[-38, 195, 5, 5]],
  'second heating': [[40.5, 250.3, 9, 3.5]],
};

function skew(at: number, centre: number, before: number, after: number): number {
  const sigma = at < centre ? before : after;
  return (gauss(at, centre, sigma) * sigma * 2) / (before + after);
}
