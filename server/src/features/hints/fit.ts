/**
 * Editors cut the hints of one line at so many characters in all, unless a person sets it otherwise
 * (`editor.inlayHints.maximumLength`, 43). A hint's own margin counts one.
 */
export const mostCharacters = 43;

/** A hint in all its lengths, the fullest first. */
export type Fitting = readonly Length[];

export interface Length {
  /** Empty: the hint is left out. */
  readonly text: string;
  /** What is lost by it: of all hints of a line the cheapest is shortened first. */
  readonly cost: number;
}

/** The texts of one line's hints, each as full as the line allows. */
export function fit(hints: readonly Fitting[]): readonly string[] {
  const chosen = hints.map(() => 0);
  const textOf = (i: number): string => hints[i]![chosen[i]!]?.text ?? '';
  const next = (i: number): number => hints[i]![chosen[i]! + 1]?.cost ?? lost;
  const length = (): number => hints.reduce((sum, _, i) => sum + lengthOf(textOf(i)), 0);
  while (length() > mostCharacters) {
    const left = hints.map((_, i) => i).filter((i) => textOf(i) !== '');
    const cheapest = left.reduce((a, b) => (next(b) < next(a) ? b : a));
    chosen[cheapest]! += 1;
  }
  return hints.map((_, i) => textOf(i));
}

/** To be left out altogether costs more than anything. */
const lost = 100;

function lengthOf(text: string): number {
  return text === '' ? 0 : text.length + 1;
}
