import assert from 'node:assert/strict';

/** Within an absolute distance. */
export function near(actual: number, expected: number, tolerance: number, what = ''): void {
  assert.ok(Math.abs(actual - expected) <= tolerance, `${what} ${actual} is not within ${tolerance} of ${expected}`);
}

/** Within a relative distance. */
export function nearRelative(actual: number, expected: number, tolerance: number, what = ''): void {
  near(actual, expected, tolerance * Math.abs(expected), what);
}
