import type { Abscissa, Lane, Range, ViewPoint, ViewState } from '../../../protocol/view';
import { ticks, type Tick } from '../ticks';
import { roughWidth } from './svg';

export interface Sample {
  readonly x: number;
  readonly y: number;
}

/** Samples of each curve to draw by its id, ascending in the abscissa, in the unit of its lane. */
export type FigureBlocks = ReadonlyMap<string, readonly Sample[]>;

export interface FigureLane {
  readonly lane: Lane;
  /** px: the head with name and tabs, then the plot. */
  readonly top: number;
  readonly plotTop: number;
  readonly plotBottom: number;
  readonly ticks: readonly Tick[];
  readonly y: (value: number) => number;
}

/** Where everything stands; drawing only follows it. */
export interface FigureLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly abscissa: Abscissa;
  readonly visible: Range;
  readonly x: (value: number) => number;
  readonly xTicks: readonly Tick[];
  readonly lanes: readonly FigureLane[];
  readonly axisTop: number;
}

export interface LayoutInput {
  readonly state: ViewState;
  readonly lanes: readonly Lane[];
  readonly visible: Range | null;
  readonly ordinates: Readonly<Record<string, Range>>;
  readonly width: number;
  readonly height: number;
  /** px taken above the lanes and below the axis. */
  readonly above: number;
  readonly below: number;
}

export const fontSize = 12;
export const tabRow = 15;
const laneGap = 10;
/** Rows of the head of a lane: its name, and two of tabs. */
const headHeight = 2 * tabRow + 6;

export function layoutOf(input: LayoutInput): FigureLayout {
  const { state, lanes, width, height, above, below } = input;
  const { abscissa } = state.choices;
  const visible = input.visible ?? wholeRange(state);
  const ordinates = lanes.map((lane) => input.ordinates[lane.id] ?? padded(lane.extent, 0.05));
  const axisTop = height - below;
  const each = (axisTop - above - laneGap * Math.max(0, lanes.length - 1)) / Math.max(1, lanes.length);
  const plotHeight = Math.max(20, each - headHeight);
  const marks = ordinates.map((range) => ticks(range, Math.max(2, Math.min(8, Math.floor(plotHeight / 26)))));
  const widest = Math.max(24, ...marks.flat().map((t) => roughWidth(t.text, fontSize)));
  const left = Math.min(width / 3, 14 + widest);
  const right = width - 12;
  const x = scale(visible, left, right);
  return {
    width,
    height,
    left,
    right,
    abscissa,
    visible,
    x,
    xTicks: ticks(visible, Math.max(2, Math.min(12, Math.floor((right - left) / 64))), abscissa === 'time' ? 60 : 1),
    axisTop,
    lanes: lanes.map((lane, i) => {
      const top = above + i * (each + laneGap);
      const plotTop = top + headHeight;
      const plotBottom = plotTop + plotHeight;
      return { lane, top, plotTop, plotBottom, ticks: marks[i], y: scale(ordinates[i], plotBottom, plotTop) };
    }),
  };
}

export function placeOf(point: Pick<ViewPoint, 'time' | 'temperature'>, abscissa: Abscissa): number | null {
  return abscissa === 'time' ? point.time : point.temperature;
}

/** The parts shown (all, where none is), with a little air. */
export function wholeRange({ parts, choices }: ViewState): Range {
  const shown = parts.some((p) => p.shown) ? parts.filter((p) => p.shown) : parts;
  const ends = shown.flatMap((p) => (choices.abscissa === 'time' ? [p.start, p.end] : [p.from, p.to]));
  const known = ends.filter((e) => Number.isFinite(e));
  if (known.length === 0) return { from: 0, to: 1 };
  return padded({ from: Math.min(...known), to: Math.max(...known) }, 0.015);
}

function padded({ from, to }: Range, share: number): Range {
  const air = to > from ? (to - from) * share : Math.max(Math.abs(from) * 0.05, 0.5);
  return { from: from - air, to: to + air };
}

function scale({ from, to }: Range, start: number, end: number): (value: number) => number {
  const per = to === from ? 0 : (end - start) / (to - from);
  return (value) => start + (value - from) * per;
}
