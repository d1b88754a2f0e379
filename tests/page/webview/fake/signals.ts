import { seeded, type Random } from '../../../support/random';

// An invented run: two steps of mass loss and two endothermic effects over a heating, a hold and a cooling. No material.

export interface FakePart {
  readonly name: string;
  /** s, °C. */
  readonly start: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
  readonly time: Float64Array;
  readonly temperature: Float64Array;
  readonly lanes: Readonly<Record<string, Float64Array>>;
}

const steps = [
  { at: 140, width: 12, loss: 0.4 },
  { at: 760, width: 16, loss: 14.8 },
  { at: 905, width: 11, loss: 29.7 },
];

const logistic = (z: number): number => 1 / (1 + Math.exp(-z));

/** Mass in % at a temperature of the heating. */
export function massAt(temperature: number): number {
  return steps.reduce((mass, s) => mass - s.loss * logistic((temperature - s.at) / s.width), 100);
}

function slopeAt(temperature: number): number {
  return steps.reduce((sum, s) => {
    const f = logistic((temperature - s.at) / s.width);
    return sum + (s.loss * f * (1 - f)) / s.width;
  }, 0);
}

/** `interval`: s between samples. */
export function fakeRun(interval: number, seed: number, shift = 0): readonly FakePart[] {
  const random = seeded(seed);
  const plan = [
    { name: 'heating 1', from: 30, to: 1000, rate: 10 },
    { name: 'hold 1', from: 1000, to: 1000, rate: 0 },
    { name: 'cooling 1', from: 1000, to: 100, rate: -20 },
  ];
  let start = 0;
  return plan.map(({ name, from, to, rate }) => {
    const length = rate === 0 ? 600 : ((to - from) / rate) * 60;
    const part = filled(name, start, length, from, to, interval, random, shift);
    start += length;
    return part;
  });
}

function filled(
  name: string,
  start: number,
  length: number,
  from: number,
  to: number,
  interval: number,
  random: Random,
  shift: number,
): FakePart {
  const n = Math.max(2, Math.floor(length / interval) + 1);
  const time = Float64Array.from({ length: n }, (_, i) => start + i * interval);
  const temperature = Float64Array.from({ length: n }, (_, i) =>
    from === to ? from + 0.02 * Math.sin(i / 30) : from + ((to - from) * i * interval) / length,
  );
  const isHeating = to > from;
  const at = (i: number): number => (isHeating ? temperature[i] - shift : 1100);
  const cooled = (i: number): number => (to < from ? 1.5 * Math.exp(-(((temperature[i] - 420) / 14) ** 2)) : 0);
  const lanes = {
    mass: Float64Array.from({ length: n }, (_, i) => massAt(at(i)) + 0.008 * random.normal()),
    rate: Float64Array.from({ length: n }, (_, i) => 10 * slopeAt(at(i)) + 0.02 * random.normal()),
    heatflow: Float64Array.from({ length: n }, (_, i) => {
      const effect = isHeating ? -2.4 * slopeAt(at(i)) * 10 : cooled(i);
      return effect + (isHeating ? -0.6 : to < from ? 0.9 : 0) + 0.0006 * temperature[i] + 0.02 * random.normal();
    }),
    'ion(44)': Float64Array.from({ length: n }, (_, i) => 0.12 + 0.9 * slopeAt(at(i) - 4) + 0.004 * random.normal()),
  };
  return { name, start, end: start + (n - 1) * interval, from, to, time, temperature, lanes };
}
