import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { readColumns } from '../support/reference';
import { pinkNoise, seeded, whiteNoise } from '../support/random';

/** A curve that a test may take for granted. */
export function curveOf(x: ArrayLike<number>, y: ArrayLike<number>): Curve {
  const curve = checkedCurve(Float64Array.from(x), Float64Array.from(y));
  if (curve === null) throw new Error('not a curve');
  return curve;
}

/** A curve of `shape` sampled every `interval` seconds from `from` to `to`. */
export function sampled(from: number, to: number, interval: number, shape: (t: number) => number): Curve {
  const x = Float64Array.from({ length: Math.round((to - from) / interval) + 1 }, (_, i) => from + i * interval);
  return curveOf(x, x.map(shape));
}

export type NoiseKind = 'white' | '1/f';

/** The curve with seeded noise on it. */
export function noisy({ x, y }: Curve, kind: NoiseKind, sigma: number, seed: number): Curve {
  const noise = (kind === 'white' ? whiteNoise : pinkNoise)(x.length, sigma, seeded(seed));
  return curveOf(
    x,
    y.map((v, i) => v + noise[i]),
  );
}

/** Times of the peak curves of the reference folder: T = 100 °C + t/6 (10 K/min). */
export const peakTime = (celsius: number): number => (celsius - 100) * 6;
export const peakCelsius = (time: number): number => 100 + time / 6;
/** Times of its glass curves: 60 °C at 0 s, 20 K/min. */
export const glassTime = (celsius: number): number => (celsius - 60) * 3;
export const glassCelsius = (time: number): number => 60 + time / 3;
/** Heat flow (mW) over heat capacity (J/(g·K)) of the glass curves: 15 mg at 20 K/min. */
export const glassScale = (15 * 20) / 60;

export function peakCurve(folder: string, name: 'b_emg_peak' | 'b2_emg_peak_step_baseline'): Curve {
  const columns = readColumns(`${folder}/${name}.csv`, ['time_s', 'heat_flow_mW_endo_up']);
  return curveOf(columns.time_s, columns.heat_flow_mW_endo_up);
}

export function glassCurve(folder: string, name: 'c_glass_parallel' | 'c_glass_nonparallel'): Curve {
  const columns = readColumns(`${folder}/${name}.csv`, ['T_C', 'heat_flow_mW_endo_up_15mg_20Kmin']);
  return curveOf(columns.T_C.map(glassTime), columns.heat_flow_mW_endo_up_15mg_20Kmin);
}

/** A Gaussian of unit area. */
export function gauss(t: number, centre: number, sigma: number): number {
  return Math.exp(-((t - centre) ** 2) / (2 * sigma ** 2)) / (sigma * Math.sqrt(2 * Math.PI));
}
