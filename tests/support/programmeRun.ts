import { seeded, type Random } from './random';

/** A part of a programme: a ramp to °C at K/min, or a hold of s. */
export type Part = { readonly to: number; readonly rate: number } | { readonly hold: number };

/** What a furnace and a specimen add to a programme. */
export interface Faults {
  readonly noise: number;
  /** K after each corner, building up in 5 s and decaying in 40 s. */
  readonly overshoot: number;
  /** K, period 25 s. */
  readonly ripple: number;
  /** Ways back inside ramps: depth (K) and duration (s). */
  readonly dips: readonly { readonly depth: number; readonly duration: number }[];
  /** Share of the samples whose time is that of the sample before. */
  readonly repeated: number;
}

export const faultless: Faults = { noise: 0, overshoot: 0, ripple: 0, dips: [], repeated: 0 };

export interface ProgrammeCurve {
  readonly time: Float64Array;
  readonly temperature: Float64Array;
}

/** The temperature of a programme from `start` °C, a sample every `interval` s, with faults. */
export function programmeRun(
  start: number,
  parts: readonly Part[],
  interval: number,
  faults: Faults = faultless,
  random: Random = seeded(1),
): ProgrammeCurve {
  const corners: { at: number; from: number; rate: number; length: number }[] = [];
  let at = 0;
  let temperature = start;
  for (const part of parts) {
    const isHold = 'hold' in part;
    const rate = isHold ? 0 : (Math.sign(part.to - temperature) * part.rate) / 60;
    const length = isHold ? part.hold : (part.to - temperature) / rate;
    corners.push({ at, from: temperature, rate, length });
    at += length;
    if (!isHold) temperature = part.to;
  }
  const n = Math.floor(at / interval) + 1;
  const time = new Float64Array(n);
  const values = new Float64Array(n);
  const ramps = corners.filter(({ rate }) => rate !== 0);
  const dips = faults.dips.map((dip, k) => {
    // Each in its own part of the middle of a ramp: they do not add up to one deep or long way back.
    const ramp = ramps[random.integer(Math.max(1, ramps.length))];
    const room = (0.5 * ramp.length) / faults.dips.length;
    const duration = Math.min(dip.duration, 0.8 * room);
    return {
      depth: dip.depth,
      duration,
      at: ramp.at + 0.2 * ramp.length + k * room + random.uniform() * (room - duration),
      sign: Math.sign(ramp.rate),
    };
  });
  let k = 0;
  for (let i = 0; i < n; i++) {
    const t = i * interval;
    while (k + 1 < corners.length && t >= corners[k + 1].at) k++;
    const since = t - corners[k].at;
    let value = corners[k].from + corners[k].rate * since;
    if (k > 0 && corners[k - 1].rate !== 0) {
      const over = Math.exp(-since / 40) - Math.exp(-since / 5);
      value += Math.sign(corners[k - 1].rate) * faults.overshoot * over;
    }
    value += faults.ripple * Math.sin((2 * Math.PI * t) / 25);
    for (const dip of dips) {
      const part = (t - dip.at) / dip.duration;
      if (part > 0 && part < 1) value -= dip.sign * dip.depth * Math.sin(Math.PI * part) ** 2;
    }
    values[i] = value + faults.noise * random.normal();
    time[i] = i > 0 && random.uniform() < faults.repeated ? time[i - 1] : t;
  }
  return { time, temperature: values };
}
