import type { Middleware } from 'vscode-languageclient';
import type { Holding } from './holding';

/** What a person switched off for the moment, without a setting. */
export interface InlineSwitch {
  readonly shown: boolean;
}

/** Keeps what is shown while a lost server is replaced, and inline results out of sight while they are switched off. */
export function middleware(holding: Holding, inline: InlineSwitch): Middleware {
  return {
    provideInlayHints: async (document, range, token, next) => {
      if (!inline.shown) return [];
      return answered(holding, document.uri.toString(), token, () => next(document, range, token));
    },
    provideDiagnostics: (document, previous, token, next) => {
      const uri = ('uri' in document ? document.uri : document).toString();
      return answered(holding, uri, token, () => next(document, holding.own(uri, previous), token));
    },
    handleDiagnostics: (uri, diagnostics, next) => {
      if (!holding.holds(uri.toString())) return next(uri, diagnostics);
      void holding.released(uri.toString()).then(() => next(uri, diagnostics));
    },
  };
}

/** Asks when the document is not held; asks once more where the server was lost over the question. */
async function answered<T>(
  holding: Holding,
  uri: string,
  token: { readonly isCancellationRequested: boolean },
  ask: () => T | PromiseLike<T>,
): Promise<T> {
  await holding.released(uri);
  try {
    return await ask();
  } catch (error) {
    if (token.isCancellationRequested || !holding.holds(uri)) throw error;
    await holding.released(uri);
    return ask();
  }
}
