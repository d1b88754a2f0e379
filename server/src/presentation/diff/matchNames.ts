import type { ComparedGloss, ComparedResult } from './compared';

/**
 * Which statement of the new side is which of the old: by name, then by equal meaning, then by the overlap of windows of
 * one kind in one segment. Names of the old side by name of the new.
 */
export function matchNames(older: ComparedGloss, newer: ComparedGloss): Map<string, string> {
  const left = places(older);
  const right = places(newer);
  const matched = new Map<string, string>();
  const free = new Set(left.keys());
  for (const name of right.keys()) {
    if (free.delete(name)) matched.set(name, name);
  }
  for (const name of right.keys()) {
    if (matched.has(name)) continue;
    const meaning = newer.meanings.get(name);
    const same = [...free].find((n) => meaning !== undefined && older.meanings.get(n) === meaning);
    if (same === undefined) continue;
    matched.set(name, same);
    free.delete(same);
  }
  const pairs: { readonly name: string; readonly was: string; readonly share: number }[] = [];
  for (const [name, place] of right) {
    if (matched.has(name)) continue;
    for (const was of free) {
      const share = overlap(left.get(was)!, place);
      if (share > 0.5) pairs.push({ name, was, share });
    }
  }
  pairs.sort((a, b) => b.share - a.share || (a.name < b.name ? -1 : 1));
  for (const { name, was } of pairs) {
    if (matched.has(name) || !free.has(was)) continue;
    matched.set(name, was);
    free.delete(was);
  }
  return matched;
}

/** One result of each name stands for its place. */
function places(gloss: ComparedGloss): Map<string, ComparedResult> {
  const found = new Map<string, ComparedResult>();
  for (const result of gloss.results) {
    const known = found.get(result.name);
    if (known === undefined || (known.window === null && result.window !== null)) found.set(result.name, result);
  }
  return found;
}

/** Common part of two windows over what both cover. */
function overlap(a: ComparedResult, b: ComparedResult): number {
  if (a.kind !== b.kind || a.segment !== b.segment || a.window === null || b.window === null) return 0;
  if (a.window.unit !== b.window.unit) return 0;
  const [a0, a1] = [Math.min(a.window.from, a.window.to), Math.max(a.window.from, a.window.to)];
  const [b0, b1] = [Math.min(b.window.from, b.window.to), Math.max(b.window.from, b.window.to)];
  const both = Math.min(a1, b1) - Math.max(a0, b0);
  const all = Math.max(a1, b1) - Math.min(a0, b0);
  return all > 0 ? Math.max(both, 0) / all : 0;
}
