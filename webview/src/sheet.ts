import type { KeptView, ToView } from '../../server/src/protocol/messages';
import { defaultChoices, type Freshness, type ViewState } from '../../server/src/protocol/view';
import { palette, type Palette } from './colour/palette';
import { publish, themeColours, themeKind } from './colour/theme';
import { cursor } from './control/cursor';
import { edges } from './control/edges';
import { samples } from './control/samples';
import { copying } from './copy/copying';
import { frame, visibleRange } from './draw/frame';
import { dataRange } from './geometry/abscissa';
import { placedBands } from './geometry/bands';
import { placeOf } from './geometry/edgeMove';
import { outOfView, shows } from './geometry/zoom';
import { plotInput } from './input/plotInput';
import { historyKeys } from './input/keys';
import type { Actions, Look } from './look';
import { editing } from './parts/editing';
import { sheetParts } from './parts/sheetParts';
import type { Port } from './port';
import { calls } from './state/calls';
import { reconciled, sameChoices, type ChoiceSync } from './state/choiceSync';
import { freshnessWords } from './state/freshness';
import { kept as keptAfter, nothingKept, type KeptAction } from './state/kept';
import { drawsAlike, lastGood } from './state/lastGood';
import { restored } from './state/restore';
import { debounced, type Timers } from './state/timers';
import { textWidths } from './textWidths';
import { say } from './words';

/** How long the view waits for the server to draw with a choice before it shows the server's own, ms. */
const choicePatience = 2500;
/** How long a picture of another kind may wait for its samples before it is shown without, ms. */
const swapPatience = 1500;

/** The curves view in a page. It evaluates nothing: states, samples, readings and edits come and go through the port. */
export function openSheet(root: HTMLElement, port: Port, timers: Timers): void {
  const own = restored(port.getState());
  let kept: KeptView = own ?? nothingKept;
  let isFirstKept = true;
  let shown: ViewState | null = null;
  let pending: ViewState | null = null;
  let choiceSync: ChoiceSync = { choices: kept.choices, awaiting: own !== null };
  let freshness: Freshness = { state: 'empty', text: say('waiting'), error: null };
  let connection = { up: true, text: '' };
  let colours: Palette = palette(themeColours(document.body), themeKind(document.body));
  let look: Look | null = null;
  let frameAsked = false;
  let cursorAsked = false;
  let plotWidth = 0;
  const widths = textWidths();
  const asking = calls((message) => port.post(message));

  const keepSoon = debounced(timers, 120, () => {
    port.setState(kept);
    port.post({ type: 'kept', kept });
  });
  const keep = (action: KeptAction): void => {
    const next = keptAfter(kept, action);
    if (next === kept) return;
    kept = next;
    // Without a gloss there is nothing it could be kept for.
    if (kept.uri !== '') keepSoon.later();
    redraw();
  };
  const redraw = (): void => {
    if (frameAsked) return;
    frameAsked = true;
    requestAnimationFrame(() => {
      frameAsked = false;
      drawNow();
    });
  };

  /** The hairline moves alone: curves and ledger stay as they are drawn. */
  const redrawCursor = (): void => {
    if (frameAsked || cursorAsked) return;
    cursorAsked = true;
    requestAnimationFrame(() => {
      cursorAsked = false;
      if (look === null || frameAsked) return;
      look = { ...look, cursor: cursorLook() };
      parts.plot.updateCursor(look);
    });
  };
  const cursorLook = (): Look['cursor'] => (cursors.at === null ? null : { at: cursors.at, answer: cursors.answer });

  const waitForChoices = (): void => {
    timers.after(choicePatience, () => {
      if (choiceSync.awaiting && choiceSync.choices === kept.choices) choiceSync = { ...choiceSync, awaiting: false };
    });
  };

  const actions: Actions = {
    keep,
    choose(choices) {
      keep({ do: 'choose', choices });
      choiceSync = { choices: kept.choices, awaiting: true };
      port.post({ type: 'choices', choices: kept.choices });
      waitForChoices();
    },
    choices: () => kept.choices,
    select: (statement) => keep({ do: 'select', statement }),
    activate(statement) {
      keep({ do: 'select', statement });
      if (shown !== null) actions.reveal(shown.generation.uri, statement, null);
    },
    reveal(uri, statement, range) {
      const revision = shown?.generation.revision ?? 0;
      port.post({ type: 'reveal', statement, uri, range, revision });
    },
    pin(pinned) {
      keep({ do: 'pin', pinned });
      port.post({ type: 'pin', pinned });
    },
    command: (command, argument) => port.post({ type: 'command', command, argument }),
    tell: (text, kind = 'done') => parts.notice.tell(text, kind),
  };

  const sampled = samples(asking, timers, () => redraw());
  const cursors = cursor({
    calls: asking,
    state: () => shown,
    redraw: () => redrawCursor(),
    speak: (text) => parts.speech.say(text),
    arrived: (at) => {
      if (look !== null && outOfView(look.frame.x, { from: at, to: at }))
        keep({ do: 'look', visible: shows(look.frame.x, { from: at, to: at }) });
    },
  });
  const moving = edges({
    calls: asking,
    timers,
    state: () => shown,
    isConnected: () => connection.up,
    abscissa: () => shown?.choices.abscissa ?? defaultChoices.abscissa,
    redraw: () => redraw(),
    tell: actions.tell,
    choose: (move) => editor.choose(move),
  });
  const copies = copying({ calls: asking, look: () => look, tell: actions.tell });
  const parts = sheetParts(root, {
    actions,
    timers,
    edges: moving,
    look: () => look,
    measure: widths,
    copyEntries: () => copies.entries(),
    box: (handle) => void editor.box(handle),
  });
  const editor = editing({ host: () => parts.plot.element, look: () => look, edges: moving });
  plotInput(parts.plot, { look: () => look, kept: () => kept, actions, cursor: cursors, edges: moving });
  historyKeys(document, (redo) => port.post({ type: redo ? 'redo' : 'undo' }));
  const words = freshnessWords(timers, (next) => {
    freshness = next;
    redraw();
  });

  const takeState = (next: ViewState): void => {
    if (kept.uri !== next.generation.uri) keep({ do: 'turnTo', uri: next.generation.uri, choices: next.choices });
    choiceSync = reconciled({ ...choiceSync, choices: kept.choices }, next.choices);
    if (choiceSync.choices !== kept.choices) keep({ do: 'choose', choices: choiceSync.choices });
    const picture = lastGood(pending ?? shown, next);
    if (drawsAlike(shown, picture)) {
      pending = null;
      show(picture);
    } else {
      pending = picture;
      timers.after(swapPatience, () => {
        if (pending === picture) swap();
      });
    }
    redraw();
  };
  const show = (picture: ViewState): void => {
    shown = picture;
    moving.stateCame(picture);
    words.take(picture.freshness);
    cursors.refresh();
  };
  const swap = (): void => {
    if (pending === null) return;
    const picture = pending;
    pending = null;
    cursors.hide();
    show(picture);
  };

  const drawNow = (): void => {
    // Asked of the page only once: reading it after writing makes the browser lay out everything twice.
    if (plotWidth === 0) plotWidth = parts.plot.element.clientWidth;
    const width = plotWidth;
    if (pending !== null) {
      const visible = pendingRange(pending);
      const columns = columnsOf(width);
      if (isReady(pending, visible, columns)) swap();
      else sampled.want(pending, visible, columns, kept.hiddenLanes);
    }
    if (shown === null) {
      parts.update(null, { kept, freshness, connection });
      return;
    }
    const { move } = moving;
    const moved =
      move === null
        ? null
        : { statement: move.statement, edge: move.which, at: placeOf(move, shown, shown.choices.abscissa) };
    const framed = frame({ state: shown, kept, width, windowHeight: window.innerHeight, moved, measure: widths });
    look = {
      state: shown,
      kept,
      freshness,
      connection,
      frame: framed,
      blocks: sampled.blocksOf(shown),
      colours,
      move,
      preview: moving.preview,
      cursor: cursorLook(),
    };
    parts.update(look, { kept, freshness, connection });
    const columns = columnsOf(framed.right - framed.left);
    if (pending === null) sampled.want(shown, framed.x, columns, kept.hiddenLanes);
    // The number stands there once this very state, with its own samples, is on the canvas.
    if (isReady(shown, framed.x, columns)) root.dataset.revision = String(shown.generation.revision);
    root.dataset.freshness = freshness.state;
  };
  const isReady = (state: ViewState, visible: { from: number; to: number }, columns: number): boolean =>
    sampled.hasAll(state, visible, columns, kept.hiddenLanes);
  const pendingRange = (state: ViewState): { from: number; to: number } =>
    visibleRange(kept.visible, dataRange(state.parts, state.choices.abscissa));

  /** The caret stands in a statement: it is shown, at most panned to, and never answered. */
  const caret = (statement: string | null): void => {
    keep({ do: 'select', statement });
    const band = shown?.bands.find((b) => b.statement === statement);
    if (shown === null || look === null || band === undefined || kept.visible === null) return;
    const [placed] = placedBands([band], shown.parts, look.frame.abscissa);
    if (placed !== undefined && outOfView(look.frame.x, placed.range)) {
      keep({ do: 'look', visible: shows(look.frame.x, placed.range) });
    }
  };

  /** What the host keeps for the gloss in view. After a reload the page's own is newer by what was on its way. */
  const takeKept = (message: KeptView): void => {
    const mine = isFirstKept && kept.uri === message.uri ? kept : message;
    isFirstKept = false;
    kept = { ...mine, pinned: message.pinned };
    choiceSync = { choices: kept.choices, awaiting: mine !== message };
    if (mine !== message && !sameChoices(mine.choices, message.choices)) {
      port.post({ type: 'choices', choices: kept.choices });
    }
    waitForChoices();
    port.setState(kept);
    parts.scroll.to(kept.scroll);
    redraw();
  };

  port.onMessage((message: ToView) => {
    if (asking.answer(message)) return;
    switch (message.type) {
      case 'state':
        return takeState(message.state);
      case 'kept':
        return takeKept(message.kept);
      case 'pinned':
        return keep({ do: 'pin', pinned: message.pinned });
      case 'caret':
        return caret(message.statement);
      case 'preferences':
        return copies.prefer(message.exportTheme);
      case 'connection':
        connection = { up: message.up, text: message.text };
        if (message.up) sampled.retry();
        return redraw();
      default:
        return;
    }
  });

  const themeChanged = (): void => {
    colours = palette(themeColours(document.body), themeKind(document.body));
    publish(colours, root);
    widths.forget();
    redraw();
  };
  publish(colours, root);
  const themes = new MutationObserver(themeChanged);
  themes.observe(document.body, {
    attributes: true,
    attributeFilter: ['class', 'data-vscode-theme-kind', 'data-vscode-theme-id', 'style'],
  });
  // The variables of a theme stand on the document's own element.
  themes.observe(document.documentElement, { attributes: true, attributeFilter: ['class', 'style'] });
  new ResizeObserver(([entry]) => {
    plotWidth = Math.round(entry?.contentRect.width ?? 0);
    redraw();
  }).observe(parts.plot.element);
  window.addEventListener('resize', () => redraw());
  window.addEventListener('pagehide', () => keepSoon.now());
  document.addEventListener('visibilitychange', () => keepSoon.now());
  parts.scroll.onScroll((top) => keep({ do: 'scroll', top }));
  parts.scroll.to(kept.scroll);
  waitForChoices();
  redraw();
  port.post({ type: 'ready' });
}

function columnsOf(width: number): number {
  return Math.max(1, Math.round(width * Math.min(2, window.devicePixelRatio || 1)));
}
