import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readColumns } from '../support/reference';
import type { Arrays } from './onArrays';

/** The exact curves of the reference folder as runs, reading only time, temperature and signal, with their answers. */
export interface ExactCurve {
  readonly name: string;
  readonly columns: Arrays;
  readonly gloss: string;
  /** Result id to truth and the bound the issue of the work sets for it. */
  readonly truths: readonly { readonly id: string; readonly truth: number; readonly within: number }[];
}

interface Answers {
  readonly a_first_order: { readonly rate: Record<string, Record<string, number>>; readonly m0_mg: number };
  readonly b_emg_peak: Record<string, number>;
  readonly c_glass_parallel: Record<string, number>;
  readonly c_glass_nonparallel: Record<string, number>;
  readonly e_three_step: { readonly step_loss_percent: readonly number[]; readonly m0_mg: number };
}

export function answersOf(folder: string): Answers {
  return JSON.parse(readFileSync(join(folder, 'answers.json'), 'utf8')) as Answers;
}

const kelvin = (celsius: Float64Array) => celsius.map((v) => v - 273.15);

export function massCurve(folder: string, file: string): Arrays {
  const c = readColumns(join(folder, file), ['time_s', 'T_K', 'mass_mg']);
  return [
    { signal: 'time', unit: 's', values: c.time_s },
    { signal: 'temperature', unit: '°C', values: kelvin(c.T_K) },
    { signal: 'mass', unit: 'mg', values: c.mass_mg },
  ];
}

export function heatCurve(folder: string, file: string): Arrays {
  const c = readColumns(join(folder, file), ['time_s', 'T_C', 'heat_flow_mW_endo_up']);
  return [
    { signal: 'time', unit: 's', values: c.time_s },
    { signal: 'temperature', unit: '°C', values: c.T_C },
    { signal: 'heatflow', unit: 'mW', values: c.heat_flow_mW_endo_up },
  ];
}

export function glassCurve(folder: string, file: string): Arrays {
  const c = readColumns(join(folder, file), ['T_C', 'heat_flow_mW_endo_up_15mg_20Kmin']);
  return [
    { signal: 'temperature', unit: '°C', values: c.T_C },
    { signal: 'heatflow', unit: 'mW', values: c.heat_flow_mW_endo_up_15mg_20Kmin },
  ];
}

export const firstOrderWindow = { from: 185, to: 510 };

export function exactCurves(folder: string): ExactCurve[] {
  const answers = answersOf(folder);
  const curves: ExactCurve[] = [];
  for (const rate of ['2', '5', '10', '20']) {
    const a = answers.a_first_order.rate[rate];
    const { from, to } = firstOrderWindow;
    curves.push({
      name: `first order at ${rate} K/min`,
      columns: massCurve(folder, `a_first_order_${rate}Kmin.csv`),
      gloss: `run "a.csv"\nstep First ${from}..${to} °C\n`,
      truths: [
        { id: 'First.start', truth: a.T_extrapolated_onset_K - 273.15, within: 0.02 },
        { id: 'First.end', truth: a.T_extrapolated_end_K - 273.15, within: 0.02 },
        { id: 'First.inflection', truth: a.T_peak_K - 273.15, within: 0.02 },
        { id: 'First.midpoint', truth: a.T_half_mass_K - 273.15, within: 0.02 },
        { id: 'First.loss', truth: 70, within: 0.003 },
        {
          id: 'First.rate',
          truth: (100 * a.max_DTG_mg_per_min) / 10,
          within: (1e-3 * 100 * a.max_DTG_mg_per_min) / 10,
        },
      ],
    });
  }
  const b = answers.b_emg_peak;
  const heat = 'run "b.csv"\n  mass 10 mg\n  endothermic up\n';
  curves.push({
    name: 'plain peak',
    columns: heatCurve(folder, 'b_emg_peak.csv'),
    gloss: `${heat}peak P 150..180 °C\n`,
    truths: [
      { id: 'P.enthalpy', truth: b.enthalpy_J_per_g, within: 3e-4 * b.enthalpy_J_per_g },
      { id: 'P.onset', truth: b.extrapolated_onset_T_C, within: 0.02 },
      { id: 'P.peak', truth: b.peak_T_C, within: 0.02 },
      { id: 'P.end', truth: b.extrapolated_end_T_C, within: 0.02 },
      {
        id: 'P.height',
        truth: b.peak_height_above_baseline_mW / 10,
        within: (3e-3 * b.peak_height_above_baseline_mW) / 10,
      },
      { id: 'P.width', truth: b.FWHM_s / 6, within: 0.02 },
    ],
  });
  curves.push({
    name: 'peak on a step',
    columns: heatCurve(folder, 'b2_emg_peak_step_baseline.csv'),
    gloss: `${heat}peak P 150..180 °C\n  baseline sigmoidal\n`,
    truths: [{ id: 'P.enthalpy', truth: b.enthalpy_J_per_g, within: 3e-4 * b.enthalpy_J_per_g }],
  });
  for (const kind of ['parallel', 'nonparallel'] as const) {
    const c = answers[`c_glass_${kind}`];
    for (const [by, midpoint] of [
      ['half height', c.Tg_half_step_height_C],
      ['equal areas', c.Tg_equal_areas_C],
      ['inflection', c.Tg_inflection_C],
    ] as const) {
      curves.push({
        name: `glass ${kind}, ${by}`,
        columns: glassCurve(folder, `c_glass_${kind}.csv`),
        gloss: `run "c.csv"\n  mass 15 mg\n  endothermic up\n  rate 20 K/min\nglass G 60..140 °C\n  by ${by}\n`,
        truths: [
          { id: 'G.midpoint', truth: midpoint, within: 0.02 },
          { id: 'G.onset', truth: c.T_extrapolated_onset_C, within: 0.02 },
          { id: 'G.end', truth: c.T_extrapolated_end_C, within: 0.02 },
          { id: 'G.inflection', truth: c.Tg_inflection_C, within: 0.02 },
          {
            id: 'G.delta_cp',
            truth: by === 'inflection' ? c.delta_cp_at_inflection_J_per_gK : c.delta_cp_at_Tg_J_per_gK,
            within: 0.001,
          },
        ],
      });
    }
  }
  const losses = answers.e_three_step.step_loss_percent;
  curves.push({
    name: 'three steps',
    columns: massCurve(folder, 'e_three_step.csv'),
    gloss: 'run "e.csv"\nstep First 25..250 °C\nstep Second 250..538 °C\nstep Third 538..1020 °C\n',
    truths: ['First', 'Second', 'Third'].map((name, i) => ({ id: `${name}.loss`, truth: losses[i], within: 0.003 })),
  });
  return curves;
}
