import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';
import { TextPositions, type PositionEncoding } from '../features/positions';

export interface OpenText {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
  readonly positions: TextPositions;
}

/** The texts that are open in the client, by URI. */
export class OpenTexts {
  private readonly texts = new Map<string, OpenText>();
  encoding: PositionEncoding = 'utf-16';

  get(uri: string): OpenText | null {
    return this.texts.get(uri) ?? null;
  }

  all(): readonly OpenText[] {
    return [...this.texts.values()];
  }

  open(uri: string, version: number, text: string): OpenText {
    return this.put(uri, version, text);
  }

  /** Changes in order, each on the text the one before left; null where the document is not open. */
  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): OpenText | null {
    const known = this.texts.get(uri);
    if (known === undefined) return null;
    let { text, positions } = known;
    for (const change of changes) {
      if (!('range' in change)) text = change.text;
      else {
        const start = positions.raw(change.range.start);
        const end = Math.max(positions.raw(change.range.end), start);
        text = text.slice(0, start) + change.text + text.slice(end);
      }
      positions = new TextPositions(text, this.encoding);
    }
    return this.put(uri, version, text, positions);
  }

  close(uri: string): void {
    this.texts.delete(uri);
  }

  private put(uri: string, version: number, text: string, positions?: TextPositions): OpenText {
    const open = { uri, version, text, positions: positions ?? new TextPositions(text, this.encoding) };
    this.texts.set(uri, open);
    return open;
  }
}
