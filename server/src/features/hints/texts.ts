import type { Requirement, Result } from '../../evaluation/result';
import type { Fitting } from './fit';
import { shownBasis, shownRequirementValue, shownValue, shownWindow, stateWords } from '../../presentation/shown';

/** Behind what belongs to an older text. */
const stale = ' · stale';

/** What is lost, from the least to the most. */
const cost = { name: 1, usualBasis: 2, window: 3, chosenBasis: 4, number: 5 } as const;

/**
 * A result beside its line: the name of the quantity goes first, then the basis that is usual; the number with its
 * uncertainty, its state and its age stay.
 */
export function resultTexts(result: Result, isStale: boolean): Fitting {
  const age = isStale ? stale : '';
  const state = result.state === 'number' ? '' : ` ${stateWords[result.state]}`;
  const quantity = result.quantity === 'value' ? '' : `${result.quantity} `;
  if (result.value === null && result.limit === null) {
    const words = stateWords[result.state];
    return [
      { text: `${quantity}${words}${age}`, cost: 0 },
      { text: `${words}${age}`, cost: cost.name },
    ];
  }
  const full = shownValue(result);
  const basis = result.basis === null ? '' : ` (${shownBasis(result.basis)})`;
  const bare = full.slice(0, full.length - basis.length);
  const basisCost = result.basis === 'initial mass' ? cost.usualBasis : cost.chosenBasis;
  return [
    { text: `${quantity}${full}${state}${age}`, cost: 0 },
    { text: `${full}${state}${age}`, cost: cost.name },
    { text: `${bare}${state}${age}`, cost: basisCost },
  ];
}

/** The ends a rule found; nothing where the window is written. Without room it is left out: a hover has it. */
export function foundWindowTexts({ window }: Result, isStale: boolean): Fitting {
  if (window?.rule?.startsWith('around') !== true) return [];
  const ends = shownWindow(window).replace(/ \(.*\)$/, '');
  return windowTexts(isStale ? `${ends}${stale}` : ends);
}

export function windowTexts(text: string): Fitting {
  return [
    { text, cost: 0 },
    { text: '', cost: cost.window },
  ];
}

/** A verdict with the value it was judged by. */
export function verdictTexts(requirement: Requirement, isStale: boolean): Fitting {
  const age = isStale ? stale : '';
  const { verdict } = requirement;
  const value = shownRequirementValue(requirement);
  return [
    { text: `${verdict}${value === '' ? '' : `: ${value}`}${age}`, cost: 0 },
    { text: `${verdict}${age}`, cost: cost.number },
  ];
}
