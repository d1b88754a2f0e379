import type { Band, ViewPoint, ViewShape, ViewState } from '../../../protocol/view';
import type { FigureColours } from '../palette';
import { fontSize, placeOf, type FigureBlocks, type FigureLane, type FigureLayout } from './layout';
import { chain, element, roughWidth, text } from './svg';

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What the evaluation drew, in one lane: areas, levels, tangents, baselines, marks with their temperatures. */
export function constructionsOf(
  at: FigureLane,
  bands: readonly Band[],
  blocks: FigureBlocks,
  layout: FigureLayout,
  colours: FigureColours,
): string {
  const shapes = bands.flatMap((band) =>
    band.construction.filter((shape) => shape.lane === at.lane.id).map((shape) => ({ band, shape })),
  );
  const areas = shapes.map(({ band, shape }) =>
    shape.shape === 'area' ? areaOf(shape, band, at, blocks, layout, colours) : '',
  );
  const lines = shapes.map(({ shape }) => (shape.shape === 'line' ? lineOf(shape, at, layout, colours) : ''));
  const marks = shapes.flatMap(({ shape }) => (shape.shape === 'mark' ? [shape] : []));
  return [...areas, ...lines].join('') + marksOf(marks, at, layout, colours);
}

/** Bands whose construction is drawn: of the selected statement, or of all the parts shown. */
export function constructed(state: ViewState, selected: string | null): readonly Band[] {
  const hidden = state.parts.filter((p) => !p.shown).map((p) => p.name);
  const shown = state.bands.filter((b) => !hidden.includes(b.part));
  return selected === null ? shown : shown.filter((b) => b.statement === selected);
}

function pointsOf(points: readonly ViewPoint[], at: FigureLane, layout: FigureLayout): (readonly [number, number])[] {
  return points.flatMap((p) => {
    const x = placeOf(p, layout.abscissa);
    return x === null ? [] : [[layout.x(x), at.y(p.y)] as const];
  });
}

const dashes = { level: '', tangent: '6 3', baseline: '2 2' } as const;

function lineOf(
  shape: Extract<ViewShape, { shape: 'line' }>,
  at: FigureLane,
  layout: FigureLayout,
  colours: FigureColours,
): string {
  const d = chain(pointsOf(shape.points, at, layout));
  const style = { fill: 'none', stroke: colours.accent, 'stroke-width': shape.role === 'level' ? 1.6 : 1 };
  return d === '' ? '' : element('path', { d, ...style, 'stroke-dasharray': dashes[shape.role] });
}

/** Between the curve of the run and the baseline that was used. */
function areaOf(
  shape: Extract<ViewShape, { shape: 'area' }>,
  band: Band,
  at: FigureLane,
  blocks: FigureBlocks,
  layout: FigureLayout,
  colours: FigureColours,
): string {
  const baseline = [...pointsOf(shape.baseline, at, layout)].sort((a, b) => a[0] - b[0]);
  if (baseline.length < 2) return '';
  const [left, right] = [baseline[0][0], baseline[baseline.length - 1][0]];
  const curve = at.lane.curves
    .filter((c) => c.of === 'run' && c.part === band.part)
    .flatMap((c) => blocks.get(c.id) ?? [])
    .map(({ x, y }) => [layout.x(x), at.y(y)] as const)
    .filter(([x]) => x >= left && x <= right);
  if (curve.length < 2) return '';
  const d = `${chain([...curve, ...baseline.reverse()])}Z`;
  return element('path', { d, fill: colours.accent, 'fill-opacity': 0.16, stroke: 'none' });
}

/** Dots with words beside them, none on another: to the right or left, then farther up and down. */
function marksOf(
  marks: readonly Extract<ViewShape, { shape: 'mark' }>[],
  at: FigureLane,
  layout: FigureLayout,
  colours: FigureColours,
): string {
  const size = fontSize - 2;
  const taken: Box[] = [];
  return marks
    .flatMap((mark) => pointsOf([mark.at], at, layout).map(([x, y]) => ({ x, y, words: mark.text })))
    .filter(({ x, y }) => x >= layout.left && x <= layout.right && y >= at.plotTop && y <= at.plotBottom)
    .sort((a, b) => a.x - b.x || a.y - b.y)
    .map(({ x, y, words }) => {
      const width = roughWidth(words, size);
      const boxes = [-1, 1, -2, 2, -3, 3, -4, 4].flatMap((step) =>
        [x + 6, x - 6 - width].map((left): Box => {
          const top = y + step * (size + 2) - size / 2;
          return { left, top, right: left + width, bottom: top + size + 2 };
        }),
      );
      const fits = (box: Box): boolean =>
        box.left >= layout.left &&
        box.right <= layout.right &&
        box.top >= at.plotTop &&
        box.bottom <= at.plotBottom &&
        taken.every((o) => box.right <= o.left || o.right <= box.left || box.bottom <= o.top || o.bottom <= box.top);
      const box = boxes.find(fits);
      const dot = element('circle', { cx: x, cy: y, r: 2.6, fill: colours.accent });
      if (box === undefined) return dot;
      taken.push(box);
      const [left, top, height] = [box.left - 2, box.top, box.bottom - box.top];
      // Paper behind the words, for curves run through here.
      const ground = element('rect', {
        x: left,
        y: top,
        width: width + 4,
        height,
        fill: colours.paper,
        'fill-opacity': 0.8,
      });
      return ground + dot + text(box.left, box.bottom - 3, words, { fill: colours.accent, 'font-size': size });
    })
    .join('');
}
