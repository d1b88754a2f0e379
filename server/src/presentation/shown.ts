import type { Requirement, Result, ResultState, ResultWindow } from '../evaluation/result';
import { roundToUncertainty } from './number';
import { plainNumber } from './plainNumber';

/** A value with its standard uncertainty (k = 1) as two texts; no second one where it is exact. */
export function valueAndU(value: number, uncertainty: number | null): { value: string; u: string | null } {
  if (uncertainty === null) return { value: plainNumber(value, 4), u: '?' };
  if (!(uncertainty > 0)) return { value: plainNumber(value, 6), u: null };
  const rounded = roundToUncertainty(value, uncertainty);
  return { value: rounded.value, u: rounded.uncertainty };
}

/** `14.80 ± 0.04`, the number alone where it is exact; `?` where the uncertainty is unknown. `±` is always u (k = 1). */
export function plusMinus(value: number, uncertainty: number | null): string {
  const shown = valueAndU(value, uncertainty);
  return shown.u === null ? shown.value : `${shown.value} ± ${shown.u}`;
}

/** `14.80 ± 0.04 % (initial)`; `< 0.05 % (initial)`; or the state in words where there is no value. */
export function shownValue(result: Result): string {
  const { value, limit, state } = result;
  if (value !== null) return `${plusMinus(value, result.uncertainty)}${unitAndBasis(result)}`;
  if (state === 'not-detected' && limit !== null) return `< ${plainNumber(limit, 2)}${unitAndBasis(result)}`;
  return stateWords[state];
}

function unitAndBasis(result: Result): string {
  const unit = unitText(result.unit.text);
  return result.basis === null ? unit : `${unit} (${shownBasis(result.basis)})`;
}

/** The unit with its blank in front; nothing for a plain number. */
export function unitText(unit: string): string {
  return unit === '' || unit === '1' ? '' : ` ${unit}`;
}

export function shownBasis(basis: string): string {
  return basis === 'initial mass' ? 'initial' : basis;
}

export const stateWords: Readonly<Record<ResultState, string>> = {
  number: '',
  'not-detected': 'not detected',
  'sum-only': 'sum only',
  apparent: 'apparent',
  indicated: 'indicated',
  failed: 'failed',
};

/** `apparent: window-edge-sensitive`; empty for a plain number. */
export function stateAndReasons(result: Result): string {
  const words = stateWords[result.state];
  return words === '' || result.reasons.length === 0 ? words : `${words}: ${result.reasons.join(', ')}`;
}

/** `640..790 °C`, with the rule that found the ends where one did. */
export function shownWindow(window: ResultWindow | null): string {
  if (window === null) return '';
  if (window.from === window.to) return `${plainNumber(window.from, 4)} ${window.unit}`;
  const digits = window.rule === null ? 7 : 4;
  const ends = `${plainNumber(window.from, digits)}..${plainNumber(window.to, digits)} ${window.unit}`;
  return window.rule === null ? ends : `${ends} (${window.rule})`;
}

/** Expanded uncertainty with its coverage factor: `U = 0.6 % (k = 2)`; empty where there is none. */
export function shownExpanded(requirement: Requirement): string {
  const { value, uncertainty, k } = requirement;
  if (value === null) return '';
  if (uncertainty === null) return 'U unknown';
  if (!(uncertainty > 0)) return 'exact';
  return `U = ${roundToUncertainty(value, uncertainty * k).uncertainty}${unitText(requirement.unit.text)} (k = ${plainNumber(k, 3)})`;
}

/** The value that a requirement is judged by: `62.1 ± 0.3 %`. */
export function shownRequirementValue(requirement: Requirement): string {
  const { value, uncertainty, state } = requirement;
  if (value === null) return stateWords[state];
  return `${plusMinus(value, uncertainty)}${unitText(requirement.unit.text)}`;
}
