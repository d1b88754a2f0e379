import type { KeptView } from '../../../server/src/protocol/messages';
import { defaultChoices, type Range, type ViewChoices } from '../../../server/src/protocol/view';
import { nothingKept } from './kept';

/**
 * What was kept, from JSON of unknown age. Every field is judged on its own: one that does not fit is as if never kept.
 * null where there is no gloss it could belong to.
 */
export function restored(value: unknown): KeptView | null {
  const from = record(value);
  if (from === null || typeof from.uri !== 'string' || from.uri === '') return null;
  const sort = record(from.sort);
  return {
    uri: from.uri,
    pinned: from.pinned === true,
    choices: choicesFrom(from.choices),
    visible: rangeFrom(from.visible),
    ordinates: entries(from.ordinates, rangeFrom),
    laneOrder: strings(from.laneOrder),
    laneHeights: entries(from.laneHeights, (h) => (isNumber(h) && h > 0 ? h : null)),
    hiddenLanes: strings(from.hiddenLanes),
    selected: text(from.selected),
    sort: sort !== null && typeof sort.column === 'string' ? { column: sort.column, down: sort.down === true } : null,
    openRows: strings(from.openRows),
    scroll: isNumber(from.scroll) ? Math.max(0, from.scroll) : nothingKept.scroll,
    allRows: from.allRows === true,
  };
}

function choicesFrom(value: unknown): ViewChoices {
  const from = record(value);
  if (from === null) return defaultChoices;
  return {
    abscissa: from.abscissa === 'time' ? 'time' : 'temperature',
    hiddenParts: strings(from.hiddenParts),
    units: entries(from.units, text),
    overlays: strings(from.overlays).slice(0, 10),
    run: text(from.run),
    against: text(from.against),
  };
}

function rangeFrom(value: unknown): Range | null {
  const from = record(value);
  if (from === null || !isNumber(from.from) || !isNumber(from.to) || !(from.from < from.to)) return null;
  return { from: from.from, to: from.to };
}

function record(value: unknown): Readonly<Record<string, unknown>> | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Readonly<Record<string, unknown>>)
    : null;
}

function entries<T>(value: unknown, read: (item: unknown) => T | null): Readonly<Record<string, T>> {
  const found: Record<string, T> = {};
  for (const [key, item] of Object.entries(record(value) ?? {})) {
    const one = read(item);
    if (one !== null) found[key] = one;
  }
  return found;
}

function strings(value: unknown): readonly string[] {
  return Array.isArray(value) ? value.filter((item): item is string => typeof item === 'string') : [];
}

function text(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
