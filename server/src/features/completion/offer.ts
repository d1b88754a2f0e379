import { CompletionItemKind, InsertTextFormat, type CompletionItem } from 'vscode-languageserver-types';
import type { Span } from '../../base/span';
import type { Cursor } from '../cursor';
import type { Abilities } from '../abilities';
import type { TextPositions } from '../positions';
import type { DocKey } from './docs';

/** One thing that may be written at the cursor. */
export interface Offer {
  readonly label: string;
  readonly kind: OfferKind;
  /** Text to write; absent: the label. */
  readonly insert?: string;
  /** The same with places to fill in, for clients that jump between them. */
  readonly snippet?: string;
  /** One line: what it is, or what it would give. */
  readonly detail?: string;
  /** What its documentation is about; told when it is looked at. */
  readonly doc?: DocKey;
  /** What is replaced, where it is not the word being typed. */
  readonly replace?: Span;
  /** What the typed text is compared with; absent: the label. */
  readonly filter?: string;
  /** Characters that take the offer and are then written. */
  readonly commit?: readonly string[];
}

const kinds = {
  keyword: CompletionItemKind.Keyword,
  clause: CompletionItemKind.Property,
  choice: CompletionItemKind.EnumMember,
  window: CompletionItemKind.Event,
  statement: CompletionItemKind.Snippet,
  name: CompletionItemKind.Variable,
  quantity: CompletionItemKind.Field,
  function: CompletionItemKind.Function,
  formula: CompletionItemKind.Constant,
  unit: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
  material: CompletionItemKind.Value,
  code: CompletionItemKind.Reference,
  file: CompletionItemKind.File,
  folder: CompletionItemKind.Folder,
} as const;

export type OfferKind = keyof typeof kinds;

/** What `completionItem/resolve` needs to tell more. */
export interface CompletionData {
  readonly doc: DocKey;
}

/** Offers in their order as items of the protocol. */
export function completionItems(
  offers: readonly Offer[],
  { typed, wordEnd }: Pick<Cursor, 'typed' | 'wordEnd'>,
  positions: TextPositions,
  abilities: Abilities,
): CompletionItem[] {
  return offers.map((offer, index) => {
    const snippet = abilities.snippets ? offer.snippet : undefined;
    const filter = offer.filter ?? offer.label;
    const data: CompletionData | null = offer.doc === undefined ? null : { doc: offer.doc };
    return {
      label: offer.label,
      kind: kinds[offer.kind],
      ...detailOf(offer, abilities),
      ...(filter === offer.label ? {} : { filterText: filter }),
      sortText: String(index).padStart(4, '0'),
      insertTextFormat: snippet === undefined ? InsertTextFormat.PlainText : InsertTextFormat.Snippet,
      textEdit: editOf(offer, snippet ?? offer.insert ?? offer.label, offer.replace ?? typed),
      ...(abilities.commitCharacters && offer.commit !== undefined ? { commitCharacters: [...offer.commit] } : {}),
      ...(data === null ? {} : { data }),
    };
  });

  function editOf(offer: Offer, newText: string, over: Span): CompletionItem['textEdit'] {
    const insert = positions.range(over);
    if (!abilities.insertReplace || offer.replace !== undefined || wordEnd <= over.end)
      return { range: insert, newText };
    return { newText, insert, replace: positions.range({ start: over.start, end: wordEnd }) };
  }
}

function detailOf({ detail }: Offer, abilities: Abilities): Pick<CompletionItem, 'detail' | 'labelDetails'> {
  if (detail === undefined) return {};
  return abilities.labelDetails ? { detail, labelDetails: { description: detail } } : { detail };
}

/** Text as it is within a snippet. */
export function inSnippet(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}

/** A value that may stand there as it is. */
export function value(text: string, detail?: string): Offer {
  return { label: text, kind: 'value', ...(detail === undefined ? {} : { detail }) };
}
