import type { KeptView } from '../../../server/src/protocol/messages';
import { defaultChoices, type Range, type ViewChoices } from '../../../server/src/protocol/view';

/** A change of what is kept. Each is one decision of a person, or a turn to another gloss. */
export type KeptAction =
  | { readonly do: 'choose'; readonly choices: Partial<ViewChoices> }
  | { readonly do: 'look'; readonly visible: Range | null }
  | { readonly do: 'ordinate'; readonly lane: string; readonly range: Range | null }
  | { readonly do: 'order'; readonly lanes: readonly string[] }
  | { readonly do: 'height'; readonly lane: string; readonly height: number }
  | { readonly do: 'showLane'; readonly lane: string; readonly shown: boolean }
  | { readonly do: 'select'; readonly statement: string | null }
  | { readonly do: 'sort'; readonly column: string }
  | { readonly do: 'open'; readonly row: string; readonly open: boolean }
  | { readonly do: 'scroll'; readonly top: number }
  | { readonly do: 'allRows'; readonly all: boolean }
  | { readonly do: 'pin'; readonly pinned: boolean }
  | { readonly do: 'turnTo'; readonly uri: string; readonly choices: ViewChoices };

export const nothingKept: KeptView = {
  uri: '',
  pinned: false,
  choices: defaultChoices,
  visible: null,
  ordinates: {},
  laneOrder: [],
  laneHeights: {},
  hiddenLanes: [],
  selected: null,
  sort: null,
  openRows: [],
  scroll: 0,
  allRows: false,
};

/** What is kept after a decision. An action that changes nothing gives the same object back. */
export function kept(before: KeptView, action: KeptAction): KeptView {
  switch (action.do) {
    case 'choose':
      return chosen(before, action.choices);
    case 'look':
      return { ...before, visible: action.visible };
    case 'ordinate':
      return { ...before, ordinates: withEntry(before.ordinates, action.lane, action.range) };
    case 'order':
      return { ...before, laneOrder: action.lanes };
    case 'height':
      return { ...before, laneHeights: { ...before.laneHeights, [action.lane]: action.height } };
    case 'showLane':
      return { ...before, hiddenLanes: withMember(before.hiddenLanes, action.lane, !action.shown) };
    case 'select':
      return action.statement === before.selected ? before : { ...before, selected: action.statement };
    case 'sort':
      return { ...before, sort: nextSort(before.sort, action.column) };
    case 'open':
      return { ...before, openRows: withMember(before.openRows, action.row, action.open) };
    case 'scroll':
      return action.top === before.scroll ? before : { ...before, scroll: action.top };
    case 'allRows':
      return { ...before, allRows: action.all };
    case 'pin':
      return { ...before, pinned: action.pinned };
    case 'turnTo':
      return turned(before, action.uri, action.choices);
  }
}

function chosen(before: KeptView, choices: Partial<ViewChoices>): KeptView {
  const next = { ...before.choices, ...choices };
  // A range in °C says nothing on an axis in minutes, a range in mg nothing on one in %.
  const visible = next.abscissa === before.choices.abscissa ? before.visible : null;
  const same = Object.entries(before.ordinates).filter(([lane]) => next.units[lane] === before.choices.units[lane]);
  return { ...before, choices: next, visible, ordinates: Object.fromEntries(same) };
}

/** How lanes look belongs to the person; where one looks, what is selected and opened belongs to the gloss. */
function turned(before: KeptView, uri: string, choices: ViewChoices): KeptView {
  if (uri === before.uri) return { ...before, choices };
  return { ...before, uri, choices, visible: null, ordinates: {}, selected: null, openRows: [], scroll: 0 };
}

/** Ascending, descending, as written. */
function nextSort(sort: KeptView['sort'], column: string): KeptView['sort'] {
  if (sort?.column !== column) return { column, down: false };
  return sort.down ? null : { column, down: true };
}

function withMember(list: readonly string[], item: string, isIn: boolean): readonly string[] {
  if (list.includes(item) === isIn) return list;
  return isIn ? [...list, item] : list.filter((other) => other !== item);
}

function withEntry<T>(record: Readonly<Record<string, T>>, key: string, value: T | null): Readonly<Record<string, T>> {
  const rest = Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
  return value === null ? rest : { ...rest, [key]: value };
}
