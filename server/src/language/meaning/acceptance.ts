import { codes } from '../../findings/codes';
import { findingRecord, isFindingCode } from '../../findings/table';
import { nearest } from '../nearest';
import { problem, replacing, type Problem } from './problem';

/** A code that must name a finding. */
export function codeProblems(code: string, token: string): readonly Problem[] {
  if (isFindingCode(code)) return [];
  const meant = nearest(code, codes, 2);
  return [
    problem(
      'unknown-name',
      token,
      `no finding is called \`${code}\``,
      meant.map((text) => replacing(token, text)),
    ),
  ];
}

/** A code that must name a finding that can be accepted. */
export function allowProblems(code: string, token: string): readonly Problem[] {
  if (!isFindingCode(code)) return codeProblems(code, token).map((found) => ({ ...found, code: 'allow-not-possible' }));
  const { allowable, family } = findingRecord(code);
  if (allowable) return [];
  if (family === 'approval') {
    const message = `\`${code}\` cannot be accepted: ${insteadOfAccepting(code)}`;
    return [problem('allow-not-possible', token, message)];
  }
  const message = `\`${code}\` cannot be accepted: without what it is about there is nothing to compute; correct the line`;
  return [problem('allow-not-possible', token, message)];
}

/** What is done about a finding on approvals and allowances. */
function insteadOfAccepting(code: string): string {
  if (code === 'approved-by-evaluator') {
    return 'somebody else looks and approves, or the clause `evaluator` names who evaluated';
  }
  if (code.startsWith('allow-')) return 'an allowance that accepts nothing goes';
  return 'an approval that no longer holds is made again';
}
