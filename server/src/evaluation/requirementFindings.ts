import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import { numberText } from '../findings/numberText';
import type { RequireStatement } from '../language/model';
import type { Effective } from '../language/program';
import type { Requirement } from './result';
import type { Reason } from './typedValue';

/** What a verdict other than *met* says to the reader. */
export function requirementFindings(
  source: Effective<RequireStatement>,
  requirement: Requirement,
  reasons: readonly Reason[],
): Finding[] {
  const { verdict } = requirement;
  if (verdict === 'met' || verdict === 'not evaluated') return [];
  const shown = describe(requirement);
  const finding = (code: Finding['code'], message: string): Finding =>
    makeFinding(code, { statement: source.id, token: 'expression' }, message, { about: requirement.name });
  if (verdict === 'not met') return [finding('requirement-not-met', `Not met: ${requirement.text}. It is ${shown}.`)];
  const because =
    requirement.state === 'number'
      ? `${shown} reaches over the limit`
      : `the value is ${requirement.state.replace('-', ' ')} (${[...new Set(reasons.map((r) => `${r.code} on ${r.name}`))].join(', ')})`;
  return [finding('requirement-inconclusive', `Neither met nor failed: ${requirement.text}; ${because}.`)];
}

function describe(requirement: Requirement): string {
  const { value, uncertainty, unit, k } = requirement;
  if (value === null) return requirement.state.replace('-', ' ');
  const U = uncertainty === null ? 0 : k * uncertainty;
  const digits = U > 0 ? Math.max(0, 1 - Math.floor(Math.log10(U))) : 2;
  return `${numberText(value, digits)} with U = ${numberText(U, digits)} ${unit.text} (k = ${numberText(k, 2)})`;
}
