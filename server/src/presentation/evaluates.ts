import type { Snapshot } from '../engine/snapshot';

/** A method and the gloss of a blank have no numbers of their own; a text that errors left without any is shown. */
export function evaluates(s: Snapshot): boolean {
  return s.results.length > 0 || s.requirements.length > 0 || (s.gloss.tree.role !== 'method' && standingErrors(s));
}

export function standingErrors(s: Snapshot): boolean {
  return s.findings.some((f) => f.severity === 'error' && f.allowed === null);
}
