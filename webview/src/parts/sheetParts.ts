import type { KeptView } from '../../../server/src/protocol/messages';
import type { Freshness } from '../../../server/src/protocol/view';
import type { Edges } from '../control/edges';
import { make } from '../dom';
import type { Actions, Look } from '../look';
import { debounced, type Timers } from '../state/timers';
import { controls } from './controls';
import { drawn } from './drawn';
import { empty } from './empty';
import { findings } from './findings';
import { head } from './head';
import { heldScroll, type HeldScroll } from './heldScroll';
import { laneMover } from './laneMover';
import { ledger } from './ledger';
import { legend } from './legend';
import type { MenuEntry } from './menu';
import { notice, speech, type Notice } from './notice';
import { plot, type Plot } from './plot';
import { whenChanged } from './whenChanged';

export interface SheetOutside {
  readonly actions: Actions;
  readonly timers: Timers;
  readonly edges: Edges;
  look(): Look | null;
  measure(text: string): number;
  copyEntries(): readonly MenuEntry[];
  box(handle: HTMLElement): void;
}

export interface SheetParts {
  readonly plot: Plot;
  readonly notice: Notice;
  readonly speech: ReturnType<typeof speech>;
  update(
    look: Look | null,
    words: { readonly kept: KeptView; readonly freshness: Freshness; readonly connection: Look['connection'] },
  ): void;
  readonly scroll: HeldScroll;
}

/** The sheet from top to bottom, in the order in which it is read and tabbed through. */
export function sheetParts(root: HTMLElement, outside: SheetOutside): SheetParts {
  const { actions, timers } = outside;
  const top = head(actions);
  const bar = controls(actions, () => outside.copyEntries());
  const names = legend();
  const bare = empty(actions);
  const curves: Plot = plot({
    actions,
    edges: outside.edges,
    look: () => outside.look(),
    select: (statement) => actions.select(statement),
    at(clientX) {
      const frame = outside.look()?.frame;
      const x = clientX - curves.element.getBoundingClientRect().left;
      if (frame === undefined) return { x: 0, perPixel: 1 };
      return { x: frame.xScale.value(Math.min(frame.right, Math.max(frame.left, x))), perPixel: frame.xScale.perPixel };
    },
    box: (handle) => outside.box(handle),
    measure: (text) => outside.measure(text),
    grab: (lane, event) => laneMover(lane, event, curves.element, () => outside.look(), actions),
  });
  const table = ledger(actions);
  const found = findings(actions);
  const list = drawn();
  const told = notice(timers);
  const spoken = speech(timers);
  const body = make('div', {
    class: 'body',
    children: [bar.element, names.element, bare.element, curves.element, table.element, found.element, list.element],
  });
  root.classList.add('sheet');
  root.setAttribute('role', 'main');
  root.replaceChildren(top.element, body, told.element, spoken.element);
  const scroll = heldScroll(timers);
  const summaries = debounced(timers, 250, () => {
    const now = outside.look();
    if (now !== null) curves.summarize(now);
  });
  const changed = {
    bar: whenChanged(),
    names: whenChanged(),
    bare: whenChanged(),
    table: whenChanged(),
    found: whenChanged(),
  };
  return {
    plot: curves,
    notice: told,
    speech: spoken,
    update(look, words) {
      root.classList.toggle('is-waiting', look === null);
      top.update(look ?? null, words);
      const isBare = look === null || look.state.lanes.length === 0;
      for (const part of [bar, names, table, found, list]) part.element.hidden = look === null;
      if (look !== null) {
        // A zoom draws curves; what it does not change is not touched.
        const { state, kept, preview, freshness } = look;
        changed.bar([state, kept.choices, kept.hiddenLanes], () => bar.update(look));
        changed.names([state], () => names.update(look));
        changed.bare([state, freshness], () => bare.update(look));
        const { sort, allRows, openRows, selected } = kept;
        changed.table([state, preview, sort, allRows, openRows, selected], () => table.update(look));
        changed.found([state, selected], () => found.update(look));
        list.update(look);
      } else bare.element.hidden = true;
      curves.element.classList.toggle('is-bare', isBare);
      for (const part of [bar, names, table, list]) if (isBare) part.element.hidden = true;
      if (look !== null) {
        curves.update(look);
        summaries.later();
      }
      if (look !== null) scroll.drawn();
    },
    scroll,
  };
}
