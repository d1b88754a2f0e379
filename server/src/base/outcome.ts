/** A value or a named failure. User data never throws; `throw` is for our own bugs and for cancellation. */
export type Outcome<T, F> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failure: F };

export function success<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function failed<F>(failure: F): { readonly ok: false; readonly failure: F } {
  return { ok: false, failure };
}
