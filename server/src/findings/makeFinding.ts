import type { FindingCode } from './codes';
import type { Anchor, Finding, Fix, RelatedPlace, Severity } from './finding';
import { defaultSeverity } from './table';

/** A finding with what is usual: the severity of its record, no related places, no fixes, about its own statement. */
export function makeFinding(
  code: FindingCode,
  at: Anchor,
  message: string,
  more: {
    readonly severity?: Severity;
    readonly related?: readonly RelatedPlace[];
    readonly fixes?: readonly Fix[];
    readonly about?: string | null;
    readonly only?: readonly string[];
  } = {},
): Finding {
  return {
    code,
    severity: more.severity ?? defaultSeverity(code),
    at,
    message,
    related: more.related ?? [],
    fixes: more.fixes ?? [],
    about: more.about ?? null,
    ...(more.only === undefined ? {} : { only: more.only }),
  };
}
