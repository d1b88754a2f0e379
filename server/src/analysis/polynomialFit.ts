import { functionalOf, type Functional } from './functional';

/** A least-squares polynomial over some samples, in the basis of discrete orthogonal polynomials of these samples. */
export interface PolynomialFit {
  readonly first: number;
  readonly last: number;
  readonly degree: number;
  /** The fitted polynomial, or its derivative of the given order, at `t`. */
  at(t: number, derivative?: number): number;
  /** The same number as a linear functional of the samples fitted. */
  functional(t: number, derivative?: number): Functional;
  /** The ordinate at `t` of the tangent that touches the polynomial at `time`, as a functional. */
  tangent(time: number, t: number): Functional;
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
  const { u } = scratch(n);
  let { previous, current } = scratch(n);
  for (let i = 0; i < n; i++) {
    u[i] = (x[first + i] - centre) / scale;
    previous[i] = 0;
    current[i] = 1;
  }
  for (let k = 0; ; k++) {
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
      previous[i] = (u[i] - a[k]) * current[i] - b[k] * previous[i];
    }
    [previous, current] = [current, previous];
  }
  return new Fitted({ x, first, last, centre, scale, origin, a, b, c, norm, counts });
}

/** Columns of numbers that the next fit uses again. */
let columns = columnsOf(0);

function columnsOf(n: number): { u: Float64Array; previous: Float64Array; current: Float64Array } {
  return { u: new Float64Array(n), previous: new Float64Array(n), current: new Float64Array(n) };
}

function scratch(n: number): typeof columns {
  if (columns.u.length < n) columns = columnsOf(2 * n);
  return columns;
}

interface Recurrence {
  readonly x: Float64Array;
  readonly first: number;
  readonly last: number;
  readonly centre: number;
  readonly scale: number;
  readonly origin: number;
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** Coefficients of the ordinate, and squared norms of the polynomials. */
  readonly c: Float64Array;
  readonly norm: Float64Array;
  readonly counts: Float64Array | undefined;
}

class Fitted implements PolynomialFit {
  readonly first: number;
  readonly last: number;
  readonly degree: number;

  constructor(private readonly of: Recurrence) {
    this.first = of.first;
    this.last = of.last;
    this.degree = of.c.length - 1;
  }

  at(t: number, derivative = 0): number {
    const { c, scale, origin } = this.of;
    const values = this.basis(t, derivative);
    let sum = 0;
    for (let k = 0; k < c.length; k++) sum += c[k] * values[k];
    return sum / scale ** derivative + (derivative === 0 ? origin : 0);
  }

  functional(t: number, derivative = 0): Functional {
    const values = this.basis(t, derivative);
    const unit = this.of.scale ** derivative;
    return this.from(values.map((v) => v / unit));
  }

  tangent(time: number, t: number): Functional {
    const slope = this.basis(time, 1);
    const step = (t - time) / this.of.scale;
    return this.from(this.basis(time, 0).map((v, k) => v + step * slope[k]));
  }

  /** The functional that gives the sum of `values` times the coefficients. */
  private from(values: Float64Array): Functional {
    const { first, last, norm, counts } = this.of;
    const parts = values.map((v, k) => v / norm[k]);
    const make = (): Float64Array => this.weights(parts);
    if (counts !== undefined) return { first, weights: make() };
    // The polynomials are orthogonal on the samples.
    let squares = 0;
    for (let k = 0; k < values.length; k++) squares += values[k] * parts[k];
    return functionalOf(first, last - first, squares, make);
  }

  private weights(parts: Float64Array): Float64Array {
    const { x, first, last, centre, scale, a, b, counts } = this.of;
    const weights = new Float64Array(last - first);
    for (let i = 0; i < weights.length; i++) {
      const u = (x[first + i] - centre) / scale;
      let below = 0;
      let p = 1;
      let sum = 0;
      for (let k = 0; k < parts.length; k++) {
        sum += parts[k] * p;
        const next = (u - a[k]) * p - b[k] * below;
        below = p;
        p = next;
      }
      weights[i] = counts === undefined ? sum : counts[first + i] * sum;
    }
    return weights;
  }

  /** Derivatives of order `d` of the orthogonal polynomials at `t`, in units of the scaled abscissa. */
  private basis(t: number, d: number): Float64Array {
    const { a, b, centre, scale } = this.of;
    const v = (t - centre) / scale;
    let lower = new Float64Array(a.length);
    for (let order = 0; order <= d; order++) {
      const values = new Float64Array(a.length);
      values[0] = order === 0 ? 1 : 0;
      for (let k = 0; k + 1 < a.length; k++) {
        values[k + 1] =
          (v - a[k]) * values[k] + (order > 0 ? order * lower[k] : 0) - (k > 0 ? b[k] * values[k - 1] : 0);
      }
      lower = values;
    }
    return lower;
  }
}
