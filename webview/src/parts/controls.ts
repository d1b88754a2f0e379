import type { Abscissa, ViewChoices } from '../../../server/src/protocol/view';
import { keyed, make, setAttribute, setText } from '../dom';
import type { Actions, Look } from '../look';
import { say } from '../words';
import { menuButton, type MenuEntry } from './menu';
import { setToggle, toggle } from './toggle';

export interface Part {
  readonly element: HTMLElement;
  update(look: Look): void;
}

/** How many runs may lie over one another before nothing can be told apart. */
export const mostOverlays = 10;

/** What is shown: abscissa, parts, lanes, the run of a method, what is laid over; and the copies. */
export function controls(actions: Actions, copyEntries: () => readonly MenuEntry[]): Part {
  let look: Look | null = null;
  const abscissae = group(say('over'));
  const parts = group(say('parts'));
  const lanes = group(say('lanes'));
  const runs = group(say('with'));
  const run = make('select', { class: 'choice', attributes: { 'aria-label': say('with') } });
  runs.items.append(run);
  run.addEventListener('change', () => actions.choose({ run: run.value === '' ? null : run.value }));
  const compare = menuButton(`${say('compare')} ▾`, say('compare'), () =>
    look === null ? [] : companions(look, actions),
  );
  const copy = menuButton(`${say('copy')} ▾`, say('copy'), copyEntries);
  const end = make('div', { class: 'group end', children: [compare, copy] });
  const element = make('div', {
    class: 'controls',
    attributes: { role: 'group', 'aria-label': say('controls') },
    children: [abscissae.element, parts.element, lanes.element, runs.element, end],
  });
  return {
    element,
    update(next) {
      look = next;
      const { state, kept } = next;
      const { choices } = kept;
      toggles(
        abscissae.items,
        ['temperature', 'time'] as const,
        (name) => name,
        (name) => say(name),
        (name) => choices.abscissa === name,
        (abscissa: Abscissa) => actions.choose({ abscissa }),
      );
      parts.element.hidden = state.parts.length < 2;
      toggles(
        parts.items,
        state.parts,
        (part) => part.name,
        (part) => part.name,
        (part) => !choices.hiddenParts.includes(part.name),
        (part, on) =>
          actions.choose(
            withoutPart(
              actions.choices(),
              state.parts.map((p) => p.name),
              part.name,
              on,
            ),
          ),
      );
      lanes.element.hidden = state.lanes.length < 2;
      toggles(
        lanes.items,
        state.lanes,
        (lane) => lane.id,
        (lane) => lane.name,
        (lane) => !kept.hiddenLanes.includes(lane.id),
        (lane, on) => actions.keep({ do: 'showLane', lane: lane.id, shown: on }),
      );
      runs.element.hidden = state.role !== 'method';
      fillRuns(run, next);
      compare.hidden = state.role !== 'run' && state.companions.length === 0;
    },
  };
}

interface Group {
  readonly element: HTMLElement;
  readonly items: HTMLElement;
}

function group(title: string): Group {
  const items = make('div', { class: 'items' });
  const label = make('span', { class: 'group-title', text: title, attributes: { 'aria-hidden': 'true' } });
  const element = make('div', {
    class: 'group',
    attributes: { role: 'group', 'aria-label': title },
    children: [label, items],
  });
  return { element, items };
}

function toggles<T>(
  parent: HTMLElement,
  items: readonly T[],
  key: (item: T) => string,
  text: (item: T) => string,
  isOn: (item: T) => boolean,
  press: (item: T, on: boolean) => void,
): void {
  const byKey = new Map(items.map((item) => [key(item), item]));
  keyed(
    parent,
    items,
    key,
    (item) =>
      toggle((on) => {
        const now = byKey.get(key(item)) ?? item;
        press(now, on);
      }),
    (element, item) => setToggle(element, text(item), isOn(item)),
  );
}

/** At least one part stays: the last one switched off brings the others back. */
function withoutPart(choices: ViewChoices, all: readonly string[], name: string, on: boolean): Partial<ViewChoices> {
  const hidden = on ? choices.hiddenParts.filter((p) => p !== name) : [...choices.hiddenParts, name];
  return { hiddenParts: all.every((p) => hidden.includes(p)) ? all.filter((p) => p === name) : hidden };
}

function fillRuns(select: HTMLSelectElement, { state, kept }: Look): void {
  const wanted = [{ uri: '', name: say('anyRun') }, ...state.runs];
  keyed(
    select,
    wanted,
    (item) => item.uri,
    () => make('option'),
    (option, item) => {
      setText(option, item.name);
      setAttribute(option, 'value', item.uri);
    },
  );
  const value = kept.choices.run ?? '';
  if (select.value !== value) select.value = value;
}

function companions({ state }: Look, actions: Actions): MenuEntry[] {
  const { overlays, against } = actions.choices();
  const isFull = overlays.length >= mostOverlays;
  const committed: MenuEntry[] =
    against !== null || state.ledger.columns.some((column) => column.id === 'since')
      ? [
          {
            kind: 'check',
            text: say('committed'),
            on: against !== null,
            run: () => actions.choose({ against: against === null ? 'HEAD' : null }),
          },
        ]
      : [];
  const others = state.companions.map(({ uri, name }): MenuEntry => {
    const on = overlays.includes(uri);
    const next = on ? overlays.filter((other) => other !== uri) : [...overlays, uri];
    return { kind: 'check', text: name, on, off: !on && isFull, run: () => actions.choose({ overlays: next }) };
  });
  return others.length + committed.length === 0
    ? [{ kind: 'words', text: say('compareNone') }]
    : [...committed, ...others];
}
