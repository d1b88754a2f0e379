import assert from 'node:assert/strict';
import { join } from 'node:path';
import { checkedCurve, type Curve, type Window } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { massStep, type MassStep } from '../../server/src/analysis/massStep';
import type { Measured } from '../../server/src/analysis/measured';
import type { Noise } from '../../server/src/analysis/noise';
import { readAnswers, readColumns } from '../support/reference';

/** An exact TG run on a ramp, with its answers, all in seconds and mg; the defaults of the language: 10 K, 5 K, 3 K. */
export interface MassRun {
  readonly name: string;
  readonly curve: Curve;
  /** mg. */
  readonly initial: number;
  /** K/s. */
  readonly rate: number;
  /** Time at a temperature in °C, and back. */
  readonly timeAt: (celsius: number) => number;
  readonly temperatureAt: (time: number) => number;
  readonly steps: readonly ExactStep[];
}

export interface ExactStep {
  readonly window: Window;
  /** Exact values: mg, s, mg/s. null where the answers do not give it. */
  readonly truth: Readonly<Record<Quantity, number | null>>;
}

export const quantities = ['change', 'massStart', 'massEnd', 'start', 'midpoint', 'end', 'inflection', 'rate'] as const;
export type Quantity = (typeof quantities)[number];

/** Of a quantity's unit, how much is a kelvin: times are tested in K. */
export function unitOf(run: MassRun, quantity: Quantity): number {
  return ['start', 'midpoint', 'end', 'inflection'].includes(quantity) ? 1 / run.rate : 1;
}

interface FirstOrder {
  readonly rate: Readonly<
    Record<
      string,
      {
        readonly T_peak_K: number;
        readonly max_DTG_mg_per_min: number;
        readonly T_extrapolated_onset_K: number;
        readonly T_extrapolated_end_K: number;
        readonly T_half_mass_K: number;
      }
    >
  >;
}

/** First-order decomposition of 70 % of 10 mg (case a of the answers), evaluated over all of the run but its ends. */
export function firstOrderRun(folder: string, kelvinPerMinute: number): MassRun {
  const columns = readColumns(join(folder, `a_first_order_${kelvinPerMinute}Kmin.csv`), ['time_s', 'T_C', 'mass_mg']);
  const answers = (readAnswers(folder).a_first_order as FirstOrder).rate[String(kelvinPerMinute)];
  const rate = kelvinPerMinute / 60;
  const [timeAt, temperatureAt] = ramp(columns.T_C[0], rate);
  const at = (kelvin: number): number => timeAt(kelvin - 273.15);
  return {
    name: `first order, ${kelvinPerMinute} K/min`,
    curve: checkedCurve(columns.time_s, columns.mass_mg)!,
    initial: 10,
    rate,
    timeAt,
    temperatureAt,
    steps: [
      {
        window: { from: timeAt(182), to: timeAt(520) },
        truth: {
          change: 7,
          massStart: 10,
          massEnd: 3,
          start: at(answers.T_extrapolated_onset_K),
          midpoint: at(answers.T_half_mass_K),
          end: at(answers.T_extrapolated_end_K),
          inflection: at(answers.T_peak_K),
          rate: answers.max_DTG_mg_per_min / 60,
        },
      },
    ],
  };
}

interface ThreeSteps {
  readonly step_loss_percent: readonly number[];
  readonly steps: readonly {
    readonly T_peak_K: number;
    readonly T_onset_K: number;
    readonly T_end_K: number;
    readonly T_half_step_K: number;
  }[];
}

/** The windows in °C over which the three steps are evaluated. */
export const threeWindows: readonly (readonly [number, number])[] = [
  [25, 250],
  [250, 538],
  [538, 1020],
];

/** Three steps with the masses of calcium oxalate monohydrate (case e of the answers). */
export function threeStepRun(folder: string): MassRun {
  const columns = readColumns(join(folder, 'e_three_step.csv'), ['time_s', 'T_K', 'mass_mg']);
  const answers = readAnswers(folder).e_three_step as ThreeSteps;
  const rate = 10 / 60;
  const [timeAt, temperatureAt] = ramp(columns.T_K[0] - 273.15, rate);
  const at = (kelvin: number): number => timeAt(kelvin - 273.15);
  return {
    name: 'three steps',
    curve: checkedCurve(columns.time_s, columns.mass_mg)!,
    initial: 12,
    rate,
    timeAt,
    temperatureAt,
    steps: threeWindows.map(([from, to], i) => ({
      window: { from: timeAt(from), to: timeAt(to) },
      truth: {
        change: 0.12 * answers.step_loss_percent[i],
        massStart: null,
        massEnd: null,
        start: at(answers.steps[i].T_onset_K),
        midpoint: at(answers.steps[i].T_half_step_K),
        end: at(answers.steps[i].T_end_K),
        inflection: at(answers.steps[i].T_peak_K),
        rate: null,
      },
    })),
  };
}

function ramp(start: number, rate: number): [(celsius: number) => number, (time: number) => number] {
  return [(celsius) => (celsius - start) / rate, (time) => start + rate * time];
}

/** The step at the default settings. */
export function stepOf(run: MassRun, curve: Curve, window: Window, noise: Noise | null, propagate = true): MassStep {
  const step = massStep(curve, window, {
    by: 'levels',
    spanFrom: 10 / run.rate,
    spanTo: 10 / run.rate,
    smooth: 5 / run.rate,
    departureFor: 3 / run.rate,
    levelSlope: levelSlope(run),
    noise,
    propagate,
  });
  assert.ok(step !== null);
  return step;
}

/** 0.005 %/K of the initial mass, per second. */
export function levelSlope(run: MassRun): number {
  return (0.005 / 100) * run.initial * run.rate;
}

/** A value with its uncertainty, edges included as the language has it: half the range at ±5 K, over √3, each edge. */
export interface Uncertain {
  readonly value: number;
  readonly u: number;
  /** Coverage factor at 95 %. */
  readonly k: number;
}

/** Uncertain values of the quantities of a step in one go. */
export function uncertainStep(run: MassRun, curve: Curve, window: Window): (quantity: Quantity) => Uncertain | null {
  const noise = estimateNoise(curve);
  const step = stepOf(run, curve, window, noise);
  const shift = 5 / run.rate;
  const moved = [
    [-shift, 0],
    [shift, 0],
    [0, -shift],
    [0, shift],
  ].map(([a, b]) => stepOf(run, curve, { from: window.from + a, to: window.to + b }, noise, false));
  return (quantity) => {
    const measured: Measured | null = step[quantity];
    if (measured === null) return null;
    let variance = measured.noise ** 2;
    for (const [below, above] of [moved.slice(0, 2), moved.slice(2)]) {
      const [a, b] = [below[quantity], above[quantity]];
      if (a !== null && b !== null) variance += ((a.value - b.value) / 2) ** 2 / 3;
    }
    return { value: measured.value, u: Math.sqrt(variance), k: tFactor(measured.dof) };
  };
}

/** Student's factor at 95 %, by the expansion in 1/dof (Abramowitz and Stegun 26.7.5); 2 for many (JCGM 100, G.6.6). */
export function tFactor(dof: number | null): number {
  if (dof === null) return 2;
  const z = 1.959964;
  return (
    z +
    (z ** 3 + z) / 4 / dof +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96 / dof ** 2 +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384 / dof ** 3
  );
}

/** The curve with noise on it. */
export function noisy(curve: Curve, noise: Float64Array): Curve {
  return checkedCurve(
    curve.x,
    curve.y.map((v, i) => v + noise[i]),
  )!;
}

export function near(actual: number | undefined, expected: number, tolerance: number, what = ''): void {
  assert.ok(
    actual !== undefined && Math.abs(actual - expected) <= tolerance,
    `${what} ${actual} is not ${expected} within ${tolerance}`,
  );
}
