import type { PlacedFinding } from '../../engine/snapshot';
import { findingRecord } from '../../findings/table';
import type { Statement } from '../../language/model';
import type { StatementNode, Tree } from '../../language/tree';
import { quantities } from '../../language/vocabulary/quantities';
import { statementAt } from '../statements';
import type { Results } from '../workspace';
import { atEnd, lineBreak, lineEnd, type Change } from './edits';

/** The line that accepts a finding with a reason still to be written; null where it cannot be accepted. */
export function allowChange(
  { gloss, method }: Pick<Results, 'gloss' | 'method'>,
  finding: PlacedFinding,
): Change | null {
  const record = findingRecord(finding.code);
  if (!record.allowable || finding.allowed !== null || finding.code === 'allow-unused') return null;
  const { tree } = gloss;
  const here = finding.file === 'gloss';
  const node = statementAt(here ? tree : (method?.tree ?? tree), finding.span.start);
  const words = `allow ${finding.code}`;
  if (here && node !== null && holdsClause(node.statement, record.effect !== null)) {
    const at = lineEnd(tree.text, node.span.end);
    const text = `${lineBreak(tree.text)}${indentOf(tree, node)}${words} because ""`;
    return { file: 'gloss', span: { start: at, end: at }, text };
  }
  // A method is not changed for one run: its statement is named.
  const name = !here && node?.statement !== null && isNamed(node) ? ` on ${node!.name!}` : '';
  return { file: 'gloss', ...atEnd(tree.text, `${words}${name} because ""`) };
}

/**
 * Where a clause accepts what is found. What stands on the run and reaches every value (`reaches`) is accepted by a line of
 * its own: a clause of the run would not speak for the values.
 */
function holdsClause(statement: Statement | null, reaches: boolean): boolean {
  if (statement === null) return false;
  const { kind } = statement;
  if (kind in quantities || kind === 'let' || kind === 'require') return true;
  return !reaches && (kind === 'run' || kind === 'blank' || kind === 'join' || kind === 'mask');
}

function isNamed(node: StatementNode | null): boolean {
  const kind = node?.statement?.kind ?? '';
  return node !== null && node.name !== null && (kind in quantities || kind === 'let' || kind === 'require');
}

/** As the clauses above are indented. */
function indentOf({ text }: Tree, node: StatementNode): string {
  const lines = text.slice(node.span.start, node.span.end).split('\n').slice(1);
  return /^[ \t]+/.exec(lines.find((line) => /^[ \t]+\S/.test(line)) ?? '')?.[0] ?? '  ';
}
