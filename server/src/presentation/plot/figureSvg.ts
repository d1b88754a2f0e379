import type { Lane, Range, ViewState } from '../../protocol/view';
import { escapeXml } from './escapeXml';
import { abscissaAxis, gasLines, headWidth, laneAxes, laneHead } from './figure/axes';
import { bandFields, bandNames, drawnBands, hatchings } from './figure/bands';
import { caption, captionLines, captionRow, legend, legendRows } from './figure/caption';
import { constructed, constructionsOf } from './figure/construction';
import { curvesOf } from './figure/curves';
import { fontSize, layoutOf, type FigureBlocks, type FigureLane } from './figure/layout';
import { element } from './figure/svg';
import { figureColours, type FigureColours, type FigureTheme } from './palette';

export type { FigureBlocks } from './figure/layout';

export interface FigureOptions {
  /** Colours by name, or given (those of an editor). */
  readonly theme: FigureTheme | FigureColours;
  /** px. */
  readonly width: number;
  readonly height: number;
  /** No paper behind it. */
  readonly transparent?: boolean;
  /** Statement whose construction is drawn; null: of all. */
  readonly selected?: string | null;
  /** Ids of lanes in the order to draw them; those not named follow. */
  readonly laneOrder?: readonly string[];
  readonly hiddenLanes?: readonly string[];
  /** Said of the revision in the caption; absent: the number of the view's. */
  readonly revision?: string;
  /** Ordinate ranges by lane where they are not those of the data. */
  readonly ordinates?: Readonly<Record<string, Range>>;
}

/**
 * The picture of the curves view as SVG 1.1: valid XML on its own, text as text in named fonts with a generic one behind
 * them, nothing loaded from elsewhere. The same state, blocks and options give the same bytes.
 *
 * @param blocks samples to draw by curve id, ascending, in the unit of their lane (as `samples` gives them)
 * @param visible range of the abscissa, °C or s of the file's own time; null: all parts shown
 */
export function figureSvg(
  state: ViewState,
  blocks: FigureBlocks,
  visible: Range | null,
  options: FigureOptions,
): string {
  const { width, height, selected = null } = options;
  const colours = typeof options.theme === 'string' ? figureColours[options.theme] : options.theme;
  const lanes = arranged(state.lanes, options.laneOrder ?? [], options.hiddenLanes ?? []);
  const margin = 12;
  const words = captionLines(state, width - 2 * margin, options.revision);
  const entries = legendRows(state, width - 2 * margin);
  const below = 26 + captionRow * (words.length + entries.length) + margin;
  const layout = layoutOf({
    state,
    lanes,
    visible,
    ordinates: options.ordinates ?? {},
    width,
    height,
    above: margin,
    below,
  });
  const bands = drawnBands(state, layout);
  const drawn = layout.lanes.map((at, i) => {
    const clipped = [
      bandFields(at, bands, selected, colours),
      curvesOf(at, blocks, layout, state, colours),
      constructionsOf(at, constructed(state, selected), blocks, layout, colours),
    ].join('');
    return [
      laneAxes(at, layout, colours),
      element('g', { 'clip-path': `url(#lane-${i})` }, clipped),
      laneHead(at, layout, colours),
      bandNames(at, bands, selected, layout, headWidth(at, layout), colours),
    ].join('');
  });
  const clips = layout.lanes.map((at, i) => clipOf(at, i, layout.left, layout.right)).join('');
  const underAxis = layout.axisTop + 24;
  const paper = options.transparent === true ? '' : element('rect', { width, height, fill: colours.paper });
  const picture = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'font-family': fonts,
      'font-size': fontSize,
    },
    element('title', {}, escapeXml(state.title === '' ? 'Curves' : state.title)),
    element('desc', {}, escapeXml(summary(state, lanes))),
    element('defs', {}, hatchings(colours) + clips),
    paper,
    ...drawn,
    gasLines(state, layout, colours),
    abscissaAxis(layout, colours),
    legend(entries, margin, underAxis, colours),
    caption(words, margin, underAxis + captionRow * entries.length, colours),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${picture}\n`;
}

const fonts = 'Helvetica, Arial, "Liberation Sans", sans-serif';

function clipOf(at: FigureLane, i: number, left: number, right: number): string {
  const place = { x: left, y: at.plotTop, width: right - left, height: at.plotBottom - at.plotTop };
  return element('clipPath', { id: `lane-${i}` }, element('rect', place));
}

function arranged(lanes: readonly Lane[], order: readonly string[], hidden: readonly string[]): readonly Lane[] {
  const rank = (lane: Lane): number => {
    const at = order.indexOf(lane.id);
    return at < 0 ? order.length + lanes.indexOf(lane) : at;
  };
  return lanes.filter((lane) => !hidden.includes(lane.id)).sort((a, b) => rank(a) - rank(b));
}

/** What a screen reader says of the picture. */
function summary(state: ViewState, lanes: readonly Lane[]): string {
  const over = state.choices.abscissa === 'time' ? 'time in minutes' : 'temperature in degrees Celsius';
  const names = lanes.map(
    (l) => `${l.name} in ${l.unit === '1' ? 'ones' : l.unit}${l.direction === null ? '' : `, ${l.direction}`}`,
  );
  const windows = state.bands.map((b) => b.name);
  return [`Curves over ${over}: ${names.join('; ')}.`, windows.length === 0 ? '' : `Windows: ${windows.join(', ')}.`]
    .filter((s) => s !== '')
    .join(' ');
}
