import type { Functional } from './functional';

/** A least-squares polynomial over some samples, in the basis of discrete orthogonal polynomials of these samples. */
export interface PolynomialFit {
  readonly first: number;
  readonly last: number;
  readonly degree: number;
  /** The fitted polynomial, or its derivative of the given order, at `t`. */
  at(t: number, derivative?: number): number;
  /** The same number as a linear functional of the samples fitted. */
  functional(t: number, derivative?: number): Functional;
}

/**
 * Fits a polynomial of `degree` to `y` over the samples `first` to `last` (exclusive) of any grid, by the three-term
 * recurrence of discrete orthogonal polynomials (Forsythe, J. SIAM 5 (1957) 74, from memory): no normal equations, hence
 * no loss of digits at higher degrees. Abscissa and ordinate are centred and scaled first; the degree is lowered where
 * there are too few samples for it. `counts` weights each sample (block means of so many readings).
 *
 * `t` in the unit of `x`; a derivative of order k has the unit of y per unit of x to the k.
 */
export function fitPolynomial(
  x: Float64Array,
  y: Float64Array,
  first: number,
  last: number,
  degree: number,
  counts?: Float64Array,
): PolynomialFit {
  const n = last - first;
  const top = Math.min(degree, n - 1);
  const centre = (x[first] + x[last - 1]) / 2;
  const scale = (x[last - 1] - x[first]) / 2 || 1;
  const origin = y[first];
  const a = new Float64Array(top + 1);
  const b = new Float64Array(top + 1);
  const c = new Float64Array(top + 1);
  const norm = new Float64Array(top + 1);
  const u = new Float64Array(n);
  for (let i = 0; i < n; i++) u[i] = (x[first + i] - centre) / scale;
  let previous = new Float64Array(n);
  let current = new Float64Array(n).fill(1);
  for (let k = 0; k <= top; k++) {
    let pp = 0;
    let upp = 0;
    let py = 0;
    for (let i = 0; i < n; i++) {
      const p = counts === undefined ? current[i] : current[i] * counts[first + i];
      pp += p * current[i];
      upp += u[i] * p * current[i];
      py += p * (y[first + i] - origin);
    }
    norm[k] = pp;
    a[k] = upp / pp;
    b[k] = k === 0 ? 0 : pp / norm[k - 1];
    c[k] = py / pp;
    if (k === top) break;
    for (let i = 0; i < n; i++) {
      const next = (u[i] - a[k]) * current[i] - b[k] * previous[i];
      previous[i] = next;
    }
    [previous, current] = [current, previous];
  }

  /** Derivatives of order `d` of the orthogonal polynomials at `v`, in units of the scaled abscissa. */
  function basis(v: number, d: number): Float64Array {
    let lower = new Float64Array(top + 1);
    for (let order = 0; order <= d; order++) {
      const values = new Float64Array(top + 1);
      values[0] = order === 0 ? 1 : 0;
      for (let k = 0; k < top; k++) {
        values[k + 1] =
          (v - a[k]) * values[k] + (order > 0 ? order * lower[k] : 0) - (k > 0 ? b[k] * values[k - 1] : 0);
      }
      lower = values;
    }
    return lower;
  }

  return {
    first,
    last,
    degree: top,
    at(t, derivative = 0) {
      const values = basis((t - centre) / scale, derivative);
      let sum = 0;
      for (let k = 0; k <= top; k++) sum += c[k] * values[k];
      return sum / scale ** derivative + (derivative === 0 ? origin : 0);
    },
    functional(t, derivative = 0) {
      const values = basis((t - centre) / scale, derivative);
      const weights = new Float64Array(n);
      const unit = scale ** derivative;
      for (let i = 0; i < n; i++) {
        let below = 0;
        let p = 1;
        let sum = 0;
        for (let k = 0; k <= top; k++) {
          sum += (values[k] / norm[k]) * p;
          const next = (u[i] - a[k]) * p - b[k] * below;
          below = p;
          p = next;
        }
        weights[i] = ((counts === undefined ? 1 : counts[first + i]) * sum) / unit;
      }
      return { first, weights };
    },
  };
}
