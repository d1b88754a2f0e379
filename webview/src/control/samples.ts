import type { Generation, Range, SamplesAnswer, SamplesRequest, ViewState } from '../../../server/src/protocol/view';
import { dataRange, looseLimits } from '../geometry/abscissa';
import { noBlocks, suffices, withAnswer, type Asked, type CurveBlocks } from '../state/blocks';
import { isOf, type Calls } from '../state/calls';
import type { Timers } from '../state/timers';

type Blocks = ReadonlyMap<string, CurveBlocks>;

/** Samples for what is looked at: one request at a time, each for the newest wish; answers of older pictures are dropped. */
export interface Samples {
  /** What there is to draw of a picture: also samples of an older one of its kind (gloss, abscissa, units). */
  blocksOf(state: ViewState): Blocks;
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
  let store: Blocks = new Map();
  let seen: { readonly state: ViewState; readonly store: Blocks; readonly blocks: Blocks } | null = null;
  const blocksOf = (state: ViewState): Blocks => {
    if (seen?.state !== state || seen.store !== store) {
      const found = [...curveKeys(state)].flatMap(([id, key]) => {
        const one = store.get(key);
        return one === undefined ? [] : [[id, one] as const];
      });
      seen = { state, store, blocks: new Map(found) };
    }
    return seen.blocks;
  };
  let out: SamplesRequest | null = null;
  let resting = false;
  let failures = { revision: -1, count: 0 };

  const shown = (state: ViewState, hidden: readonly string[]): string[] =>
    state.lanes.filter((lane) => !hidden.includes(lane.id)).flatMap((lane) => lane.curves.map((c) => c.id));

  const lacking = (state: ViewState, visible: Range, columns: number, hidden: readonly string[]): string[] => {
    const perPixel = (visible.to - visible.from) / columns;
    const { revision } = state.generation;
    const blocks = blocksOf(state);
    return shown(state, hidden).filter((id) => !suffices(blocks.get(id) ?? noBlocks, visible, perPixel, revision));
  };

  const ask = (state: ViewState, request: SamplesRequest, asked: Asked): void => {
    const { generation } = state;
    out = request;
    const isMine = (): boolean => out === request;
    const settle = (answer: SamplesAnswer | null): void => {
      if (!isMine()) return;
      out = null;
      if (answer !== null && isOf(answer, generation)) {
        const keys = curveKeys(state);
        const next = withAnswer(blocksOf(state), answer, asked);
        const mine = [...next].map(([id, block]) => [keys.get(id) ?? id, block] as const);
        const others = [...store].filter(([key]) => mine.every(([other]) => other !== key));
        store = limited(new Map([...others, ...mine]), mine.length);
      } else rest(generation.revision);
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
    blocksOf,
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
          state,
          { generation, curves: needed, abscissa, ...range, pixels },
          { generation, range, perPixel, isWhole: false },
        );
        return;
      }
      const whole = shown(state, hidden).filter(
        (id) => blocksOf(state).get(id)?.whole?.revision !== generation.revision,
      );
      const wanted = isWide && needed.length > 0 ? needed : whole;
      if (wanted.length === 0) return;
      const perPixel = Math.min(data.to - data.from, isWide ? visible.to - visible.from : Infinity) / columns;
      const pixels = Math.ceil((loose.to - loose.from) / perPixel);
      ask(
        state,
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

/**
 * What the samples of a curve belong to: its gloss, the abscissa, the unit. With another of these they must not stand in
 * for it, not for a moment.
 */
function curveKeys({ generation, choices, lanes }: ViewState): ReadonlyMap<string, string> {
  const key = (unit: string, id: string): string => JSON.stringify([generation.uri, choices.abscissa, unit, id]);
  return new Map(lanes.flatMap((lane) => lane.curves.map((curve) => [curve.id, key(lane.unit, curve.id)])));
}

/** The last of them, about three pictures' worth: what comes back from time to temperature is there at once. */
function limited(all: Blocks, perPicture: number): Blocks {
  const most = Math.max(60, 3 * perPicture);
  return all.size <= most ? all : new Map([...all].slice(all.size - most));
}

function sameGeneration(a: Generation, b: Generation): boolean {
  return a.uri === b.uri && a.revision === b.revision;
}
