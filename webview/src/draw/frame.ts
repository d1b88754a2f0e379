import type { KeptView } from '../../../server/src/protocol/messages';
import { ticks, type Tick } from '../../../server/src/presentation/plot/ticks';
import type { Abscissa, Lane, Range, ViewState } from '../../../server/src/protocol/view';
import { dataRange, edgePlace, looseLimits, shownPerUnit } from '../geometry/abscissa';
import { overlaps, placedBands, type Overlap, type PlacedBand } from '../geometry/bands';
import { arranged, stacked, usualHeight, type LaneBox } from '../geometry/lanes';
import { scale, type Scale } from '../geometry/scale';
import { laidTabs, type PlacedTab } from '../geometry/tabs';
import { held, padded } from '../geometry/zoom';

export interface FrameLane {
  readonly lane: Lane;
  readonly box: LaneBox;
  readonly y: Range;
  readonly yScale: Scale;
  readonly yTicks: readonly Tick[];
  readonly tabs: readonly PlacedTab[];
}

/** Where everything stands in one picture; px from the top left corner of the plot. Drawing only follows it. */
export interface Frame {
  readonly abscissa: Abscissa;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly data: Range;
  readonly x: Range;
  readonly xScale: Scale;
  readonly xTicks: readonly Tick[];
  readonly lanes: readonly FrameLane[];
  /** Top of the strip below the lanes. */
  readonly axisTop: number;
  readonly bands: readonly PlacedBand[];
  readonly overlaps: readonly Overlap[];
  readonly selected: string | null;
  /** Old and new place of an edge on its way. */
  readonly moved: { readonly statement: string; readonly was: number | null; readonly at: number } | null;
}

export interface FrameInput {
  readonly state: ViewState;
  readonly kept: KeptView;
  readonly width: number;
  readonly windowHeight: number;
  readonly moved: { readonly statement: string; readonly edge: 'from' | 'to'; readonly at: number } | null;
  /** Width of a text of the sheet's font, px. */
  readonly measure: (text: string) => number;
}

export const axisHeight = 38;
/** At the right end of a lane's head: the reading of the cursor and the lane's menu. */
export const menuWidth = 26;

export function frame(input: FrameInput): Frame {
  const { state, kept, width, moved, measure } = input;
  const { abscissa } = state.choices;
  const data = dataRange(state.parts, abscissa);
  const x = visibleRange(kept.visible, data);
  const shown = arranged(state.lanes, kept.laneOrder, kept.hiddenLanes);
  const usual = usualHeight(shown.length, input.windowHeight);
  const heightOf = (lane: Lane): number => kept.laneHeights[lane.id] ?? usual;
  const ordinates = shown.map((lane) => ordinate(lane, kept, heightOf(lane)));
  const left = gutter(ordinates.flatMap((o) => o.ticks).map((tick) => measure(tick.text)));
  const right = width - 10;
  const xScale = scale(x, left, right);
  const bands = placedBands(state.bands, state.parts, abscissa, moved ?? undefined);
  const tabs = shown.map((lane) => laneTabs(lane, shown, bands, xScale, { left, right, width }, measure));
  const rows = tabs.map((list) => Math.max(1, ...list.map((tab) => tab.row + 1)));
  const { boxes, bottom } = stacked(shown.map((l, i) => ({ id: l.id, rows: rows[i], height: heightOf(l) })));
  const lanes = shown.map((lane, i): FrameLane => {
    const box = boxes[i];
    const { y, ticks: yTicks } = ordinates[i];
    return { lane, box, y, yScale: scale(y, box.plotBottom, box.plotTop), yTicks, tabs: tabs[i] };
  });
  const origin = state.bands.find((band) => band.statement === moved?.statement);
  return {
    abscissa,
    width,
    height: bottom + axisHeight,
    left,
    right,
    data,
    x,
    xScale,
    xTicks: ticks(x, Math.max(2, Math.floor((right - left) / 84)), shownPerUnit(abscissa)),
    lanes,
    axisTop: bottom,
    bands,
    overlaps: overlaps(bands),
    selected: kept.selected,
    moved:
      moved === null || origin === undefined
        ? null
        : { statement: moved.statement, was: edgePlace(origin[moved.edge], abscissa), at: moved.at },
  };
}

/** What is looked at: the whole data, or the range chosen, as far as it is near the data that are there now. */
export function visibleRange(visible: Range | null, data: Range): Range {
  return visible === null ? data : held(visible, looseLimits(data), narrowest(data));
}

/** A hundred-thousandth of the data: beyond any sampling. */
export function narrowest(data: Range): number {
  return (data.to - data.from) * 1e-5;
}

function ordinate(lane: Lane, kept: KeptView, height: number): { readonly y: Range; readonly ticks: readonly Tick[] } {
  const y = kept.ordinates[lane.id] ?? padded(lane.extent, 0.06);
  return { y, ticks: ticks(y, Math.max(2, Math.floor(height / 30))) };
}

/** All lanes have one left border; it moves in steps, so that a digit more does not shift the sheet each time. */
function gutter(widths: readonly number[]): number {
  return Math.max(48, Math.ceil((Math.max(0, ...widths) + 16) / 8) * 8);
}

function laneTabs(
  lane: Lane,
  shown: readonly Lane[],
  bands: readonly PlacedBand[],
  xScale: Scale,
  room: { readonly left: number; readonly right: number; readonly width: number },
  measure: (text: string) => number,
): readonly PlacedTab[] {
  const mine = bands.filter(({ band }) => shown.find((l) => band.lanes.includes(l.id))?.id === lane.id);
  const wanted = mine.map(({ band, range }) => ({
    id: band.statement,
    left: xScale.px(range.from),
    right: xScale.px(range.to),
    width: Math.min(180, Math.ceil(1.02 * measure(band.name)) + (band.severity === null ? 13 : 29)),
  }));
  const taken = [
    { left: 0, right: headWidth(lane, measure) },
    { left: room.width - menuWidth - readingWidth(room.width), right: room.width },
  ];
  return laidTabs(wanted, taken, { left: room.left, right: room.right });
}

/** What the lane's name, its unit and its direction take of the first row. */
export function headWidth(lane: Lane, measure: (text: string) => number): number {
  const direction = lane.direction === null ? 0 : measure(lane.direction) + 30;
  return 24 + measure(lane.label) * 1.08 + (lane.units.length > 1 ? 16 : 4) + direction;
}

export function readingWidth(width: number): number {
  return width < 520 ? 84 : 132;
}
