import type { KeptView } from '../../server/src/protocol/messages';
import type {
  CursorAnswer,
  EdgePreview,
  Freshness,
  TextRange,
  ViewChoices,
  ViewState,
} from '../../server/src/protocol/view';
import type { Palette } from './colour/palette';
import type { Frame } from './draw/frame';
import type { EdgeMove } from './geometry/edgeMove';
import type { CurveBlocks } from './state/blocks';
import type { KeptAction } from './state/kept';

/** Everything one redraw shows. Parts read it and keep nothing of it. */
export interface Look {
  readonly state: ViewState;
  readonly kept: KeptView;
  readonly freshness: Freshness;
  readonly connection: { readonly up: boolean; readonly text: string };
  readonly frame: Frame;
  readonly blocks: ReadonlyMap<string, CurveBlocks>;
  readonly colours: Palette;
  readonly move: EdgeMove | null;
  readonly preview: EdgePreview | null;
  /** Place of the hairline and the signals there, as far as they have been answered. */
  readonly cursor: { readonly at: number; readonly answer: CursorAnswer | null } | null;
}

/** What a person can do, whichever part it is done in. */
export interface Actions {
  keep(action: KeptAction): void;
  choose(choices: Partial<ViewChoices>): void;
  /** As they are now, also before the next redraw. */
  choices(): ViewChoices;
  /** Selects without moving the caret. */
  select(statement: string | null): void;
  /** Selects and takes the caret to the statement. */
  activate(statement: string): void;
  reveal(uri: string, statement: string | null, range: TextRange | null): void;
  pin(pinned: boolean): void;
  command(command: string, argument: string): void;
  /** Words beside what was done; an alert where it failed. */
  tell(text: string, kind?: 'done' | 'alert'): void;
}

/** A place on a line as it is shown (counted from 1), for the editor. */
export function startOfLine(line: number): TextRange {
  const at = { line: Math.max(0, line - 1), character: 0 };
  return { start: at, end: at };
}
