import type { TextRange } from '../../../server/src/protocol/view';

/** A view that may be told where the caret stands. */
export interface CaretTarget {
  /** It shows statements of that text: its own gloss, or the method of it. */
  shows(uri: string): boolean;
  /** Visible, ready, and not paused by the setting. */
  readonly listening: boolean;
  caret(statement: string | null): void;
}

interface Asked {
  readonly uri: string;
  readonly selection: TextRange;
}

/**
 * The caret's way to the curves. It goes one way only: a caret that was moved by the view itself is not told back to it,
 * and nothing is told twice.
 */
export class CaretSync<T extends CaretTarget> {
  /** Where the view has sent the caret, until the editor reports it there. */
  private sent: Asked | null = null;
  private next: Asked | null = null;
  private asking = false;
  /** Counts what the view has sent: an answer about a place before that is dropped. */
  private turns = 0;
  private readonly told = new WeakMap<T, { readonly uri: string; readonly statement: string | null }>();

  /** @param statementAt what stands at a place of a text; null between statements. */
  constructor(
    private readonly statementAt: (uri: string, position: TextRange['start']) => Promise<string | null>,
    private readonly targets: () => readonly T[],
  ) {}

  /** The view asked to move the caret: the report of it is the echo to keep quiet about. */
  revealing(target: T, uri: string, selection: TextRange, statement: string | null): void {
    this.turns++;
    this.next = null;
    this.sent = { uri, selection };
    this.told.set(target, { uri, statement });
  }

  /** The editor reports a caret. Resolves when the views have been told. */
  async moved(uri: string, selection: TextRange): Promise<void> {
    const echo = this.sent !== null && this.sent.uri === uri && sameRange(this.sent.selection, selection);
    if (this.sent?.uri === uri) this.sent = null;
    if (echo || !this.targets().some((t) => t.shows(uri) && t.listening)) return;
    this.next = { uri, selection };
    if (this.asking) return;
    this.asking = true;
    try {
      // Only the last of the moves that came meanwhile is asked about.
      while (this.next !== null) await this.ask();
    } finally {
      this.asking = false;
    }
  }

  /** A view shows something else, or has lost what it was told. */
  forget(target: T): void {
    this.told.delete(target);
  }

  private async ask(): Promise<void> {
    const { uri, selection } = this.next!;
    const { turns } = this;
    this.next = null;
    const statement = await this.statementAt(uri, selection.start);
    if (this.next !== null || turns !== this.turns) return;
    for (const target of this.targets()) {
      if (!target.shows(uri) || !target.listening) continue;
      const told = this.told.get(target);
      if (told?.uri === uri && told.statement === statement) continue;
      this.told.set(target, { uri, statement });
      target.caret(statement);
    }
  }
}

function sameRange(a: TextRange, b: TextRange): boolean {
  return (
    a.start.line === b.start.line &&
    a.start.character === b.start.character &&
    a.end.line === b.end.line &&
    a.end.character === b.end.character
  );
}
