/**
 * What tests use of `node:assert/strict`, for the browser's worker, where Node's own is not to be had. Values are compared
 * as JSON would write them.
 */
function ok(value: unknown, message?: string): asserts value {
  if (!value) fail(message ?? `${shown(value)} is not truthy`);
}

const assert = Object.assign(ok, {
  ok,
  equal(actual: unknown, expected: unknown, message?: string): void {
    if (!Object.is(actual, expected)) fail(message ?? `${shown(actual)} is not ${shown(expected)}`);
  },
  notEqual(actual: unknown, expected: unknown, message?: string): void {
    if (Object.is(actual, expected)) fail(message ?? `${shown(actual)} was not expected`);
  },
  deepEqual(actual: unknown, expected: unknown, message?: string): void {
    if (shown(actual) !== shown(expected)) fail(message ?? `${shown(actual)} is not ${shown(expected)}`);
  },
  doesNotMatch(actual: string, pattern: RegExp, message?: string): void {
    if (pattern.test(actual)) fail(message ?? `${shown(actual)} matches ${String(pattern)}`);
  },
  match(actual: string, pattern: RegExp, message?: string): void {
    if (!pattern.test(actual)) fail(message ?? `${shown(actual)} does not match ${String(pattern)}`);
  },
});

export default assert;

function shown(value: unknown): string {
  return JSON.stringify(value) ?? String(value);
}

function fail(message: string): never {
  throw new Error(message);
}
