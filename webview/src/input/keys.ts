import type { Range } from '../../../server/src/protocol/view';
import type { Frame } from '../draw/frame';
import { panned, zoomAbout } from '../geometry/zoom';

export interface KeysOutside {
  frame(): Frame | null;
  /** What is to be in view from the next picture on: of keys that come faster than pictures, none is lost. */
  wanted(frame: Frame): Range;
  look(visible: Range | null): void;
  cursorAt(): number | null;
  walk(steps: number, from: number): void;
  /** To the first or last sample in view. */
  walkTo(x: number): void;
  turn(by: 1 | -1, from: number): void;
  mark(by: 1 | -1): void;
  /** Enter: to the statement under the cursor. */
  enter(): void;
  hideCursor(): void;
}

/** Keys of the focused plot. */
export function plotKeys(surface: HTMLElement, outside: KeysOutside): void {
  surface.addEventListener('keydown', (event) => {
    const frame = outside.frame();
    if (frame === null || event.ctrlKey || event.metaKey || event.altKey) return;
    const run = action(event, frame, outside);
    if (run === null) return;
    event.preventDefault();
    event.stopPropagation();
    run();
  });
}

function action(event: KeyboardEvent, frame: Frame, outside: KeysOutside): (() => void) | null {
  const x = outside.wanted(frame);
  const width = x.to - x.from;
  const middle = (x.from + x.to) / 2;
  const centre = (): number => {
    const at = outside.cursorAt();
    return at !== null && at >= x.from && at <= x.to ? at : middle;
  };
  switch (event.key) {
    case 'ArrowLeft':
    case 'ArrowRight': {
      const way = event.key === 'ArrowLeft' ? -1 : 1;
      if (event.shiftKey) return () => outside.look(panned(x, (way * width) / 8));
      return () => outside.walk(way, middle);
    }
    case 'Home':
      return () => outside.walkTo(x.from);
    case 'End':
      return () => outside.walkTo(x.to);
    case 'PageUp':
      return () => outside.turn(-1, middle);
    case 'PageDown':
      return () => outside.turn(1, middle);
    case '+':
    case '=':
      return () => outside.look(zoomAbout(x, centre(), 0.8));
    case '-':
    case '_':
      return () => outside.look(zoomAbout(x, centre(), 1.25));
    case '0':
      return () => outside.look(null);
    case ',':
      return () => outside.mark(-1);
    case '.':
      return () => outside.mark(1);
    case 'Enter':
      return () => outside.enter();
    case 'Escape':
      return () => outside.hideCursor();
    default:
      return null;
  }
}

/** Undo and redo of the text, wherever in the sheet the focus is; fields keep their own. */
export function historyKeys(root: EventTarget, history: (redo: boolean) => void): void {
  root.addEventListener('keydown', (event) => {
    if (!(event instanceof KeyboardEvent) || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    if (event.target instanceof HTMLInputElement) return;
    const key = event.key.toLowerCase();
    const redo = (key === 'z' && event.shiftKey) || (key === 'y' && event.ctrlKey);
    if (key !== 'z' && !redo) return;
    event.preventDefault();
    event.stopPropagation();
    history(redo);
  });
}
