/** A linear functional of the samples: the sum of `weights[i] * y[first + i]`. */
export interface Functional {
  readonly first: number;
  readonly weights: Float64Array;
  /** What is known of the weights without making them: how many, and the sum of their squares. */
  readonly known?: { readonly count: number; readonly squares: number };
}

/** One functional times a factor, a term of a sum. */
export interface Term {
  readonly times: number;
  readonly of: Functional;
}

/** A functional whose weights are made when asked for: the variance of white noise needs the sum of their squares only. */
export function functionalOf(first: number, count: number, squares: number, make: () => Float64Array): Functional {
  return new MadeWhenAsked(first, { count, squares }, make);
}

class MadeWhenAsked implements Functional {
  private made: Float64Array | null = null;

  constructor(
    readonly first: number,
    readonly known: { readonly count: number; readonly squares: number },
    private readonly make: () => Float64Array,
  ) {}

  get weights(): Float64Array {
    return (this.made ??= this.make());
  }
}

/** The value of a functional on the samples `y`. */
export function apply(functional: Functional, y: Float64Array): number {
  const { first, weights } = functional;
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += weights[i] * y[first + i];
  return sum;
}

/** How many samples a functional reads. */
export function countOf(functional: Functional): number {
  return functional.known?.count ?? functional.weights.length;
}

/** The sum of the squares of its weights. */
export function squaresOf(functional: Functional): number {
  if (functional.known !== undefined) return functional.known.squares;
  const { weights } = functional;
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += weights[i] * weights[i];
  return sum;
}

/**
 * The sum of the squares of the weights of a sum of terms, without making weights; null where terms share samples and the
 * weights must be added first.
 */
export function squaresApart(terms: readonly Term[]): number | null {
  const parts = inOrder(terms);
  let sum = 0;
  let end = -Infinity;
  for (const { times, of } of parts) {
    if (of.first < end) return null;
    end = of.first + countOf(of);
    sum += times * times * squaresOf(of);
  }
  return sum;
}

/**
 * The sum of terms as disjoint pieces in ascending order. Pieces far apart stay apart, so that the difference of two
 * levels costs the points of the levels and not those between.
 */
export function sumOf(terms: readonly Term[]): readonly Functional[] {
  const parts = inOrder(terms);
  const pieces: Functional[] = [];
  for (let i = 0; i < parts.length;) {
    const first = parts[i].of.first;
    let end = first;
    let j = i;
    while (j < parts.length && (j === i || parts[j].of.first < end)) {
      end = Math.max(end, parts[j].of.first + countOf(parts[j].of));
      j++;
    }
    const weights = new Float64Array(end - first);
    for (; i < j; i++) {
      const { times, of } = parts[i];
      const own = of.weights;
      for (let k = 0; k < own.length; k++) weights[of.first - first + k] += times * own[k];
    }
    pieces.push({ first, weights });
  }
  return pieces;
}

function inOrder(terms: readonly Term[]): Term[] {
  return terms.filter((t) => t.times !== 0 && countOf(t.of) > 0).sort((a, b) => a.of.first - b.of.first);
}

/** The mean of the samples `first` to `last` (exclusive). */
export function meanFunctional(first: number, last: number): Functional {
  const count = last - first;
  return functionalOf(first, count, 1 / count, () => new Float64Array(count).fill(1 / count));
}
