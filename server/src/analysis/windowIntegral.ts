import type { Curve, Window } from './curve';
import type { Functional } from './functional';
import { firstAfter, firstAtOrAfter } from './range';

/**
 * The integral over a window, between limits that need not be samples: the samples inside, and at each limit the value
 * interpolated between its neighbours (beyond the data: the nearest sample).
 */
export interface IntegralGrid {
  /** Nodes: limit, samples strictly inside, limit. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The functional whose value is the trapezoid sum of `density` times y; `density` at the nodes. */
  functional(density?: (node: number) => number): Functional;
}

/**
 * Trapezoid rule on the samples as measured, nothing smoothed. (Only here are the samples of a window copied, once;
 * a copy is read faster than two arrays at an offset, and the whole run is never copied.)
 */
export function windowIntegral({ x, y }: Curve, { from, to }: Window): IntegralGrid {
  const first = firstAfter(x, from);
  const last = Math.max(first, firstAtOrAfter(x, to));
  const nodes = last - first + 2;
  const left = interpolation(x, from, first);
  const right = interpolation(x, to, last);
  const grid = { x: new Float64Array(nodes), y: new Float64Array(nodes) };
  grid.x[0] = from;
  grid.x[nodes - 1] = to;
  grid.x.set(x.subarray(first, last), 1);
  grid.y[0] = y[left.at] + left.share * (y[left.at + left.next] - y[left.at]);
  grid.y[nodes - 1] = y[right.at] + right.share * (y[right.at + right.next] - y[right.at]);
  grid.y.set(y.subarray(first, last), 1);
  return {
    ...grid,
    functional(density = () => 1) {
      const begin = left.at;
      const end = Math.max(last, right.at + right.next + 1);
      const weights = new Float64Array(end - begin);
      for (let k = 0; k < nodes; k++) {
        const below = k > 0 ? grid.x[k] - grid.x[k - 1] : 0;
        const above = k < nodes - 1 ? grid.x[k + 1] - grid.x[k] : 0;
        const w = (density(k) * (below + above)) / 2;
        if (k > 0 && k < nodes - 1) weights[first + k - 1 - begin] += w;
        else spread(weights, begin, k === 0 ? left : right, w);
      }
      return { first: begin, weights };
    },
  };
}

interface Interpolation {
  readonly at: number;
  /** 1, or 0 where the limit lies beyond the data. */
  readonly next: 0 | 1;
  readonly share: number;
}

/** `t` between the samples `after - 1` and `after`. */
function interpolation(x: Float64Array, t: number, after: number): Interpolation {
  if (after <= 0) return { at: 0, next: 0, share: 0 };
  if (after >= x.length) return { at: x.length - 1, next: 0, share: 0 };
  const at = after - 1;
  return { at, next: 1, share: (t - x[at]) / (x[after] - x[at]) };
}

function spread(weights: Float64Array, begin: number, { at, next, share }: Interpolation, w: number): void {
  weights[at - begin] += w * (1 - share);
  if (next === 1) weights[at + 1 - begin] += w * share;
}
