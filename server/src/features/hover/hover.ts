import type { Hover, Position } from 'vscode-languageserver-types';
import type { Span } from '../../base/span';
import { isFindingCode } from '../../findings/table';
import { functionRecord } from '../../language/vocabulary/functions';
import { signalRecord } from '../../language/vocabulary/signals';
import { normalName } from '../../language/syntax/characters';
import type { StatementNode } from '../../language/tree';
import type { Abilities } from '../abilities';
import { clausesOf } from '../clauses';
import { cursorAt } from '../cursor';
import { markup, plain, prose, title, type Block } from '../prose';
import { statementAt, tokensAt } from '../statements';
import { codeBlocks, formulaBlocks } from '../substances';
import { clauseBlocks, functionBlocks, quantityBlocks, signalBlocks, statementBlocks } from '../words';
import type { GlossDocument, Results, Workspace } from '../workspace';
import { amountBlocks } from './amounts';
import { clauseValueBlocks, recordOfClause } from './clauseWords';
import { fileBlocks } from './files';
import { freshnessWords } from './freshness';
import { segmentBlocks, windowBlocks } from './places';
import { requirementBlocks, resultBlocks, statementResultBlocks, withoutResult } from './resultBlocks';
import { kindOf, knownNames } from '../completion/context';
import { quantities, quantityRecord, type EvaluationKind } from '../../language/vocabulary/quantities';

/** What is told about a place of a text, and which place that is. */
interface Told {
  readonly blocks: readonly Block[];
  readonly span: Span;
}

interface Place {
  readonly workspace: Workspace;
  readonly document: GlossDocument;
  readonly results: Results | null;
  readonly node: StatementNode;
  readonly offset: number;
}

/**
 * What stands behind a word, a name, a number of a gloss. Numbers are those of the last results; where these belong to an
 * older text, it says so.
 */
export async function hover(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
  abilities: Abilities,
): Promise<Hover | null> {
  const offset = document.positions.offset(position);
  const cursor = cursorAt(document.tree, offset);
  const node = cursor.place === 'comment' ? null : statementAt(document.tree, offset);
  if (node === null) return null;
  const place: Place = { workspace, document, results: workspace.results(document.uri), node, offset };
  for (const { token, span } of tokensAt(node, offset)) {
    const blocks = await blocksAt(place, token, span);
    if (blocks.length > 0) return told({ blocks, span }, document, abilities);
  }
  const word = wordBlocks(place);
  return word === null ? null : told(word, document, abilities);
}

function told({ blocks, span }: Told, document: GlossDocument, abilities: Abilities): Hover {
  return { contents: markup(blocks, abilities.hoverFormat), range: document.positions.range(span) };
}

function blocksAt(place: Place, token: string, span: Span): readonly Block[] | Promise<readonly Block[]> {
  const { workspace, document, results, node, offset } = place;
  const written = document.tree.text.slice(span.start, span.end);
  const { record, override } = cursorAt(document.tree, node.span.start);
  const clause = clausesOf(document.tree, node).find((c) => c.span.start <= offset && offset <= c.span.end) ?? null;
  if (clause === null) {
    if (token === 'keyword') return keywordBlocks(place, record, override);
    if (token === 'name') return nameBlocks(place, normalName(written));
    if (token === 'file') return fileBlocks(workspace, document, results, fileOf(node) ?? '');
    if (token === 'signal') return signal(written);
    if (/^window(?:\.|$)/.test(token)) return window(place, token, written);
    if (node.statement?.kind === 'require' && token === 'head') return requirement(place);
  }
  if (token === 'code' || token.endsWith('.code')) {
    return isFindingCode(written) ? codeBlocks(written, workspace.pageOf(written)) : [];
  }
  if (token === 'segment' || token.endsWith('.segment')) return segmentBlocks(results, written);
  if (/(?:^|\.)name(?:#\d+)?$/.test(token) || /^sum\/\d+$/.test(token) || (token === 'on' && clause === null)) {
    return nameBlocks(place, normalName(written));
  }
  if (token.endsWith('.quantity')) return quantity(place, node.tokens.get(token.replace(/quantity$/, 'name')), written);
  if (token.endsWith('.formula')) return formulaBlocks(written);
  if (/^(?:expression|limit)(?:\/\d+)*$/.test(token)) return part(place, span, written);
  if (/^(?:at|level|limit\.(?:from|to))$/.test(token)) return amountBlocks(written);
  if (clause === null) return [];
  const known = recordOfClause(record, clause);
  if (known === null) return [];
  const { value } = clause;
  if (value !== null && offset >= value.start) return clauseValueBlocks(document.tree.text, known, value, offset);
  return clauseBlocks(known);
}

/** The words of a statement; of one that is evaluated its results before them. */
function keywordBlocks(
  place: Place,
  record: ReturnType<typeof cursorAt>['record'],
  override: boolean,
): readonly Block[] {
  const { node, results } = place;
  if (record === null) return [];
  const words = statementBlocks(record);
  const because = override
    ? [prose('`override` changes a statement of the method, with a reason; what it does not write stays.')]
    : [];
  if (node.statement?.kind === 'require') return [...requirement(place), ...words];
  const result = results?.snapshot.results.find(
    (r) => r.statement === node.id || (r.name === node.name && node.name !== null),
  );
  const shown =
    result === undefined || node.name === null ? [] : [...statementResultBlocks(results!, node.name), freshness(place)];
  return [...shown, ...words, ...because];
}

/** What a name came to, wherever it stands. */
function nameBlocks(place: Place, name: string): readonly Block[] {
  const { document, results } = place;
  const judged = results?.snapshot.requirements.find((r) => r.name === name);
  if (judged !== undefined) return [...requirementBlocks(results!, judged), freshness(place)];
  const known = knownNames(document).find((n) => n.name === name);
  if (known === undefined) return [];
  const blocks = results === null ? [] : statementResultBlocks(results, name);
  if (blocks.length > 0) return [...blocks, freshness(place)];
  return [
    title(`${known.kind} ${name}`),
    plain('It has no result.'),
    ...withoutResult(results, name),
    freshness(place),
  ];
}

/** One quantity of a statement. */
function quantity(place: Place, name: Span | undefined, written: string): readonly Block[] {
  const { document, results } = place;
  if (name === undefined) return [];
  const of = normalName(document.tree.text.slice(name.start, name.end));
  const found = results?.snapshot.results.find((r) => r.name === of && r.quantity === written);
  if (found !== undefined) return [...resultBlocks(results!, found), freshness(place)];
  const kind = knownNames(document).find((n) => n.name === of)?.kind ?? '';
  const record = kind in quantities ? quantityRecord(kind as EvaluationKind, written) : null;
  return record === null ? [] : [title(`${of}.${written}`), ...quantityBlocks(record), freshness(place)];
}

function window(place: Place, token: string, written: string): readonly Block[] {
  const { document, results, node } = place;
  const number = token === 'window' ? [] : amountBlocks(withUnit(document, node, token, written));
  const blocks = results === null || node.name === null ? [] : windowBlocks(document, results, node.name);
  return blocks.length === 0 ? number : [...number, ...blocks, freshness(place)];
}

/** The unit behind the second end serves both. */
function withUnit({ tree }: GlossDocument, node: StatementNode, token: string, written: string): string {
  const to = node.tokens.get('window.to');
  if (token !== 'window.from' || to === undefined || !/\d\s*$/.test(written)) return written;
  return `${written} ${tree.text.slice(to.start, to.end).replace(/^[-\u2212\d.eE+\s]*/, '')}`;
}

/** A part of an expression that is no name: a function where the place is its word, else a number. */
function part({ offset }: Place, span: Span, written: string): readonly Block[] {
  const word = /^(\p{L}[\p{L}\p{Nd}_]*)\s*\(/u.exec(written);
  if (word !== null && offset <= span.start + word[1]!.length) {
    const record = functionRecord(normalName(word[1]!));
    return record !== null || word[1] === 'M' ? functionBlocks(record) : [];
  }
  return amountBlocks(written);
}

function requirement(place: Place): readonly Block[] {
  const { results, node } = place;
  const judged = results?.snapshot.requirements.find((r) => r.statement === node.id);
  return judged === undefined ? [] : [...requirementBlocks(results!, judged), freshness(place)];
}

function signal(written: string): readonly Block[] {
  const record = signalRecord(written);
  return record === null ? [] : signalBlocks(record);
}

function fileOf({ statement }: StatementNode): string | null {
  if (statement === null) return null;
  return 'file' in statement
    ? statement.file
    : 'of' in statement && typeof statement.of === 'string'
      ? statement.of
      : null;
}

/** In a line that cannot be read, the names are known all the same. */
function wordBlocks(place: Place): Told | null {
  const { document, node, offset } = place;
  if (!node.broken) return null;
  const { text } = document.tree;
  const start = offset - /[\p{L}\p{M}\p{Nd}_]*$/u.exec(text.slice(node.span.start, offset))![0].length;
  const end = offset + /^[\p{L}\p{M}\p{Nd}_]*/u.exec(text.slice(offset, node.span.end))![0].length;
  const name = normalName(text.slice(start, end));
  const known = name !== '' && name !== kindOf(document.tree, node);
  const blocks = known ? nameBlocks(place, name) : [];
  return blocks.length === 0 ? null : { blocks, span: { start, end } };
}

function freshness({ workspace, document, results }: Place): Block {
  return plain(freshnessWords(workspace, document, results));
}
