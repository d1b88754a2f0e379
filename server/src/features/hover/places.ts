import type { StatementNode } from '../../language/tree';
import { usual } from './resultBlocks';
import { partWords } from '../../presentation/plot/headline';
import { ResultDetails } from '../../presentation/plot/rowDetails';
import { FindingsByName } from '../../presentation/plot/viewFindings';
import { shownWindow } from '../../presentation/shown';
import { SnapshotTexts } from '../../presentation/statements';
import { rows, title, type Block } from '../prose';
import type { GlossDocument, Results } from '../workspace';

/** A window as it lies on the run: ends, segment, who found them, how much each matters. */
export function windowBlocks(document: GlossDocument, results: Results, name: string): readonly Block[] {
  const { snapshot } = results;
  const own = snapshot.results.filter((r) => r.name === name);
  const result = usual(own);
  if (result === null) return [];
  const details = new ResultDetails(snapshot, new SnapshotTexts(snapshot), new FindingsByName(snapshot)).of(result);
  const edges = details.find((d) => d.label === 'Edges')?.text ?? '';
  const { window, segment } = result;
  return [
    title(`window of ${name}`),
    rows(
      ['Window', [shownWindow(window), segment === null ? '' : `in ${segment}`].filter((t) => t !== '').join(' ')],
      ['In the method', methodPlace(document, name)],
      [`Moves ${result.id}`, edges],
      ...details
        .filter((d) => d.label === 'Finding' || d.label === 'Note')
        .map((d): [string, string] => [d.label, d.text]),
    ),
  ];
}

/** The place that the method writes, where this gloss overrides it. */
export function methodPlace({ tree, method }: GlossDocument, name: string): string | null {
  const overridden = tree.statements.some((s) => s.name === name && s.statement?.override === true);
  const node = overridden ? method?.tree.statements.find((s) => s.name === name) : undefined;
  return node === undefined ? null : placeText(method!.tree.text, node);
}

function placeText(text: string, { tokens }: StatementNode): string | null {
  const window = tokens.get('window');
  const segment = tokens.get('segment');
  const words = (span: { readonly start: number; readonly end: number }): string => text.slice(span.start, span.end);
  if (window === undefined) return segment === undefined ? null : `in ${words(segment)}`;
  return segment === undefined ? words(window) : `${words(window)} in ${words(segment)}`;
}

/** A segment as it was found in the data. */
export function segmentBlocks(results: Results | null, name: string): readonly Block[] {
  const segment = results?.snapshot.run?.segments.find((s) => s.name === name.replace(/\s+/g, ' '));
  if (segment === undefined) return [];
  return [title(partWords(segment)), rows(['gas', segment.gas])];
}
