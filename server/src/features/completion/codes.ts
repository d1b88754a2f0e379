import { limitText } from '../../findings/page';
import { findingTable, settableLimit } from '../../findings/table';
import type { Span } from '../../base/span';
import type { CompletionContext } from './context';
import type { Offer } from './offer';

/** Codes hold hyphens: a code goes back over them. */
export function codeSpan({ cursor, document }: CompletionContext): Span {
  const left = document.tree.text.slice(cursor.line.start, cursor.typed.end);
  return { start: cursor.typed.end - /[a-z0-9-]*$/.exec(left)![0].length, end: cursor.typed.end };
}

/** Codes that `allow` accepts: what is found now first. `behind`: the reason is still to be written. */
export function allowedCodes(context: CompletionContext, behind: string): Offer[] {
  const found = new Set(
    (context.results?.snapshot.findings ?? []).filter((f) => f.allowed === null).map((f) => f.code as string),
  );
  return [...findingTable.values()]
    .filter((record) => record.allowable)
    .sort((a, b) => Number(found.has(b.code)) - Number(found.has(a.code)))
    .map((record) => ({
      ...codeOffer(context, record.code, behind),
      detail: found.has(record.code) ? `${record.title} (found now)` : record.title,
    }));
}

/** Codes with a limit that `rule` sets. */
export function ruledCodes(context: CompletionContext): Offer[] {
  return [...findingTable.values()].flatMap((record) => {
    const limit = settableLimit(record.code);
    if (limit === null) return [];
    return [{ ...codeOffer(context, record.code, ''), detail: `${record.title}: ${limitText(limit)}` }];
  });
}

function codeOffer(context: CompletionContext, code: string, behind: string): Offer {
  const write = context.cursor.rest.trim() === '' && behind !== '';
  return {
    label: code,
    kind: 'code',
    replace: codeSpan(context),
    ...(write ? { insert: `${code} ${behind}`, snippet: `${code} ${behind.replace('""', '"${1:reason}"')}` } : {}),
    doc: { of: 'code', name: code },
  };
}

/** `because ""`, with the cursor between the marks where the client can. */
export function reasonOffer(): Offer {
  return {
    label: 'because',
    kind: 'keyword',
    detail: 'the reason, which reports print',
    insert: 'because ""',
    snippet: 'because "${1:reason}"',
  };
}
