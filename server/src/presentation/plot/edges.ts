import type { Edge } from '../../protocol/view';
import type { Amount } from '../../language/model';
import { numberIn } from './writtenNumber';
import { valueIn, type PlacedEnd, type PlacedWindow } from './placedWindow';
import type { WrittenPlace } from './places';

export type Which = 'from' | 'to';

/** Decimals of ends that a rule found, as they are shown and written when they freeze. */
export const foundDecimals = { '°C': 1, min: 2 } as const;

/** One end of a band: its place, and what a drag of it would do. */
export function edgeOf(which: Which, placed: PlacedWindow, place: WrittenPlace, role: 'run' | 'method'): Edge {
  const end = placed[which];
  const { unit } = placed;
  const common = { time: end.time, temperature: finite(end.temperature), unit };
  const written = writtenEnd(which, placed, place);
  if (written === null) {
    return { ...common, value: end.value, decimals: foundDecimals[unit], source: 'rule', token: 'window.at' };
  }
  const { amount, token } = written;
  const isOwn = place.holder.file === (role === 'method' ? 'method' : 'gloss');
  return {
    ...common,
    value: valueIn(amount, unit),
    decimals: shownDecimals(amount, unit),
    source: isOwn ? 'own' : 'method',
    token,
  };
}

export interface WrittenEnd {
  readonly amount: Amount;
  readonly token: 'window.from' | 'window.to' | 'window.at';
  /** Name of the token in the tree. */
  readonly span: 'window.from' | 'window.to' | 'at';
}

/**
 * The number of the text that is this end, in the order of time: on a cooling ramp the higher temperature comes first,
 * whichever way it is written. Null where a rule finds the end.
 */
export function writtenEnd(which: Which, placed: PlacedWindow, place: WrittenPlace): WrittenEnd | null {
  if (place.point !== null) return { amount: place.point, token: 'window.at', span: 'at' };
  if (place.window?.rule !== 'range') return null;
  const { from, to } = place.window.range;
  const { unit, part } = placed;
  const falls = unit === '°C' && part !== null && part.rate !== null && part.rate < 0;
  const isWrittenInTime = valueIn(from, unit) < valueIn(to, unit) !== falls;
  const token = (which === 'from') === isWrittenInTime ? 'window.from' : 'window.to';
  return { amount: token === 'window.from' ? from : to, token, span: token };
}

/** Decimals of a written number, in the unit the edge is shown in: a second is a hundredth of a minute and a little. */
function shownDecimals(amount: Amount, unit: '°C' | 'min'): number {
  const own = numberIn(amount.text)?.place ?? 0;
  const per = unit === 'min' ? (amount.unit?.factor ?? 60) / 60 : 1;
  return Math.max(0, -Math.floor(own + Math.log10(per) + 1e-9));
}

function finite(value: PlacedEnd['temperature']): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
