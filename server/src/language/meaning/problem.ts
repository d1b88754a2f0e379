import type { FindingCode } from '../../findings/codes';

/** Something wrong with a statement, still without knowing in which text it stands. */
export interface Problem {
  readonly code: FindingCode;
  /** A token of the statement. */
  readonly token: string;
  readonly message: string;
  readonly fixes: readonly ProblemFix[];
  /** Only this stretch of the token, from its start. */
  readonly within?: { readonly offset: number; readonly length: number };
}

export interface ProblemFix {
  readonly title: string;
  readonly edit: 'replace' | 'insert-after';
  readonly token: string;
  readonly text: string;
}

export function problem(
  code: FindingCode,
  token: string,
  message: string,
  fixes: readonly (ProblemFix | null)[] = [],
): Problem {
  return { code, token, message, fixes: fixes.filter((fix) => fix !== null) };
}

export function replacing(token: string, text: string, title = `Write \`${text}\``): ProblemFix {
  return { title, edit: 'replace', token, text };
}

export function inserting(token: string, text: string): ProblemFix {
  return { title: `Add \`${text.trim()}\``, edit: 'insert-after', token, text };
}
