import { add, divide, exact, scale, withU } from './arithmetic';
import { scaledParts } from './parts';
import { standardUncertainty } from './standardUncertainty';
import type { Uncertain } from './uncertain';

/** The functions of the language, and sin, cos for models outside it. Undefined results as in arithmetic.ts. */

/** Arithmetic mean; undefined for an empty list. */
export function mean(xs: readonly Uncertain[]): Uncertain {
  return scale(
    xs.reduce((sum, x) => add(sum, x), exact(0)),
    1 / xs.length,
  );
}

/**
 * Experimental standard deviation of the values (JCGM 100, 4.2.2). Its own uncertainty is that of a standard deviation
 * from n values, s/√(2(n-1)) (JCGM 100, E.4.3), with n-1 degrees of freedom, as one influence named `input`: the spread
 * of the values already holds what is uncertain in each. Undefined for fewer than two values.
 */
export function sd(xs: readonly Uncertain[], input: string): Uncertain {
  const n = xs.length;
  if (n < 2) return exact(NaN);
  // Centred before squaring, about the first value: values far from zero lose nothing.
  const origin = xs[0]!.value;
  const centre = xs.reduce((sum, x) => sum + (x.value - origin), 0) / n;
  const squares = xs.reduce((sum, x) => sum + (x.value - origin - centre) ** 2, 0);
  const s = Math.sqrt(squares / (n - 1));
  return withU(s, s / Math.sqrt(2 * (n - 1)), input, n - 1);
}

/** Standard deviation over the absolute mean, a plain number. Undefined for a mean of zero. */
export function rsd(xs: readonly Uncertain[], input: string): Uncertain {
  return divide(sd(xs, input), abs(mean(xs)));
}

/** The smallest, with the gradient of the one chosen. */
export function min(xs: readonly Uncertain[]): Uncertain {
  return chosen(xs, (candidate, best) => candidate < best);
}

/** The largest, with the gradient of the one chosen. */
export function max(xs: readonly Uncertain[]): Uncertain {
  return chosen(xs, (candidate, best) => candidate > best);
}

// Of equal values the most uncertain is taken: the choice must not depend on the order of the list.
function chosen(xs: readonly Uncertain[], better: (candidate: number, best: number) => boolean): Uncertain {
  let best = xs[0];
  for (const x of xs.slice(1)) {
    const equal = x.value === best!.value;
    if (better(x.value, best!.value) || (equal && standardUncertainty(x) > standardUncertainty(best!))) best = x;
  }
  return best ?? exact(NaN);
}

export function abs(x: Uncertain): Uncertain {
  return x.value < 0 ? scale(x, -1) : x;
}

export function sqrt(x: Uncertain): Uncertain {
  const root = Math.sqrt(x.value);
  return applied(x, root, 0.5 / root);
}

/** Natural logarithm. */
export function ln(x: Uncertain): Uncertain {
  return applied(x, Math.log(x.value), 1 / x.value);
}

export function exp(x: Uncertain): Uncertain {
  const value = Math.exp(x.value);
  return applied(x, value, value);
}

/** Sine of an angle in radians. */
export function sin(x: Uncertain): Uncertain {
  return applied(x, Math.sin(x.value), Math.cos(x.value));
}

/** Cosine of an angle in radians. */
export function cos(x: Uncertain): Uncertain {
  return applied(x, Math.cos(x.value), -Math.sin(x.value));
}

function applied(x: Uncertain, value: number, slope: number): Uncertain {
  return { value, parts: scaledParts(x, slope) };
}
