import type { CancellationToken } from 'vscode-languageserver';
import { ResponseError, LSPErrorCodes } from 'vscode-languageserver';

/**
 * A fault in one request spoils one answer, never the server: it is logged and answered with `empty`. What the client
 * no longer wants is answered as cancelled.
 */
export type Guard = <P, R>(
  what: string,
  empty: R,
  answer: (params: P, token: CancellationToken) => Promise<R> | R,
) => (params: P, token: CancellationToken) => Promise<R>;

export function guardWith(fault: (what: string, error: unknown) => void): Guard {
  return (what, empty, answer) => async (params, token) => {
    try {
      const made = await answer(params, token);
      if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
      return made;
    } catch (error) {
      if (error instanceof ResponseError) throw error;
      fault(what, error);
      return empty;
    }
  };
}
