import type { CompletionItem, CompletionList, Position } from 'vscode-languageserver-types';
import type { Abilities } from '../abilities';
import { cursorAt, type Cursor } from '../cursor';
import { isCurrent, type GlossDocument, type Workspace } from '../workspace';
import { clauseValueOffers, clauseWordOffers } from './clauses';
import type { CompletionContext } from './context';
import { docBlocks } from './docs';
import { headOffers } from './heads';
import { keywordOffers, overridableKeywords } from './keywords';
import { completionItems, type CompletionData, type Offer } from './offer';
import { statementOffers } from './windows';
import { markup } from '../prose';

/** Tables of substances are long; no list is longer than this. */
const most = 400;

/** What may be written at a place of a gloss. Names, values and windows come from the last results and from the run. */
export async function completion(
  workspace: Workspace,
  document: GlossDocument,
  position: Position,
  abilities: Abilities,
): Promise<CompletionList> {
  const cursor = cursorAt(document.tree, document.positions.offset(position));
  const context: CompletionContext = {
    workspace,
    document,
    cursor,
    results: workspace.results(document.uri),
    abilities,
  };
  const { offers, more } = await offersAt(context);
  return {
    isIncomplete: more || offers.length > most,
    items: completionItems(offers.slice(0, most), cursor, document.positions, abilities),
  };
}

async function offersAt(
  context: CompletionContext,
): Promise<{ readonly offers: readonly Offer[]; readonly more: boolean }> {
  const { cursor } = context;
  const done = (offers: readonly Offer[]) => ({ offers, more: false });
  if (cursor.place === 'comment' || (cursor.quoted !== null && !namesAFile(cursor))) return done([]);
  const { before, record } = cursor;
  if (cursor.place === 'clause') {
    if (record === null) return done([]);
    return done(
      before.length === 0 ? clauseWordOffers(context, record) : await clauseValueOffers(context, record, before),
    );
  }
  if (before.length === 0) return lineOffers(context);
  if (cursor.override && before.length === 1) return done(overridableKeywords(context));
  return done(record === null ? [] : await headOffers(context, record, before.slice(cursor.override ? 2 : 1)));
}

/** At the start of a line: keywords, and what the run shows. Where the run is not read yet, the answer does not wait for it. */
async function lineOffers(
  context: CompletionContext,
): Promise<{ readonly offers: readonly Offer[]; readonly more: boolean }> {
  const { document, cursor, results } = context;
  const keywords = keywordOffers(context);
  if (cursor.rest.trim() !== '' || document.tree.role !== 'run') return { offers: keywords, more: false };
  const shown = statementOffers(context);
  const read = isCurrent(document, results) || (results?.snapshot.run ?? null) !== null;
  const found = read ? await shown : await Promise.race([shown, document.project.host.pause().then(() => null)]);
  return { offers: [...(found ?? []), ...keywords], more: found === null };
}

/** Within quotation marks something is known of file names and of headers only. */
function namesAFile({ place, record, before }: Cursor): boolean {
  if (place === 'head') return record !== null && record.form.includes('"FILE"');
  return record?.kind === 'columns' && before.length > 0;
}

/** An item with its documentation. */
export function resolveCompletion(workspace: Workspace, item: CompletionItem, abilities: Abilities): CompletionItem {
  const data = item.data as CompletionData | undefined;
  if (data?.doc === undefined) return item;
  const blocks = docBlocks(data.doc, workspace);
  return blocks.length === 0 ? item : { ...item, documentation: markup(blocks, abilities.completionFormat) };
}
