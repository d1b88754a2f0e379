import type { Abscissa, Edge, Part, Range, ViewPoint } from '../../../server/src/protocol/view';
import { padded } from './zoom';

/** Range of the data of the parts shown (of all, where none is): °C, or s of the file's own time. A little air about it. */
export function dataRange(parts: readonly Part[], abscissa: Abscissa): Range {
  const shown = parts.some((part) => part.shown) ? parts.filter((part) => part.shown) : parts;
  const ends = shown
    .flatMap((part) => (abscissa === 'time' ? [part.start, part.end] : [part.from, part.to]))
    .filter((end) => Number.isFinite(end));
  if (ends.length === 0) return { from: 0, to: 1 };
  return padded({ from: Math.min(...ends), to: Math.max(...ends) }, 0.015);
}

/** How far one may look beyond the data: curves laid over it may reach farther. */
export function looseLimits(data: Range): Range {
  return padded(data, 0.75);
}

/** Place of an edge on the abscissa; null where the data have no temperature there. */
export function edgePlace(edge: Edge | ViewPoint, abscissa: Abscissa): number | null {
  return abscissa === 'time' ? edge.time : edge.temperature;
}

/** °C is the number shown; time is kept in s and shown in min. */
export function shownPerUnit(abscissa: Abscissa): number {
  return abscissa === 'time' ? 60 : 1;
}

/** Quantity over unit (ISO 80000-1). */
export function abscissaLabel(abscissa: Abscissa): string {
  return abscissa === 'time' ? 't/min' : 'T/°C';
}
