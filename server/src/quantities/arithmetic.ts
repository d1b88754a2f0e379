import { combineParts, scaledParts } from './parts';
import type { Uncertain } from './uncertain';

/**
 * First-order propagation (JCGM 100, 5.1.2 and 5.2.2), derivative by derivative. Nothing here throws: a division by
 * zero, a root of a negative number come back undefined, which `isDefined` tells.
 */

/** A number without uncertainty. */
export function exact(value: number): Uncertain {
  return { value, parts: [] };
}

/**
 * A measured number. `u`: its standard uncertainty, in the unit of the value, 0 or more; `input`: the name of the
 * physical influence, the same wherever it acts; `dof`: degrees of freedom, null for many. u = 0 stays listed.
 */
export function withU(value: number, u: number, input: string, dof: number | null): Uncertain {
  return { value, parts: [{ input, u, dof }] };
}

/** Is it a finite number with a finite gradient? */
export function isDefined(x: Uncertain): boolean {
  return Number.isFinite(x.value) && x.parts.every((part) => Number.isFinite(part.u));
}

export function add(a: Uncertain, b: Uncertain): Uncertain {
  return { value: a.value + b.value, parts: combineParts(a, 1, b, 1) };
}

export function subtract(a: Uncertain, b: Uncertain): Uncertain {
  return { value: a.value - b.value, parts: combineParts(a, 1, b, -1) };
}

export function multiply(a: Uncertain, b: Uncertain): Uncertain {
  return { value: a.value * b.value, parts: combineParts(a, b.value, b, a.value) };
}

/** Undefined where b is 0. */
export function divide(a: Uncertain, b: Uncertain): Uncertain {
  const value = a.value / b.value;
  return { value, parts: combineParts(a, 1 / b.value, b, -value / b.value) };
}

/**
 * a to the power b; either may be uncertain. ∂/∂a = b·a^(b-1), ∂/∂b = a^b·ln a. With an uncertain exponent a must be
 * positive; with an exact one a negative a and a whole exponent will do, as in arithmetic without uncertainty.
 */
export function power(a: Uncertain, b: Uncertain): Uncertain {
  const value = a.value ** b.value;
  const byBase = b.value === 0 ? 0 : b.value * a.value ** (b.value - 1);
  const byExponent = a.value === 0 && b.value > 0 ? 0 : value * Math.log(a.value);
  return { value, parts: combineParts(a, byBase, b, byExponent) };
}

export function negate(x: Uncertain): Uncertain {
  return scale(x, -1);
}

/** x times an exact factor. */
export function scale(x: Uncertain, factor: number): Uncertain {
  return { value: x.value * factor, parts: scaledParts(x, factor) };
}

/** x plus an exact number: the change from °C to K keeps the gradient. */
export function shift(x: Uncertain, by: number): Uncertain {
  return { value: x.value + by, parts: x.parts };
}
