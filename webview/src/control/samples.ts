import type { Generation, Range, SamplesAnswer, SamplesRequest, ViewState } from '../../../server/src/protocol/view';
import { dataRange, looseLimits } from '../geometry/abscissa';
import { noBlocks, suffices, withAnswer, type Asked, type CurveBlocks } from '../state/blocks';
import { isOf, type Calls } from '../state/calls';
import type { Timers } from '../state/timers';

/** Samples for what is looked at: one request at a time, each for the newest wish; answers of older pictures are dropped. */
export interface Samples {
  readonly blocks: ReadonlyMap<string, CurveBlocks>;
  /** Asks for what `state` lacks to be drawn in `visible` over so many pixel columns; does nothing while one is out. */
  want(state: ViewState, visible: Range, columns: number, hiddenLanes: readonly string[]): void;
  /** Whether every shown curve is here, closely enough, for this very state. */
  hasAll(state: ViewState, visible: Range, columns: number, hiddenLanes: readonly string[]): boolean;
  /** Asks again at once: the connection is back. */
  retry(): void;
}

/** How long an answer may take before it counts as none, and how often none is tried again, ms. */
const patience = 4000;
const again = 350;

export function samples(calls: Calls, timers: Timers, arrived: () => void): Samples {
  let blocks: ReadonlyMap<string, CurveBlocks> = new Map();
  let out: SamplesRequest | null = null;
  let resting = false;
  let failures = { revision: -1, count: 0 };

  const shown = (state: ViewState, hidden: readonly string[]): string[] =>
    state.lanes.filter((lane) => !hidden.includes(lane.id)).flatMap((lane) => lane.curves.map((c) => c.id));

  const lacking = (state: ViewState, visible: Range, columns: number, hidden: readonly string[]): string[] => {
    const perPixel = (visible.to - visible.from) / columns;
    const { revision } = state.generation;
    return shown(state, hidden).filter((id) => !suffices(blocks.get(id) ?? noBlocks, visible, perPixel, revision));
  };

  const ask = (generation: Generation, request: SamplesRequest, asked: Asked): void => {
    out = request;
    const isMine = (): boolean => out === request;
    const settle = (answer: SamplesAnswer | null): void => {
      if (!isMine()) return;
      out = null;
      if (answer !== null && isOf(answer, generation)) blocks = withAnswer(blocks, answer, asked);
      else rest(generation.revision);
      arrived();
    };
    timers.after(patience, () => settle(null));
    void calls.ask({ type: 'samples', request }).then((message) => {
      settle(message.type === 'samples' ? message.answer : null);
    });
  };

  const rest = (revision: number): void => {
    failures = { revision, count: failures.revision === revision ? failures.count + 1 : 1 };
    resting = true;
    timers.after(again * failures.count, () => {
      resting = false;
      arrived();
    });
  };

  return {
    get blocks() {
      return blocks;
    },
    want(state, visible, columns, hidden) {
      const { generation } = state;
      const isNew = out !== null && !sameGeneration(out.generation, generation);
      if (columns < 1 || (out !== null && !isNew) || resting) return;
      if (failures.revision === generation.revision && failures.count > 5) return;
      const { abscissa } = state.choices;
      const data = dataRange(state.parts, abscissa);
      const loose = looseLimits(data);
      const needed = lacking(state, visible, columns, hidden);
      const isWide = visible.to - visible.from > 0.9 * (data.to - data.from);
      if (needed.length > 0 && !isWide) {
        // Half a view on either side comes along, so that a pan meets curves.
        const half = (visible.to - visible.from) / 2;
        const range = { from: Math.max(loose.from, visible.from - half), to: Math.min(loose.to, visible.to + half) };
        const perPixel = (visible.to - visible.from) / columns;
        const pixels = Math.ceil((range.to - range.from) / perPixel);
        ask(
          generation,
          { generation, curves: needed, abscissa, ...range, pixels },
          { generation, range, perPixel, isWhole: false },
        );
        return;
      }
      const whole = shown(state, hidden).filter((id) => blocks.get(id)?.whole?.revision !== generation.revision);
      const wanted = isWide && needed.length > 0 ? needed : whole;
      if (wanted.length === 0) return;
      const perPixel = Math.min(data.to - data.from, isWide ? visible.to - visible.from : Infinity) / columns;
      const pixels = Math.ceil((loose.to - loose.from) / perPixel);
      ask(
        generation,
        { generation, curves: wanted, abscissa, ...loose, pixels },
        { generation, range: loose, perPixel, isWhole: true },
      );
    },
    hasAll: (state, visible, columns, hidden) => lacking(state, visible, columns, hidden).length === 0,
    retry() {
      out = null;
      resting = false;
      failures = { revision: -1, count: 0 };
    },
  };
}

function sameGeneration(a: Generation, b: Generation): boolean {
  return a.uri === b.uri && a.revision === b.revision;
}
