import type { Band, ViewState } from '../../../protocol/view';
import type { FigureColours } from '../palette';
import { fontSize, placeOf, tabRow, type FigureLane, type FigureLayout } from './layout';
import { element, line, roughWidth, text } from './svg';

export interface DrawnBand {
  readonly band: Band;
  /** px, within the picture. */
  readonly left: number;
  readonly right: number;
}

/** Bands of the parts shown that are in view. */
export function drawnBands(state: ViewState, layout: FigureLayout): readonly DrawnBand[] {
  const hidden = state.parts.filter((p) => !p.shown).map((p) => p.name);
  return state.bands.flatMap((band) => {
    const ends = [placeOf(band.from, layout.abscissa), placeOf(band.to, layout.abscissa)];
    if (hidden.includes(band.part) || ends[0] === null || ends[1] === null) return [];
    const [a, b] = [layout.x(ends[0]), layout.x(ends[1])];
    const left = Math.max(layout.left, Math.min(a, b));
    const right = Math.min(layout.right, Math.max(a, b));
    return right < layout.left || left > layout.right ? [] : [{ band, left, right }];
  });
}

/** Below the curves of a lane: fields and edges of the windows, hatched where they overlap. */
export function bandFields(
  at: FigureLane,
  bands: readonly DrawnBand[],
  selected: string | null,
  colours: FigureColours,
): string {
  const height = at.plotBottom - at.plotTop;
  const here = bands.filter(({ band }) => band.lanes.includes(at.lane.id));
  const fields = here.map(({ band, left, right }) => {
    const isSelected = band.statement === selected;
    const stroke = isSelected ? colours.accent : colours.edge;
    const width = isSelected ? 1.4 : 0.8;
    const edges = [left, right].map((x) => line(x, at.plotTop, x, at.plotBottom, { stroke, 'stroke-width': width }));
    const fill = { fill: isSelected ? colours.accent : colours.ink, 'fill-opacity': isSelected ? 0.1 : 0.05 };
    const field = element('rect', { x: left, y: at.plotTop, width: Math.max(0.5, right - left), height, ...fill });
    // A window with a finding wears a hatched strip, in its own hatching.
    const isMarked = band.severity === 'warning' || band.severity === 'error';
    const strip = { x: left, y: at.plotTop, width: Math.max(2, right - left), height: 6 };
    return (
      field + edges.join('') + (isMarked ? element('rect', { ...strip, fill: `url(#hatch-${band.severity})` }) : '')
    );
  });
  const overlaps = here.flatMap((a, i) =>
    here.slice(i + 1).flatMap((b) => {
      const named = a.band.overlaps.includes(b.band.name) || b.band.overlaps.includes(a.band.name);
      const [left, right] = [Math.max(a.left, b.left), Math.min(a.right, b.right)];
      if (!named || a.band.part !== b.band.part || right <= left) return [];
      return [element('rect', { x: left, y: at.plotTop, width: right - left, height, fill: 'url(#hatch-warning)' })];
    }),
  );
  return [...fields, ...overlaps].join('');
}

/** Names of the windows above a lane, in two rows; one that finds no room is left to the lanes that have it. */
export function bandNames(
  at: FigureLane,
  bands: readonly DrawnBand[],
  selected: string | null,
  layout: FigureLayout,
  taken: number,
  colours: FigureColours,
): string {
  const free = [taken, layout.left];
  return bands
    .filter(({ band }) => band.lanes[0] === at.lane.id)
    .sort((a, b) => a.left - b.left || (a.band.name < b.band.name ? -1 : 1))
    .map(({ band, left, right }) => {
      const width = roughWidth(band.name, fontSize - 1);
      const wanted = Math.min(Math.max(layout.left, (left + right - width) / 2), layout.right - width);
      const row = [1, 0].find((r) => free[r] <= wanted);
      if (row === undefined) return '';
      free[row] = wanted + width + 6;
      const fill = band.statement === selected ? colours.accent : colours.ink;
      return text(wanted, at.top + (row + 1) * tabRow, band.name, { fill, 'font-size': fontSize - 1 });
    })
    .join('');
}

/** Two hatchings, told apart by their slant. */
export function hatchings(colours: FigureColours): string {
  const one = (id: string, turn: number, stroke: string): string =>
    element(
      'pattern',
      { id, width: 5, height: 5, patternUnits: 'userSpaceOnUse', patternTransform: `rotate(${turn})` },
      line(0, 0, 0, 5, { stroke, 'stroke-width': 1.4 }),
    );
  return one('hatch-warning', 45, colours.warning) + one('hatch-error', -45, colours.error);
}
