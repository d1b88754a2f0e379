import type { Position, Range } from 'vscode-languageserver-types';
import { TextPositions } from '../../../server/src/features/positions';
import type { GlossDocument } from '../../../server/src/features/workspace';
import { LiveWorkspace } from '../../../server/src/lsp/liveWorkspace';
import { MemoryOutside } from '../../lsp/support/memoryOutside';

/** A text with its marks taken out: `|` is the cursor, `«` and `»` enclose ranges. */
export interface Marked {
  readonly text: string;
  readonly cursor: Position;
  readonly ranges: readonly Range[];
}

export function marked(source: string): Marked {
  let text = '';
  let cursor: number | null = null;
  const opened: number[] = [];
  const spans: { start: number; end: number }[] = [];
  for (const c of source) {
    if (c === '|') cursor = text.length;
    else if (c === '«') opened.push(text.length);
    else if (c === '»') spans.push({ start: opened.pop()!, end: text.length });
    else text += c;
  }
  spans.sort((a, b) => a.start - b.start || b.end - a.end);
  const positions = new TextPositions(text);
  return { text, cursor: positions.position(cursor ?? 0), ranges: spans.map((s) => positions.range(s)) };
}

export interface Bench {
  readonly workspace: LiveWorkspace;
  readonly outside: MemoryOutside;
  readonly uri: string;
  readonly marks: Marked;
  /** The open document, names resolved. */
  document(): Promise<GlossDocument>;
  /** Waits until its results are there. */
  settled(): Promise<void>;
}

/** Opens a marked gloss as `/lab/a.gloss` among the files given; faults of the server fail the test. */
export function bench(source: string, files: Readonly<Record<string, string | Uint8Array>> = {}): Bench {
  const marks = marked(source);
  const outside = new MemoryOutside({ 'a.gloss': marks.text, ...files });
  const workspace = new LiveWorkspace(outside, {
    started: () => undefined,
    ended: () => undefined,
    finished: () => undefined,
    closed: () => undefined,
    fault: (what, error) => {
      throw new Error(what, { cause: error });
    },
  });
  const uri = 'file:///lab/a.gloss';
  workspace.open(uri, 1, marks.text);
  return {
    workspace,
    outside,
    uri,
    marks,
    document: async () => (await workspace.document(uri))!,
    settled: async () => {
      await workspace.currentResults(uri);
    },
  };
}
