import type { Baseline } from './baseline';
import type { IntegralGrid } from './windowIntegral';

/** Curve minus baseline over a window, thinned by averages to at most `POINTS`; for looking, not for reading off. */
export interface HeatProfile {
  readonly x: Float64Array;
  readonly d: Float64Array;
}

const POINTS = 1500;

export function heatProfile(grid: IntegralGrid, baseline: Baseline): HeatProfile {
  const n = grid.x.length;
  const stride = Math.max(1, Math.ceil(n / POINTS));
  const points = Math.ceil(n / stride);
  const x = new Float64Array(points);
  const d = new Float64Array(points);
  for (let p = 0; p < points; p++) {
    const first = p * stride;
    const last = Math.min(n, first + stride);
    let sumX = 0;
    let sumY = 0;
    for (let k = first; k < last; k++) {
      sumX += grid.x[k] - grid.x[first];
      sumY += grid.y[k] - grid.y[first];
    }
    x[p] = grid.x[first] + sumX / (last - first);
    d[p] = grid.y[first] + sumY / (last - first) - baseline.at(x[p]);
  }
  return { x, d };
}

/** Each value replaced by the mean of those within `width` centred on it. */
export function movingMean({ x, d }: HeatProfile, width: number): HeatProfile {
  const n = x.length;
  const mean = new Float64Array(n);
  let first = 0;
  let last = 0;
  let sum = 0;
  for (let p = 0; p < n; p++) {
    while (last < n && x[last] <= x[p] + width / 2) sum += d[last++];
    while (x[first] < x[p] - width / 2) sum -= d[first++];
    mean[p] = last - first > 1 ? sum / (last - first) : d[p];
  }
  return { x, d: mean };
}

/** The rough outline of the largest effect in a profile. */
export interface Outline {
  /** 1: above the baseline (endothermic); -1: below. */
  readonly direction: 1 | -1;
  readonly top: number;
  readonly height: number;
  /** Where half of the height is reached, and where a twentieth is, next to the top on both sides. */
  readonly halfLeft: number;
  readonly halfRight: number;
  readonly footLeft: number;
  readonly footRight: number;
}

const FOOT = 0.05;

/**
 * Finds the largest effect: the extremum of the profile averaged over a quarter of the smoothing width, then, once its
 * width is known, over a quarter of that, so that a single spike is no peak and a narrow peak is no spike.
 */
export function outlineOf(profile: HeatProfile, smooth: number): Outline {
  let outline = outlineAt(profile, movingMean(profile, smooth / 4));
  for (let round = 0; round < 2; round++) {
    outline = outlineAt(profile, movingMean(profile, (outline.halfRight - outline.halfLeft) / 4));
  }
  return outline;
}

function outlineAt({ x }: HeatProfile, { d }: HeatProfile): Outline {
  let top = 0;
  for (let p = 1; p < d.length; p++) if (Math.abs(d[p]) > Math.abs(d[top])) top = p;
  const direction = d[top] < 0 ? -1 : 1;
  const height = Math.abs(d[top]);
  const reach = (level: number, step: 1 | -1): number => {
    let p = top;
    while (p + step >= 0 && p + step < d.length && direction * d[p + step] > level * height) p += step;
    const next = p + step;
    if (next < 0 || next >= d.length) return x[p];
    const [inner, outer] = [direction * d[p], direction * d[next]];
    return inner > outer ? x[p] + ((inner - level * height) / (inner - outer)) * (x[next] - x[p]) : x[p];
  };
  return {
    direction,
    top: x[top],
    height: d[top],
    halfLeft: reach(0.5, -1),
    halfRight: reach(0.5, 1),
    footLeft: reach(FOOT, -1),
    footRight: reach(FOOT, 1),
  };
}
