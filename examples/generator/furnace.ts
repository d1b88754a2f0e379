import type { Programme } from './programme';

/** The furnace overshoots a corner by this much (K), which decays with this time (s). */
const overshoot = 0.8;
const decay = 40;
/** Time (s) in which the overshoot builds up; with it the temperature has no step at a corner. */
const rise = 10;
/** Largest value of the difference of the two exponentials, which the amplitude is referred to. */
const peak = (rise / decay) ** (rise / (decay - rise)) - (rise / decay) ** (decay / (decay - rise));
const ripple = 0.05;
const ripplePeriod = 25;
/** s in which the indicating sensor settles on a new heating rate. */
const sensorLag = 15;

/**
 * The temperature of the specimen (°C): the programme, with an overshoot of 0.8 K after every corner in the direction
 * it came from. Without the ripple, which acts on both sides of a heat-flow sensor alike.
 */
export function smoothTemperature(programme: Programme, time: number): number {
  const deviation = programme.answer(
    time,
    (since, change) => (-Math.sign(change) * overshoot * (Math.exp(-since / decay) - Math.exp(-since / rise))) / peak,
  );
  return programme.set(time) + deviation;
}

/** Its rate in K/s. */
export function smoothRate(programme: Programme, time: number): number {
  const deviation = programme.answer(
    time,
    (since, change) =>
      (-Math.sign(change) * overshoot * (Math.exp(-since / rise) / rise - Math.exp(-since / decay) / decay)) / peak,
  );
  return programme.legAt(time).rate / 60 + deviation;
}

/** The temperature of the specimen with the controller's ripple of ±0.05 K; `phase` in s, null: no ripple. */
export function trueTemperature(programme: Programme, time: number, phase: number | null): number {
  const wave = phase === null ? 0 : Math.sin((2 * Math.PI * (time + phase)) / ripplePeriod);
  return smoothTemperature(programme, time) + ripple * wave;
}

/**
 * What the instrument writes (°C): its sensor is off by a curved error and runs ahead of the specimen by `lag`
 * K per K/min.
 */
export function indicatedTemperature(temperature: number, rate: number, lag: number): number {
  return temperature + 1.2 - 2.1e-3 * temperature + 0.9e-6 * temperature * temperature + lag * rate;
}

export function indicated(programme: Programme, time: number, phase: number | null, lag: number): number {
  const rate = programme.laggedRate(time, sensorLag);
  return indicatedTemperature(trueTemperature(programme, time, phase), rate, lag);
}
