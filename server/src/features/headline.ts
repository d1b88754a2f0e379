import type { StatementNode } from '../language/tree';
import { mainResults } from '../presentation/mainQuantities';
import { shownRequirementValue, shownValue } from '../presentation/shown';
import { isCurrent, type GlossDocument, type Results } from './workspace';

/**
 * What a statement came to, in a few words: its first main quantity, or a verdict with the value judged. Empty where
 * nothing is known yet. What belongs to an older text says so.
 */
export function headlines(document: GlossDocument, results: Results | null): (node: StatementNode) => string {
  if (results === null) return () => '';
  const { snapshot } = results;
  const main = mainResults(snapshot);
  const age = isCurrent(document, results) ? '' : ', of an older text';
  return (node) => {
    const judged = snapshot.requirements.find((r) => r.statement === node.id);
    if (judged !== undefined) {
      const value = shownRequirementValue(judged);
      return `${judged.verdict}${value === '' ? '' : `, ${value}`}${age}`;
    }
    if (node.name === null) return '';
    const own = snapshot.results.filter((r) => r.name === node.name);
    const result = own.find((r) => main.has(r.id)) ?? own[0];
    if (result === undefined) return '';
    const quantity = result.quantity === 'value' ? '' : `${result.quantity} `;
    return `${quantity}${shownValue(result)}${age}`;
  };
}
