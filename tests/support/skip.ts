const reasons = new WeakMap<object, string>();

/** Skips the running test, or from a `before` all of its suite, and says why: the report lists it with the reason. */
export function skip(context: Mocha.Context, reason: string): never {
  const running = context.test;
  const hook = running !== undefined && 'type' in running && running.type === 'hook';
  if (running !== undefined) reasons.set(hook ? (running.parent ?? running) : running, reason);
  return context.skip();
}

/** The reason given for a test that did not run, or for a suite around it. */
export function reasonFor(test: Mocha.Test): string | null {
  for (let at: Mocha.Test | Mocha.Suite | undefined = test; at !== undefined; at = at.parent) {
    const reason = reasons.get(at);
    if (reason !== undefined) return reason;
  }
  return null;
}
