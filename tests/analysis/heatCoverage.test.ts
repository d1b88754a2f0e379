import type { Curve } from '../../server/src/analysis/curve';
import { glassTransition } from '../../server/src/analysis/glassTransition';
import { heatPeak, type HeatPeakOptions } from '../../server/src/analysis/heatPeak';
import type { Noise } from '../../server/src/analysis/noise';
import { needReference, readAnswers } from '../support/reference';
import { assertCovered } from './heatCoverage';
import { glassCurve, glassScale, glassTime, peakCurve, peakTime, type NoiseKind } from './heatCurves';

const kinds: readonly NoiseKind[] = ['white', '1/f'];

/** Curves of the reference folder (exact answers to 15 digits), noise drawn in another way than the program models it. */
describe('uncertainty of heat-flow results covers the truth in 90 to 100 % of 200 draws', function () {
  this.timeout(300_000);
  let folder: string;
  let answers: Record<string, Record<string, number>>;
  before(function () {
    folder = needReference(this);
    answers = readAnswers(folder) as typeof answers;
  });

  const quantities = ['area', 'height', 'onset', 'peak', 'end', 'halfLeft', 'halfRight', 'halfWidth'] as const;
  const feet = ['departure', 'return'] as const;

  for (const [name, baseline] of [
    ['b_emg_peak', 'linear'],
    ['b2_emg_peak_step_baseline', 'sigmoidal'],
  ] as const) {
    for (const kind of kinds) {
      for (const sigma of [0.02, 0.1]) {
        it(`${name}, ${baseline}, ${kind} noise of ${sigma} mW, 150..180 °C`, () => {
          const exact = peakCurve(folder, name);
          const window = { from: peakTime(150), to: peakTime(180) };
          const options: HeatPeakOptions = { baseline, spanFrom: 60, spanTo: 60, smooth: 30, noise: null };
          const b = answers.b_emg_peak;
          const alone = heatPeak(exact, window, options)!;
          const truth = {
            area: b.area_mJ,
            height: b.peak_height_above_baseline_mW,
            onset: b.extrapolated_onset_s,
            peak: b.peak_time_s,
            end: b.extrapolated_end_s,
            halfLeft: b.half_height_left_s,
            halfRight: b.half_height_right_s,
            halfWidth: b.FWHM_s,
          };
          if (baseline === 'sigmoidal') {
            // The folder gives the area of the stepped curve only; its temperatures are those read without noise.
            for (const q of quantities) if (q !== 'area') truth[q] = alone[q]!.value;
          }
          assertCovered(
            {
              exact,
              window,
              edge: 30,
              truth: (noise) => ({ ...truth, ...truthOfFeet(exact, alone.shapes.baseline, noise) }),
              read(curve, at, noise, propagate) {
                const peak = heatPeak(curve, at, { ...options, noise, propagate })!;
                return Object.fromEntries([...quantities, ...feet].map((q) => [q, peak[q]])) as Record<
                  (typeof quantities)[number] | (typeof feet)[number],
                  (typeof peak)['area'] | null
                >;
              },
            },
            kind,
            sigma,
          );
        });
      }
    }
  }

  for (const name of ['c_glass_parallel', 'c_glass_nonparallel'] as const) {
    for (const kind of kinds) {
      for (const sigma of [0.003, 0.01]) {
        it(`${name}, ${kind} noise of ${sigma} mW, 60..140 °C`, () => {
          const a = answers[name];
          assertCovered(
            {
              exact: glassCurve(folder, name),
              window: { from: 0, to: glassTime(140) },
              edge: 15,
              truth: () => ({
                onset: glassTime(a.T_extrapolated_onset_C),
                end: glassTime(a.T_extrapolated_end_C),
                half: glassTime(a.Tg_half_step_height_C),
                areas: glassTime(a.Tg_equal_areas_C),
                inflection: glassTime(a.Tg_inflection_C),
                step: a.delta_cp_at_Tg_J_per_gK * glassScale,
              }),
              read(curve, window, noise, propagate) {
                const options = { spanFrom: 45, spanTo: 45, smooth: 15, noise, propagate };
                const half = glassTransition(curve, window, { ...options, by: 'half height' })!;
                const areas = glassTransition(curve, window, { ...options, by: 'equal areas' })!;
                const { onset, end, inflection, step } = half;
                return { onset, end, inflection, step, half: half.midpoint, areas: areas.midpoint };
              },
            },
            kind,
            sigma,
          );
        });
      }
    }
  }
});

/** Where the exact curve passes three sigma above its baseline, first and last: these temperatures depend on the noise. */
function truthOfFeet(
  { x, y }: Curve,
  baseline: readonly (readonly [number, number])[],
  noise: Noise,
): { departure: number; return: number } {
  const limit = 3 * noise.sigma;
  const base = (t: number): number => {
    const k = Math.max(
      1,
      Math.min(
        baseline.length - 1,
        baseline.findIndex(([at]) => at >= t),
      ),
    );
    const [[t0, y0], [t1, y1]] = [baseline[k - 1], baseline[k]];
    return y0 + ((t - t0) / (t1 - t0)) * (y1 - y0);
  };
  const off = (i: number): number => y[i] - base(x[i]) - limit;
  const pass = (step: 1 | -1): number => {
    let i = x.findIndex((t) => t >= 348);
    while (off(i) > 0) i += step;
    return x[i] + (off(i) / (off(i) - off(i - step))) * (x[i - step] - x[i]);
  };
  return { departure: pass(-1), return: pass(1) };
}
