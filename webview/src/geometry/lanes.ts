/** Place of one lane on the sheet, px from the top of the plot. */
export interface LaneBox {
  readonly id: string;
  readonly top: number;
  /** Height of the rows that hold name and tabs. */
  readonly head: number;
  readonly plotTop: number;
  readonly plotBottom: number;
}

export const rowHeight = 22;
/** Between two lanes: the bar that is dragged. */
export const barHeight = 7;
export const lowestLane = 48;
export const highestLane = 900;

/** Lanes in a person's order, unknown ones after them as they come, hidden ones left out. */
export function arranged<T extends { readonly id: string }>(
  lanes: readonly T[],
  order: readonly string[],
  hidden: readonly string[],
): T[] {
  const rank = (lane: T): number => {
    const at = order.indexOf(lane.id);
    return at < 0 ? order.length + lanes.indexOf(lane) : at;
  };
  return lanes.filter((lane) => !hidden.includes(lane.id)).sort((a, b) => rank(a) - rank(b));
}

/** The order after moving a lane up (-1) or down (1) among those shown; hidden lanes keep their neighbours. */
export function movedLane(all: readonly string[], shown: readonly string[], id: string, by: -1 | 1): string[] {
  const at = shown.indexOf(id);
  const other = shown[at + by];
  if (at < 0 || other === undefined) return [...all];
  return all.map((lane) => (lane === id ? other : lane === other ? id : lane));
}

/** Height of a lane nobody has dragged: the lanes together fill about six tenths of the window. */
export function usualHeight(lanes: number, windowHeight: number): number {
  return Math.round(Math.min(280, Math.max(76, (0.58 * windowHeight - rowHeight * lanes) / Math.max(1, lanes))));
}

export function allowedHeight(height: number): number {
  return Math.min(highestLane, Math.max(lowestLane, Math.round(height)));
}

/** Stacks lanes of given rows and heights; the abscissa's strip begins where the last ends. */
export function stacked(lanes: readonly { readonly id: string; readonly rows: number; readonly height: number }[]): {
  readonly boxes: readonly LaneBox[];
  readonly bottom: number;
} {
  let top = 0;
  const boxes = lanes.map(({ id, rows, height }) => {
    const head = Math.max(1, rows) * rowHeight + 2;
    const box = { id, top, head, plotTop: top + head, plotBottom: top + head + height };
    top = box.plotBottom + barHeight;
    return box;
  });
  return { boxes, bottom: Math.max(0, top - barHeight) };
}
