import type { Draws } from './random';

export interface Sensor {
  /** Two first-order lags, s. */
  readonly lags: readonly [number, number];
  /** Standard deviation of the white noise at 25 °C, mW, one value each `interval`. */
  readonly noise: number;
  /** The sensitivity used for the export over the true one. */
  readonly scale: number;
}

export const simultaneous: Sensor = { lags: [9, 2.5], noise: 0.02, scale: 0.99 };
export const plainHeatFlow: Sensor = { lags: [3, 0.8], noise: 0.003, scale: 1 };

/** How the zero line of this run differs: mW, and mW per °C. */
export interface ZeroState {
  readonly offset: number;
  readonly slope: number;
}

export function drawZero(draws: Draws): ZeroState {
  return { offset: 0.15 * draws.normal(), slope: 1e-4 * draws.normal() };
}

/** Zero line of the empty sensor in mW, endothermic positive; time in s from the start of the record. */
export function zeroLine(state: ZeroState, time: number, temperature: number): number {
  const line = -2 + 6e-3 * temperature - 4e-6 * temperature * temperature;
  return line + 4 * Math.exp(-time / 90) + state.offset + state.slope * temperature;
}

/** µV/mW. */
export function sensitivity(temperature: number): number {
  return 1.05 - 1.5e-4 * temperature - 2e-7 * temperature * temperature;
}

/** Passes a heat flow, straight between its readings, through the two lags exactly. */
export function lagged(heatFlow: Float64Array, interval: number, lags: readonly [number, number]): Float64Array {
  let out = heatFlow;
  for (const lag of lags) {
    const keep = Math.exp(-interval / lag);
    const next = new Float64Array(out.length);
    for (let i = 1; i < out.length; i++) {
      const behind = (lag * (out[i] - out[i - 1])) / interval;
      next[i] = out[i] - behind + (next[i - 1] - out[i - 1] + behind) * keep;
    }
    out = next;
  }
  return out;
}

/**
 * White noise with a 1/f part whose spectrum meets the white one at 0.01 Hz, in units of the white standard deviation.
 * The 1/f part is the sum of six first-order processes with time constants four times apart: together they have a
 * density of v/(ln 4·f), so each has the variance v = 2·interval·0.01 Hz·ln 4.
 */
export function sensorNoise(draws: Draws, count: number, interval: number): Float64Array {
  const each = Math.sqrt(2 * interval * 0.01 * Math.log(4));
  const times = [4, 16, 64, 256, 1024, 4096];
  const keep = times.map((time) => Math.exp(-interval / time));
  const rows = times.map(() => each * draws.normal());
  const noise = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let sum = draws.normal();
    for (let k = 0; k < rows.length; k++) {
      sum += rows[k];
      rows[k] = keep[k] * rows[k] + each * Math.sqrt(1 - keep[k] * keep[k]) * draws.normal();
    }
    noise[i] = sum;
  }
  return noise;
}

/**
 * The heat flow as exported, mW, endothermic positive: the sensor gives µV, the program of the instrument divides by
 * the sensitivity it holds, at the temperature it indicates.
 */
export function exported(
  sensor: Sensor,
  heatFlow: number,
  noise: number,
  temperature: number,
  indicated: number,
): number {
  const microvolt = heatFlow * sensitivity(temperature) + noise * sensor.noise * sensitivity(25);
  return microvolt / (sensitivity(indicated) * sensor.scale);
}
