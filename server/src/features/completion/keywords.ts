import { keywordsIn, recordsOf, statements } from '../../language/vocabulary/statements';
import type { Role, StatementRecord } from '../../language/vocabulary/record';
import type { Cursor } from '../cursor';
import { kindOf, knownNames, type CompletionContext } from './context';
import { formSnippet } from './formSnippet';
import type { Offer } from './offer';

/** The words a statement may begin with here: by role, without those that stand once and stand already. */
export function keywordOffers({ document, cursor }: CompletionContext): Offer[] {
  const { tree } = document;
  const others = tree.statements.filter((s) => s !== cursor.owner);
  const first = !others.some((s) => s.span.start < cursor.line.start);
  if (first) {
    // What stands first says what the text is; the other role is offered as long as nothing else is written.
    const roles: Role[] = others.length === 0 || tree.role === null ? ['run', 'method'] : [tree.role];
    return roles
      .flatMap((role) => recordsOf(role).filter((r) => r.roles.includes(role) && r.keyword === role))
      .slice(0, 2)
      .map((r) => keywordOffer(r, cursor));
  }
  const role = tree.role ?? 'run';
  const there = new Set(others.map((node) => kindOf(tree, node)));
  const records = statements.filter((r) => r.roles.includes(role) && (r.repeatable || !there.has(r.kind)));
  const offers = records.filter((r) => r.kind !== role).map((r) => keywordOffer(r, cursor));
  const override = keywordsIn(role).includes('override') && overridable(document).length > 0;
  return override ? [...offers, overrideOffer()] : offers;
}

/** Behind `override`: the kinds of which the method has a statement. */
export function overridableKeywords({ document, cursor }: CompletionContext): Offer[] {
  const kinds = new Set(overridable(document).map((n) => n.kind));
  return statements
    .filter((r) => r.overridable && kinds.has(r.kind))
    .map((r) => ({ ...keywordOffer(r, cursor), snippet: undefined }));
}

/** The statements of the method that may be overridden. */
export function overridable(document: CompletionContext['document']): ReturnType<typeof knownNames> {
  const kinds = new Set<string>(statements.filter((r) => r.overridable).map((r) => r.kind));
  return knownNames(document).filter(({ kind, file }) => file === 'method' && kinds.has(kind));
}

function keywordOffer(record: StatementRecord, cursor: Cursor): Offer {
  const alone = cursor.rest.trim() === '';
  return {
    label: record.keyword,
    kind: 'keyword',
    detail: record.form,
    ...(alone
      ? { insert: record.form.includes(' ') ? `${record.keyword} ` : record.keyword, snippet: formSnippet(record.form) }
      : {}),
    doc: { of: 'statement', kind: record.kind },
  };
}

function overrideOffer(): Offer {
  return {
    label: 'override',
    kind: 'keyword',
    detail: 'a statement of the method, changed with a reason',
    insert: 'override ',
  };
}
