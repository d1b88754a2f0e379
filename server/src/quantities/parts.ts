import type { Part, Uncertain } from './uncertain';

/**
 * Weighted sum of two gradients, merged by input and in the order of the inputs' names, so that the result does not
 * depend on the order of the operands (fixed order of summation).
 */
export function combineParts(a: Uncertain, ca: number, b: Uncertain, cb: number): readonly Part[] {
  const left = mergedParts(a.parts);
  const right = mergedParts(b.parts);
  const parts: Part[] = [];
  let i = 0;
  let j = 0;
  while (i < left.length || j < right.length) {
    const l = left[i];
    const r = right[j];
    if (r === undefined || (l !== undefined && l.input < r.input)) {
      parts.push(weighted(l!, ca));
      i++;
    } else if (l === undefined || r.input < l.input) {
      parts.push(weighted(r, cb));
      j++;
    } else {
      parts.push(joined(weighted(l, ca), weighted(r, cb)));
      i++;
      j++;
    }
  }
  return parts;
}

/** A gradient times a factor. */
export function scaledParts(x: Uncertain, factor: number): readonly Part[] {
  return mergedParts(x.parts).map((part) => weighted(part, factor));
}

/** Sorted by input, each input once. Most lists are so already and are returned as they are. */
export function mergedParts(parts: readonly Part[]): readonly Part[] {
  let ordered = true;
  for (let i = 1; i < parts.length && ordered; i++) ordered = parts[i - 1]!.input < parts[i]!.input;
  if (ordered) return parts;
  const byInput = new Map<string, Part>();
  for (const part of parts) {
    const known = byInput.get(part.input);
    byInput.set(part.input, known === undefined ? part : joined(known, part));
  }
  return [...byInput.values()].sort((p, q) => (p.input < q.input ? -1 : 1));
}

// An influence without uncertainty stays listed and contributes nothing, even where the slope is infinite.
function weighted(part: Part, factor: number): Part {
  return factor === 1 ? part : { ...part, u: part.u === 0 ? 0 : part.u * factor };
}

// The same input with two statements of its degrees of freedom: the smaller is the safe one.
function joined(a: Part, b: Part): Part {
  const dof = a.dof === null ? b.dof : b.dof === null ? a.dof : Math.min(a.dof, b.dof);
  return { ...a, u: a.u + b.u, dof };
}
