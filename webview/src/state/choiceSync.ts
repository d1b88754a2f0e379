import type { ViewChoices } from '../../../server/src/protocol/view';

/** Whose choices count: a person's stay until the server has drawn with them, else the server's are taken over. */
export interface ChoiceSync {
  readonly choices: ViewChoices;
  /** A choice was sent and no state has come back with it. */
  readonly awaiting: boolean;
}

export function reconciled(own: ChoiceSync, fromState: ViewChoices): ChoiceSync {
  if (!own.awaiting || sameChoices(own.choices, fromState)) return { choices: fromState, awaiting: false };
  return own;
}

export function sameChoices(a: ViewChoices, b: ViewChoices): boolean {
  return (
    a.abscissa === b.abscissa &&
    a.run === b.run &&
    a.against === b.against &&
    sameMembers(a.hiddenParts, b.hiddenParts) &&
    sameMembers(a.overlays, b.overlays) &&
    [...new Set([...Object.keys(a.units), ...Object.keys(b.units)])].every((lane) => a.units[lane] === b.units[lane])
  );
}

function sameMembers(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((item) => b.includes(item));
}
