import type { Range, SemanticTokensEdit } from 'vscode-languageserver-types';
import type { GlossDocument } from '../workspace';
import { classify, type Classified } from './classify';
import { tokenModifiers, tokenTypes } from './legend';

/** The tokens of a document or of a part of it, as the protocol sends them: five integers each, relative to the one before. */
export function semanticTokens(document: GlossDocument, range?: Range): number[] {
  const { positions, tree, program } = document;
  const failed = new Set([
    ...program.order.filter((e) => e.failed !== null).map((e) => e.statement.name),
    ...tree.statements.flatMap((s) => (s.broken && s.name !== null ? [s.name] : [])),
  ]);
  const span = range === undefined ? undefined : positions.span(range);
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const token of classify(tree, failed, span)) {
    const { start, end } = positions.range(token.span);
    // A lone CR ends a line of the protocol and none of ours.
    if (end.line !== start.line || end.character <= start.character) continue;
    data.push(
      start.line - line,
      start.line === line ? start.character - character : start.character,
      end.character - start.character,
      tokenTypes.indexOf(token.type),
      modifierBits(token),
    );
    ({ line, character } = start);
  }
  return data;
}

function modifierBits({ modifiers }: Classified): number {
  return modifiers.reduce((bits, modifier) => bits | (1 << tokenModifiers.indexOf(modifier)), 0);
}

/** What changed between two answers, as one edit: the equal ends of both are left out. None where nothing changed. */
export function tokensDelta(before: readonly number[], now: readonly number[]): SemanticTokensEdit[] {
  const shorter = Math.min(before.length, now.length);
  let start = 0;
  while (start < shorter && before[start] === now[start]) start += 1;
  if (start === before.length && start === now.length) return [];
  let end = 0;
  while (end < shorter - start && before[before.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  return [{ start, deleteCount: before.length - start - end, data: now.slice(start, now.length - end) }];
}
