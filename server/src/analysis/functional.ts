/** A linear functional of the samples: the sum of `weights[i] * y[first + i]`. */
export interface Functional {
  readonly first: number;
  readonly weights: Float64Array;
}

/** One functional times a factor, a term of a sum. */
export interface Term {
  readonly times: number;
  readonly of: Functional;
}

/** The value of a functional on the samples `y`. */
export function apply(functional: Functional, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < functional.weights.length; i++) sum += functional.weights[i] * y[functional.first + i];
  return sum;
}

/**
 * The sum of terms as disjoint pieces in ascending order. Pieces far apart stay apart, so that the difference of two
 * levels costs the points of the levels and not those between.
 */
export function sumOf(terms: readonly Term[]): readonly Functional[] {
  const parts = terms.filter((t) => t.times !== 0 && t.of.weights.length > 0);
  parts.sort((a, b) => a.of.first - b.of.first);
  const pieces: Functional[] = [];
  for (let i = 0; i < parts.length;) {
    const first = parts[i].of.first;
    let end = first;
    let j = i;
    while (j < parts.length && (j === i || parts[j].of.first < end)) {
      end = Math.max(end, parts[j].of.first + parts[j].of.weights.length);
      j++;
    }
    const weights = new Float64Array(end - first);
    for (; i < j; i++) {
      const { times, of } = parts[i];
      for (let k = 0; k < of.weights.length; k++) weights[of.first - first + k] += times * of.weights[k];
    }
    pieces.push({ first, weights });
  }
  return pieces;
}

/** The mean of the samples `first` to `last` (exclusive). */
export function meanFunctional(first: number, last: number): Functional {
  return { first, weights: new Float64Array(last - first).fill(1 / (last - first)) };
}
