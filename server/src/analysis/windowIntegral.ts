import type { Curve, Window } from './curve';
import type { Functional } from './functional';
import { firstAfter, firstAtOrAfter } from './range';

/**
 * The integral over a window, between limits that need not be samples: the samples inside, and at each limit the value
 * interpolated between its neighbours (beyond the data: the nearest sample).
 */
export interface IntegralGrid {
  /** Nodes: limit, samples of the thinned curve strictly inside, limit. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Integral of y less `origin` over all readings, by the trapezoid rule, nothing smoothed. */
  readonly integral: number;
  readonly origin: number;
  /** What the integral over the readings has more than the one over the nodes. */
  readonly excess: number;
  /** The functional whose value is the trapezoid sum over the nodes of `density` times y; `density` at the nodes. */
  functional(density?: (node: number) => number): Functional;
}

/** `thin` is `curve` or its averages; functionals are of the samples of `thin`. */
export function windowIntegral(curve: Curve, thin: Curve, window: Window): IntegralGrid {
  const { from, to } = window;
  const { x, y } = thin;
  const first = firstAfter(x, from);
  const last = Math.max(first, firstAtOrAfter(x, to));
  const nodes = last - first + 2;
  const left = interpolation(x, from, first);
  const right = interpolation(x, to, last);
  const grid = { x: new Float64Array(nodes), y: new Float64Array(nodes) };
  grid.x[0] = from;
  grid.x[nodes - 1] = to;
  grid.x.set(x.subarray(first, last), 1);
  grid.y[0] = valueAt(y, left);
  grid.y[nodes - 1] = valueAt(y, right);
  grid.y.set(y.subarray(first, last), 1);
  const origin = grid.y[0];
  const coarse = integralOf(thin, window, origin);
  const integral = thin === curve ? coarse : integralOf(curve, window, origin);
  return {
    ...grid,
    origin,
    integral,
    excess: integral - coarse,
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

/** Integral of the curve less `origin` over a window, by the trapezoid rule on its samples. */
function integralOf({ x, y }: Curve, { from, to }: Window, origin: number): number {
  const first = firstAfter(x, from);
  const last = Math.max(first, firstAtOrAfter(x, to));
  let at = from;
  let value = valueAt(y, interpolation(x, from, first)) - origin;
  let twice = 0;
  for (let i = first; i < last; i++) {
    const next = y[i] - origin;
    twice += (next + value) * (x[i] - at);
    at = x[i];
    value = next;
  }
  twice += (valueAt(y, interpolation(x, to, last)) - origin + value) * (to - at);
  return twice / 2;
}

function valueAt(y: Float64Array, { at, next, share }: Interpolation): number {
  return y[at] + share * (y[at + next] - y[at]);
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
