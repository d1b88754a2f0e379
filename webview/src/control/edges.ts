import type { Abscissa, EdgePreview, ViewState } from '../../../server/src/protocol/view';
import { edgeText } from '../geometry/bands';
import { begun, draggedTo, hasMoved, requestOf, setTo, stepped, type EdgeMove } from '../geometry/edgeMove';
import { isOf, type Calls } from '../state/calls';
import { singleFlight } from '../state/singleFlight';
import type { Timers } from '../state/timers';
import { say } from '../words';

/** Moving an edge: drawn at once, previewed one request at a time, written once on release or not at all. */
export interface Edges {
  readonly move: EdgeMove | null;
  readonly preview: EdgePreview | null;
  /** The move was let go and waits: for the choice where to write it, or for the text to be written. */
  readonly isLet: boolean;
  begin(statement: string, which: 'from' | 'to', by: 'pointer' | 'keys'): boolean;
  drag(x: number, perPixel: number): void;
  step(steps: number): void;
  set(value: number): void;
  /** Leaves the edge where the text has it. */
  cancel(speak?: boolean): void;
  /** Writes: one edit, or none where nothing moved. */
  commit(): void;
  /** A newer state is there: what was written is in it. */
  stateCame(state: ViewState): void;
}

export interface EdgesOutside {
  readonly calls: Calls;
  readonly timers: Timers;
  state(): ViewState | null;
  isConnected(): boolean;
  abscissa(): Abscissa;
  redraw(): void;
  tell(text: string, kind?: 'done' | 'alert'): void;
  /** Where an edge of the method goes: into the run's own gloss, into the method, or nowhere (null). */
  choose(move: EdgeMove): Promise<'gloss' | 'method' | null>;
}

export function edges(outside: EdgesOutside): Edges {
  const { calls, timers } = outside;
  let move: EdgeMove | null = null;
  let preview: EdgePreview | null = null;
  let isLet = false;
  let sent: number | null = null;

  const previews = singleFlight(
    (wanted: EdgeMove) => calls.ask({ type: 'edgePreview', request: requestOf(wanted) }),
    (message, wanted) => {
      const answer = message.type === 'edgePreview' ? message.answer : null;
      if (move === null || !isOf(answer, wanted.generation)) return;
      preview = answer;
      outside.redraw();
    },
  );
  const moved = (next: EdgeMove): void => {
    move = next;
    if (hasMoved(next)) previews.ask(next);
    outside.redraw();
  };
  const end = (): void => {
    move = null;
    preview = null;
    isLet = false;
    sent = null;
    previews.drop();
    outside.redraw();
  };
  const write = async (wanted: EdgeMove, isMethods: boolean): Promise<void> => {
    const into = isMethods ? await outside.choose(wanted) : 'gloss';
    if (move !== wanted) return;
    if (into === null) return end();
    sent = wanted.generation.revision;
    const message = await calls.ask({ type: 'edgeEdit', request: requestOf(wanted, into) });
    const answer = message.type === 'edgeEdit' ? message.answer : null;
    if (answer?.ok === true) {
      const touches = answer.touches > 1 ? ` ${say('edgeTouches', answer.touches)}` : '';
      const reason = answer.caret === null ? '' : ` ${say('edgeReason')}`;
      outside.tell(say('edgeWritten', answer.label) + touches + reason);
      // The picture of the new text follows; until it does, the edge stays where it was put.
      timers.after(2500, () => {
        if (move === wanted) end();
      });
    } else {
      outside.tell(say('edgeRefused', answer?.reason ?? say('edgeOffline')), 'alert');
      if (move === wanted) end();
    }
  };

  return {
    get move() {
      return move;
    },
    get preview() {
      return preview;
    },
    get isLet() {
      return isLet;
    },
    begin(statement, which, by) {
      const state = outside.state();
      const band = state?.bands.find((b) => b.statement === statement);
      if (state === null || band === undefined || isLet) return false;
      const refusal = !state.editable
        ? say('edgeReadOnly')
        : outside.isConnected()
          ? null
          : say('edgeRefused', say('edgeOffline'));
      if (refusal !== null) {
        outside.tell(refusal, 'alert');
        return false;
      }
      const first = begun(state, band, which, state.generation, by);
      if (first === null) {
        outside.tell(say('edgeNoPart'), 'alert');
        return false;
      }
      preview = null;
      move = first;
      outside.redraw();
      return true;
    },
    drag(x, perPixel) {
      const state = outside.state();
      if (move !== null && state !== null && !isLet) moved(draggedTo(move, state, outside.abscissa(), x, perPixel));
    },
    step(steps) {
      const state = outside.state();
      if (move !== null && state !== null && !isLet) moved(stepped(move, state, steps));
    },
    set(value) {
      const state = outside.state();
      if (move !== null && state !== null && !isLet) moved(setTo(move, state, value));
    },
    cancel(speak = true) {
      if (move === null || sent !== null) return;
      const { which, edge } = move;
      const name = outside.state()?.bands.find((b) => b.statement === move?.statement)?.name ?? '';
      if (speak && hasMoved(move)) {
        outside.tell(say('edgeLeft', say(which === 'from' ? 'edgeFrom' : 'edgeTo', name), edgeText(edge)));
      }
      end();
    },
    commit() {
      if (move === null || isLet) return;
      if (!hasMoved(move)) return end();
      isLet = true;
      void write(move, move.edge.source === 'method' && outside.state()?.role === 'run');
    },
    stateCame(state) {
      if (sent !== null && state.generation.revision > sent && state.freshness.state !== 'computing') end();
    },
  };
}
