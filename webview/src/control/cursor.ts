import type { Abscissa, CursorAnswer, CursorRequest, Part, ViewState } from '../../../server/src/protocol/view';
import { isOf, type Calls } from '../state/calls';
import { singleFlight } from '../state/singleFlight';

/** The hairline: put down by the mouse, walked by keys, its values answered by the server, one request at a time. */
export interface Cursor {
  readonly at: number | null;
  readonly answer: CursorAnswer | null;
  /** Follows the mouse; null: it left. */
  hover(x: number | null): void;
  /** So many samples to the right. `from`: where to begin if there is no cursor yet. */
  walk(steps: number, from: number): void;
  /** To a place, as by a key: it is spoken. */
  to(x: number, part: string | null): void;
  /** The next or previous part that has the place. */
  turn(by: 1 | -1, from: number): void;
  hide(): void;
  /** Another picture: values are asked again. */
  refresh(): void;
}

export interface CursorOutside {
  readonly calls: Calls;
  state(): ViewState | null;
  redraw(): void;
  speak(text: string): void;
  /** The cursor walked to a place: it must be in view. */
  arrived(at: number): void;
}

interface Question {
  /** null: from where the cursor stands when the question goes out. */
  readonly place: number | null;
  readonly step: number;
  readonly isSpoken: boolean;
}

export function cursor(outside: CursorOutside): Cursor {
  let at: number | null = null;
  let answer: CursorAnswer | null = null;
  let part: string | null = null;
  let byKeys = false;

  const send = async ({
    place,
    step,
  }: Question): Promise<{ request: CursorRequest; got: CursorAnswer | null } | null> => {
    const state = outside.state();
    const from = place ?? at;
    if (state === null || from === null) return null;
    const { generation, choices } = state;
    const request = { generation, abscissa: choices.abscissa, at: from, part, step };
    const message = await outside.calls.ask({ type: 'cursor', request });
    return { request, got: message.type === 'cursor' ? message.answer : null };
  };
  const flight = singleFlight(
    send,
    (answered, { isSpoken }) => {
      if (answered === null || at === null) return;
      const { got, request } = answered;
      if (got === null || !isOf(got, request.generation)) return;
      answer = got;
      part = got.part;
      const place = placeOf(got, request.abscissa);
      // Keys stand on samples; the mouse stays where it is.
      if (isSpoken && place !== null) {
        at = place;
        outside.arrived(place);
        outside.speak(got.spoken);
      }
      outside.redraw();
    },
    // Steps of a key held down add up while an answer is out.
    (waiting, next) =>
      waiting.place === null && next.place === null ? { ...next, step: waiting.step + next.step } : next,
  );
  const ask = (place: number | null, step: number, isSpoken: boolean): void => flight.ask({ place, step, isSpoken });
  return {
    get at() {
      return at;
    },
    get answer() {
      return answer;
    },
    hover(x) {
      if (x === null) {
        if (!byKeys) this.hide();
        return;
      }
      byKeys = false;
      at = x;
      part = null;
      ask(x, 0, false);
      outside.redraw();
    },
    walk(steps, from) {
      byKeys = true;
      if (at === null) {
        at = from;
        ask(from, 0, true);
        return;
      }
      ask(null, steps, true);
    },
    to(x, wanted) {
      byKeys = true;
      at = x;
      part = wanted;
      ask(x, 0, true);
      outside.redraw();
    },
    turn(by, from) {
      const state = outside.state();
      if (state === null) return;
      const shown = state.parts.filter((p) => p.shown);
      if (shown.length === 0) return;
      const now = shown.findIndex((p) => p.name === part);
      const next = shown[(now + by + shown.length) % shown.length];
      this.to(clampedTo(next, at ?? from, state.choices.abscissa), next.name);
    },
    hide() {
      at = null;
      answer = null;
      part = null;
      byKeys = false;
      flight.drop();
      outside.redraw();
    },
    refresh() {
      if (at !== null) ask(null, 0, false);
    },
  };
}

function clampedTo(part: Part, at: number, abscissa: Abscissa): number {
  const [a, b] = abscissa === 'time' ? [part.start, part.end] : [part.from, part.to];
  return Math.min(Math.max(a, b), Math.max(Math.min(a, b), at));
}

function placeOf(answer: CursorAnswer, abscissa: Abscissa): number | null {
  return abscissa === 'time' ? answer.time : answer.temperature;
}
