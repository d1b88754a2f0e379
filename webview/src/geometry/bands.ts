import type { Abscissa, Band, Edge, Part, Range } from '../../../server/src/protocol/view';
import { edgePlace } from './abscissa';

/** A band as it lies on the abscissa: `low` and `high` say which of its edges is on which side (cooling turns them). */
export interface PlacedBand {
  readonly band: Band;
  readonly range: Range;
  readonly low: 'from' | 'to';
}

/** Bands of the parts shown that have a place on this abscissa. `moved`: places of an edge being dragged. */
export function placedBands(
  bands: readonly Band[],
  parts: readonly Part[],
  abscissa: Abscissa,
  moved?: { readonly statement: string; readonly edge: 'from' | 'to'; readonly at: number },
): PlacedBand[] {
  const hidden = new Set(parts.filter((part) => !part.shown).map((part) => part.name));
  return bands.flatMap((band) => {
    if (hidden.has(band.part)) return [];
    const place = (which: 'from' | 'to'): number | null =>
      moved?.statement === band.statement && moved.edge === which ? moved.at : edgePlace(band[which], abscissa);
    const from = place('from');
    const to = place('to');
    if (from === null || to === null || !Number.isFinite(from) || !Number.isFinite(to)) return [];
    return [{ band, range: { from: Math.min(from, to), to: Math.max(from, to) }, low: from <= to ? 'from' : 'to' }];
  });
}

/** Where two bands overlap with a finding, in the lanes both read. Each pair once. */
export interface Overlap {
  readonly range: Range;
  readonly lanes: readonly string[];
}

export function overlaps(placed: readonly PlacedBand[]): Overlap[] {
  return placed.flatMap((a, i) =>
    placed.slice(i + 1).flatMap((b) => {
      if (!a.band.overlaps.includes(b.band.name) && !b.band.overlaps.includes(a.band.name)) return [];
      if (a.band.part !== b.band.part) return [];
      const range = { from: Math.max(a.range.from, b.range.from), to: Math.min(a.range.to, b.range.to) };
      const lanes = a.band.lanes.filter((lane) => b.band.lanes.includes(lane));
      return range.from < range.to && lanes.length > 0 ? [{ range, lanes }] : [];
    }),
  );
}

/** The band a click at `x` in a lane means: the selected one if it is there, else the narrowest. */
export function bandAt(
  placed: readonly PlacedBand[],
  lane: string,
  x: number,
  selected: string | null,
): PlacedBand | null {
  const here = placed.filter((p) => p.band.lanes.includes(lane) && p.range.from <= x && x <= p.range.to);
  const narrow = [...here].sort((a, b) => a.range.to - a.range.from - (b.range.to - b.range.from));
  return here.find((p) => p.band.statement === selected) ?? narrow[0] ?? null;
}

/** The edge of a band as it is spoken: `620 °C`. */
export function edgeText(edge: Edge, value = edge.value): string {
  return `${value.toFixed(edge.decimals)} ${edge.unit}`;
}
