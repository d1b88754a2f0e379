import { InlayHintKind, type InlayHint, type Range } from 'vscode-languageserver-types';
import type { StatementNode } from '../../language/tree';
import type { Abilities } from '../abilities';
import { methodPlace, windowBlocks } from '../hover/places';
import { freshnessWords } from '../hover/freshness';
import { requirementBlocks, statementResultBlocks, usual } from '../hover/resultBlocks';
import { markup, plain, type Block } from '../prose';
import { isCurrent, type GlossDocument, type Results, type Workspace } from '../workspace';
import { fit, type Fitting } from './fit';
import { foundWindowTexts, resultTexts, verdictTexts, windowTexts } from './texts';

/** What a hint is about, for its tooltip. */
export interface HintData {
  readonly uri: string;
  readonly of: 'result' | 'window' | 'verdict';
  /** Name of the statement, or id of the requirement. */
  readonly name: string;
}

interface Wanted {
  readonly at: number;
  readonly texts: Fitting;
  readonly data: HintData;
}

/**
 * Results, verdicts and found windows beside their lines, each kind as the settings have it. They are those of the last
 * evaluation, placed by the present text; what belongs to an older one says so. Nothing waits for numbers.
 */
export function inlayHints(workspace: Workspace, document: GlossDocument, range: Range): InlayHint[] {
  const results = workspace.results(document.uri);
  const span = document.positions.span(range);
  const seen = new Set<string>();
  return document.tree.statements.flatMap((node) => {
    const first = node.name === null || !seen.has(node.name);
    if (node.name !== null) seen.add(node.name);
    // Only the head line carries hints.
    const head = node.tokens.get('head') ?? node.span;
    if (!first || head.start > span.end || head.end < span.start) return [];
    return ofStatement(workspace, document, results, node);
  });
}

function ofStatement(
  workspace: Workspace,
  document: GlossDocument,
  results: Results | null,
  node: StatementNode,
): InlayHint[] {
  const { inline } = workspace.settings(document.uri);
  const wanted: Wanted[] = [];
  if (inline.windows) wanted.push(...windowHints(document, results, node));
  if (inline.results) wanted.push(...resultHints(document, results, node));
  if (inline.verdicts) wanted.push(...verdictHints(document, results, node));
  const texts = fit(wanted.map((w) => w.texts));
  return wanted.flatMap(({ at, data }, i) => {
    const label = texts[i]!;
    if (label === '') return [];
    const kind = data.of === 'window' ? InlayHintKind.Parameter : InlayHintKind.Type;
    return [{ position: document.positions.position(at), label, kind, paddingLeft: true, data }];
  });
}

function resultHints(document: GlossDocument, results: Results | null, node: StatementNode): Wanted[] {
  const result = results === null || node.name === null ? null : usual(ownResults(results, node.name));
  if (result === null) return [];
  return [
    {
      at: headEnd(node),
      texts: resultTexts(result, !isCurrent(document, results)),
      data: { uri: document.uri, of: 'result', name: result.name },
    },
  ];
}

/** The ends an `around` found, and what the method has where this gloss overrides it. */
function windowHints(document: GlossDocument, results: Results | null, node: StatementNode): Wanted[] {
  const window = node.tokens.get('window');
  const { name } = node;
  if (window === undefined || name === null) return [];
  const result = results === null ? null : usual(ownResults(results, name));
  const found = result === null ? [] : foundWindowTexts(result, !isCurrent(document, results));
  const method = methodPlace(document, name);
  const texts = found.length > 0 ? found : method === null ? [] : windowTexts(`method ${method}`);
  return texts.length === 0 ? [] : [{ at: window.end, texts, data: { uri: document.uri, of: 'window', name } }];
}

function verdictHints(document: GlossDocument, results: Results | null, node: StatementNode): Wanted[] {
  const judged = results?.snapshot.requirements.find((r) => r.statement === node.id && r.file === 'gloss');
  if (judged === undefined) return [];
  return [
    {
      at: headEnd(node),
      texts: verdictTexts(judged, !isCurrent(document, results)),
      data: { uri: document.uri, of: 'verdict', name: node.id },
    },
  ];
}

function ownResults(results: Results, name: string) {
  return results.snapshot.results.filter((r) => r.name === name);
}

function headEnd(node: StatementNode): number {
  return (node.tokens.get('head') ?? node.span).end;
}

/** A hint with its tooltip: what a hover on its statement tells. */
export async function resolveHint(workspace: Workspace, hint: InlayHint, abilities: Abilities): Promise<InlayHint> {
  const data = hint.data as HintData | undefined;
  const document = typeof data?.uri === 'string' ? await workspace.document(data.uri) : null;
  const results = document === null ? null : workspace.results(document.uri);
  if (data === undefined || document === null || results === null) return hint;
  const blocks = tooltip(document, results, data);
  if (blocks.length === 0) return hint;
  const age = plain(freshnessWords(workspace, document, results));
  return { ...hint, tooltip: markup([...blocks, age], abilities.hoverFormat) };
}

function tooltip(document: GlossDocument, results: Results, { of, name }: HintData): readonly Block[] {
  if (of === 'result') return statementResultBlocks(results, name);
  if (of === 'window') return windowBlocks(document, results, name);
  const judged = results.snapshot.requirements.find((r) => r.statement === name);
  return judged === undefined ? [] : requirementBlocks(results, judged);
}
