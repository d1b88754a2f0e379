import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { checkedCurve, type Curve } from '../../server/src/analysis/curve';
import { estimateNoise } from '../../server/src/analysis/estimateNoise';
import { heatPeak } from '../../server/src/analysis/heatPeak';
import { slopeCurve } from '../../server/src/analysis/slopeCurve';
import { needOpenData } from '../support/reference';
import { heats } from './pmmaRuns';

/**
 * Heats of reaction of one black PMMA in five laboratories, from simultaneous runs whose mass and heat flow lie in two
 * files with grids of their own. The report (see `pmmaRuns`) integrates the heat flow above a straight line between the
 * data at two limits and divides by the mass lost between them; its limits are the first and the last temperature at
 * which the mass loss rate exceeds a tenth of its maximum, the rate from a cubic over 31 points of half a kelvin.
 *
 * Here the same rule on the readings themselves: limits where the rate (local cubic, full width 15.5 K) first and last
 * passes a tenth of its maximum, between points of the rate by a straight line; `heatPeak` with the straight baseline at
 * default settings in that window; divided by the loss of mass between the limits.
 */
const RATE_WIDTH = 15.5;

describe('heats of reaction of measured PMMA runs', function () {
  let folder: string;
  before(function () {
    folder = `${needOpenData(this)}/macfp-pmma`;
  });

  const heatOf = (laboratory: string, tail: string): number => {
    const file = (kind: string) => `${folder}/${laboratory}/${laboratory}_${kind}_${tail}.csv`;
    const mass = readRun(file('TGA'));
    const heat = readRun(file('DSC'));
    const perKelvin = secondsPerKelvin(mass);
    const limits = tenthOfRate(mass, perKelvin);
    const peak = heatPeak(heat.curve, limits, {
      baseline: 'linear',
      spanFrom: 10 * perKelvin,
      spanTo: 10 * perKelvin,
      smooth: 5 * perKelvin,
      noise: estimateNoise(heat.curve),
    });
    assert.ok(peak !== null && peak.direction === 1, `${laboratory} ${tail}: an endotherm`);
    const lost = valueAt(mass.curve, limits.from) - valueAt(mass.curve, limits.to);
    return (peak.area.value * valueAt(mass.curve, mass.curve.x[0])) / lost;
  };

  // 50 K/min, second and third run: the limits of the report lie where its rate is noise (575..710.5 K for the second,
  // here 582..704 K), and the heat there depends on them; -18 % and +5 %, not claimed.
  const unsure = ['Ar_50K_2', 'Ar_50K_3'];
  for (const laboratory of new Set(heats.map((h) => h.laboratory))) {
    it(`${laboratory}: within 3 % of the published figures, per mass lost`, () => {
      const runs = heats.filter((h) => h.laboratory === laboratory && !unsure.includes(h.tail));
      assert.ok(runs.length > 0);
      for (const { tail, published } of runs) {
        const heat = heatOf(laboratory, tail);
        assert.ok(Math.abs(heat / published - 1) <= 0.03, `${tail}: ${heat.toFixed(0)} J/g, published ${published}`);
      }
    });
  }
});

interface Run {
  readonly curve: Curve;
  readonly kelvin: Float64Array;
}

/** Time (s), temperature (K) and one signal below two header rows; repeated times are dropped. */
function readRun(path: string): Run {
  const rows: number[][] = [];
  for (const line of readFileSync(path, 'utf8').split(/\r?\n/).slice(2)) {
    const cells = line.split(',').slice(0, 3);
    if (cells.length < 3 || cells.some((c) => c.trim() === '')) continue;
    const row = cells.map(Number);
    if (row.every(Number.isFinite) && (rows.length === 0 || row[0] > rows[rows.length - 1][0])) rows.push(row);
  }
  const column = (k: number) => Float64Array.from(rows, (row) => row[k]);
  const curve = checkedCurve(column(0), column(2));
  assert.ok(curve !== null, path);
  return { curve, kelvin: column(1) };
}

/** From 500 to 720 K, where the sample decomposes. */
function secondsPerKelvin({ curve, kelvin }: Run): number {
  const from = kelvin.findIndex((k) => k > 500);
  const to = kelvin.findIndex((k) => k > 720);
  return (curve.x[to] - curve.x[from]) / (kelvin[to] - kelvin[from]);
}

/** First and last time at which the loss rate passes a tenth of its maximum, above 420 K and before the end. */
function tenthOfRate({ curve, kelvin }: Run, perKelvin: number): { from: number; to: number } {
  const last = kelvin[kelvin.length - 1];
  const to = kelvin.findIndex((k) => k > Math.min(900, last - 5));
  const window = { from: curve.x[kelvin.findIndex((k) => k > 420)], to: curve.x[to] };
  const { x, slope } = slopeCurve(curve, window, RATE_WIDTH * perKelvin);
  const rate = slope.map((s) => -s);
  const limit = rate.reduce((a, b) => Math.max(a, b)) / 10;
  const first = rate.findIndex((r) => r > limit);
  let end = rate.length - 1;
  while (rate[end] <= limit) end--;
  const between = (a: number, b: number) => x[a] + ((limit - rate[a]) / (rate[b] - rate[a])) * (x[b] - x[a]);
  return { from: between(first - 1, first), to: between(end, end + 1) };
}

function valueAt({ x, y }: Curve, t: number): number {
  const after = Math.max(
    1,
    x.findIndex((v) => v >= t),
  );
  return y[after - 1] + ((t - x[after - 1]) / (x[after] - x[after - 1])) * (y[after] - y[after - 1]);
}
