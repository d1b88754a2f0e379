import type { ViewState } from '../../../protocol/view';
import { axisLabel } from '../laneWords';
import type { FigureColours } from '../palette';
import { fontSize, tabRow, type FigureLane, type FigureLayout } from './layout';
import { line, roughWidth, text } from './svg';

/** Frame, grid and numbers of a lane; its name with the direction of heat flow stands above. */
export function laneAxes(at: FigureLane, layout: FigureLayout, colours: FigureColours): string {
  const { left, right, xTicks, x } = layout;
  const grid = { stroke: colours.grid, 'stroke-width': 0.7 };
  const edge = { stroke: colours.edge, 'stroke-width': 1 };
  const vertical = xTicks.map((t) => line(x(t.value), at.plotTop, x(t.value), at.plotBottom, grid));
  const horizontal = at.ticks.map((t) => {
    const y = at.y(t.value);
    const words = text(left - 7, y + 4, t.text, { fill: colours.ink, 'text-anchor': 'end' });
    return line(left, y, right, y, grid) + line(left - 4, y, left, y, edge) + words;
  });
  const frame =
    line(left, at.plotTop, left, at.plotBottom, edge) + line(left, at.plotBottom, right, at.plotBottom, edge);
  return [...vertical, ...horizontal, frame].join('');
}

/** Where the words of a lane's head end, px. */
export function headWidth(at: FigureLane, layout: FigureLayout): number {
  return layout.left + roughWidth(headWords(at), fontSize) + 26;
}

export function laneHead(at: FigureLane, layout: FigureLayout, colours: FigureColours): string {
  const y = at.top + tabRow;
  const words = text(layout.left, y, headWords(at), { fill: colours.ink, 'font-weight': 'bold' });
  const way = at.lane.direction === 'endothermic up' ? -1 : at.lane.direction === 'endothermic down' ? 1 : 0;
  if (way === 0) return words;
  // The arrow beside the words, for those who do not read them.
  const arrow = layout.left + roughWidth(headWords(at), fontSize) + 10;
  const middle = y - 4;
  const style = { fill: 'none', stroke: colours.ink, 'stroke-width': 1.3 };
  const tip = middle + 5 * way;
  return (
    words +
    line(arrow, middle - 5 * way, arrow, tip, style) +
    line(arrow - 3, tip - 3.5 * way, arrow, tip, style) +
    line(arrow + 3, tip - 3.5 * way, arrow, tip, style)
  );
}

function headWords({ lane }: FigureLane): string {
  return lane.direction === null ? lane.label : `${lane.label}   ${lane.direction}`;
}

/** The abscissa that all lanes share. */
export function abscissaAxis(layout: FigureLayout, colours: FigureColours): string {
  const { axisTop, xTicks, x, right } = layout;
  const label = layout.abscissa === 'time' ? axisLabel('t', 'min') : axisLabel('T', '°C');
  const room = right - roughWidth(label, fontSize) - 12;
  const marks = xTicks.map((t) => {
    const at = x(t.value);
    const tick = line(at, axisTop, at, axisTop + 4, { stroke: colours.edge, 'stroke-width': 1 });
    const end = at + roughWidth(t.text, fontSize) / 2;
    return tick + (end > room ? '' : text(at, axisTop + 17, t.text, { fill: colours.ink, 'text-anchor': 'middle' }));
  });
  const words = text(right, axisTop + 17, label, { fill: colours.ink, 'text-anchor': 'end', 'font-weight': 'bold' });
  return marks.join('') + words;
}

/** Thin lines where one gas follows another, with the name of the one that comes. */
export function gasLines(state: ViewState, layout: FigureLayout, colours: FigureColours): string {
  const last = layout.lanes.at(-1);
  if (last === undefined) return '';
  return state.gasChanges
    .map((change) => {
      const x = layout.x(layout.abscissa === 'time' ? change.time : change.temperature);
      if (!(x >= layout.left && x <= layout.right)) return '';
      const style = { stroke: colours.muted, 'stroke-width': 1, 'stroke-dasharray': '1 3' };
      const lines = layout.lanes.map((at) => line(x, at.plotTop, x, at.plotBottom, style));
      const isRight = x + 5 + roughWidth(change.gas, fontSize - 1) > layout.right;
      const anchor = isRight ? 'end' : 'start';
      const side = isRight ? x - 4 : x + 4;
      const words = { fill: colours.muted, 'font-size': fontSize - 1, 'text-anchor': anchor };
      return lines.join('') + text(side, last.plotBottom - 5, change.gas, words);
    })
    .join('');
}
