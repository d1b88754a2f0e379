import type { Measure } from '../../language/vocabulary/measures';
import type { LineToken } from '../lineTokens';
import { from, isSign, isWord, knownNames, segmentNames, type CompletionContext } from './context';
import type { Offer } from './offer';
import { unitOffers, unitsOf } from './units';
import { aroundOffers, windowOffers } from './windows';

const place: readonly Measure[] = ['temperature', 'time'];

/** A window and its segment: `kind` of the statement, and what of its place is written. */
export async function placeOffers(
  context: CompletionContext,
  kind: string,
  tokens: readonly LineToken[],
): Promise<Offer[]> {
  const { cursor, document } = context;
  const last = tokens.at(-1);
  const segment = segmentOffers(context, tokens);
  if (segment !== null) return segment;
  if (last === undefined) {
    return [
      ...(await windowOffers(context, kind, cursor.typed)),
      { label: 'around', kind: 'keyword', insert: 'around ', detail: 'the ends are found from there outward' },
      { label: 'in', kind: 'keyword', insert: 'in ', detail: 'a segment of the run' },
    ];
  }
  if (isWord(last, 'around')) return aroundOffers(context, kind, cursor.typed);
  const around = tokens.findIndex((t) => isWord(t, 'around'));
  if (isWord(last, 'within')) return [];
  if (last.kind === 'number') {
    const units = unitsOf(isWord(tokens.at(-2), 'within') ? ['difference', 'time'] : place);
    const windows = around < 0 ? await windowOffers(context, kind, from(cursor, tokens[0])) : [];
    return [...unitOffers(cursor, document.tree.text, units), ...windows];
  }
  if (isSign(last, '..')) return windowOffers(context, kind, from(cursor, tokens[0]));
  if (last.kind !== 'unit') return [];
  const within = tokens.some((t) => isWord(t, 'within'));
  return [
    ...(around >= 0 && !within ? [{ label: 'within', kind: 'keyword', insert: 'within ' } satisfies Offer] : []),
    { label: 'in', kind: 'keyword', insert: 'in ', detail: 'a segment of the run' },
  ];
}

/** Behind `in`, `of` or `from`: the segments of the run; null where none is due. */
export function segmentOffers(context: CompletionContext, tokens: readonly LineToken[]): Offer[] | null {
  const last = tokens.at(-1);
  const begun = last?.kind === 'word' && ['heating', 'cooling', 'hold'].includes(last.text);
  const before = begun ? tokens.at(-2) : last;
  if (!['in', 'of', 'from'].some((word) => isWord(before, word))) return null;
  return namesOfSegments(context, begun ? last : undefined);
}

function namesOfSegments(context: CompletionContext, begun: LineToken | undefined): Offer[] {
  const segments = context.results?.snapshot.run?.segments ?? [];
  return segmentNames(context.results).map((name) => {
    const segment = segments.find((s) => s.name === name);
    const gas = segment?.gas ?? null;
    return {
      label: name,
      kind: 'value',
      replace: from(context.cursor, begun),
      ...(gas === null ? {} : { detail: gas }),
    };
  });
}

/** Statements of these kinds, for places that name one. */
export function namesOfKinds(context: CompletionContext, kinds: readonly string[] | null): Offer[] {
  const own = context.cursor.owner?.name ?? null;
  return knownNames(context.document)
    .filter(({ name, kind }) => name !== own && (kinds === null || kinds.includes(kind)))
    .map(({ name, kind, file }) => ({
      label: name,
      kind: 'name',
      detail: file === 'method' ? `${kind} of the method` : kind,
    }));
}
