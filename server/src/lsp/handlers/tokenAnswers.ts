import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver';
import { tokensDelta } from '../../features/tokens/tokens';

/** The tokens last answered for each document, so that the next answer is what changed. */
export class TokenAnswers {
  private readonly last = new Map<string, { readonly resultId: string; readonly data: readonly number[] }>();
  private count = 0;

  full(uri: string, data: number[]): SemanticTokens {
    return { resultId: this.keep(uri, data), data };
  }

  /** Against another answer than the last the whole is sent. */
  delta(uri: string, data: number[], previous: string): SemanticTokens | SemanticTokensDelta {
    const known = this.last.get(uri);
    if (known?.resultId !== previous) return this.full(uri, data);
    return { resultId: this.keep(uri, data), edits: tokensDelta(known.data, data) };
  }

  forget(uri: string): void {
    this.last.delete(uri);
  }

  private keep(uri: string, data: readonly number[]): string {
    this.count += 1;
    const resultId = `${this.count}`;
    this.last.set(uri, { resultId, data });
    return resultId;
  }
}
