import type { Position, Range } from 'vscode-languageserver-types';
import { occurrenceAt, occurrencesOfName } from './names/occurrences';
import { methodOf, usedMethod } from './names/scope';
import type { GlossDocument } from './workspace';

/**
 * The places of a name that belongs to this run alone, to be typed over together. A name that a method shares has other
 * glosses behind it and is changed by rename.
 */
export function linkedNames(document: GlossDocument, position: Position): { ranges: Range[] } | null {
  if (document.tree.role !== 'run') return null;
  const at = occurrenceAt(document.tree, document.positions.offset(position));
  if (at === null) return null;
  const method = methodOf(document);
  if (method === null ? usedMethod(document) !== null : occurrencesOfName(method.tree, at.name).length > 0) return null;
  const places = occurrencesOfName(document.tree, at.name);
  // Written in two ways (composed and not) they are one name and not one text.
  const written = new Set(places.map(({ span }) => document.tree.text.slice(span.start, span.end)));
  if (places.length < 2 || written.size > 1) return null;
  return { ranges: places.map(({ span }) => document.positions.range(span)) };
}
