import type { ViewState } from '../../../server/src/protocol/view';
import { css } from '../colour/colour';
import type { Palette } from '../colour/palette';
import { abscissaLabel } from '../geometry/abscissa';
import type { PlacedBand } from '../geometry/bands';
import { besideEachOther } from '../geometry/besideEachOther';
import { rowHeight } from '../geometry/lanes';
import type { Frame, FrameLane } from './frame';
import { crisp, hatched, line } from './surface';

type Context = CanvasRenderingContext2D;

/** What lies below the curves: grid, axes, bands, hatching, changes of gas. */
export function drawUnder(context: Context, state: ViewState, frame: Frame, colours: Palette, font: string): void {
  context.font = font;
  for (const lane of frame.lanes) drawGrid(context, frame, lane, colours);
  for (const placed of frame.bands) {
    if (placed.band.statement !== frame.selected) drawBand(context, frame, placed, colours);
  }
  for (const placed of frame.bands) {
    if (placed.band.statement === frame.selected) drawBand(context, frame, placed, colours);
  }
  drawOverlaps(context, frame, colours);
  drawGas(context, state, frame, colours);
  drawAbscissa(context, frame, colours);
}

function drawGrid(context: Context, frame: Frame, { box, yTicks, yScale }: FrameLane, colours: Palette): void {
  context.lineWidth = 1;
  context.strokeStyle = css(colours.grid);
  for (const { value } of frame.xTicks) {
    const x = crisp(frame.xScale.px(value));
    line(context, x, box.plotTop, x, box.plotBottom);
  }
  context.textAlign = 'right';
  context.textBaseline = 'middle';
  context.fillStyle = css(colours.muted);
  for (const { value, text } of yTicks) {
    const y = yScale.px(value);
    line(context, frame.left, crisp(y), frame.right, crisp(y));
    // A label that would be cut by the border of its lane is left out, not moved: it would mark another place.
    if (y > box.plotTop + 6 && y < box.plotBottom - 5) context.fillText(text, frame.left - 8, y + 0.5);
  }
  line(context, frame.left, crisp(box.plotTop), frame.right, crisp(box.plotTop));
  context.strokeStyle = css(colours.edge);
  line(context, crisp(frame.left), box.plotTop, crisp(frame.left), box.plotBottom + 1);
  line(context, frame.left, crisp(box.plotBottom), frame.right, crisp(box.plotBottom));
}

function drawBand(context: Context, frame: Frame, placed: PlacedBand, colours: Palette): void {
  const { band, range } = placed;
  const isSelected = band.statement === frame.selected;
  const left = Math.max(frame.left, frame.xScale.px(range.from));
  const right = Math.min(frame.right, frame.xScale.px(range.to));
  if (right < frame.left || left > frame.right) return;
  const lanes = frame.lanes.filter(({ lane }) => band.lanes.includes(lane.id));
  context.lineWidth = isSelected ? 1.5 : 1;
  for (const { box } of lanes) {
    const height = box.plotBottom - box.plotTop;
    context.fillStyle = isSelected ? css(colours.accent, colours.isHighContrast ? 0.2 : 0.11) : css(colours.ink, 0.045);
    context.fillRect(left, box.plotTop, Math.max(1, right - left), height);
    context.strokeStyle = css(isSelected ? colours.accent : colours.edge);
    for (const at of [range.from, range.to]) {
      const x = frame.xScale.px(at);
      if (x >= frame.left && x <= frame.right) line(context, crisp(x), box.plotTop, crisp(x), box.plotBottom);
    }
    if (band.severity === 'warning' || band.severity === 'error') {
      hatched(context, left, box.plotTop, Math.max(2, right - left), 6, css(colours[band.severity]));
    }
  }
  const first = lanes[0];
  const tab = first?.tabs.find((t) => t.id === band.statement);
  if (first === undefined || tab === undefined) return;
  // The stem that leads from the tab down to the band.
  const stem = crisp(Math.max(frame.left, frame.xScale.px(range.from)));
  line(context, stem, first.box.top + (tab.row + 1) * rowHeight, stem, first.box.plotTop);
}

function drawOverlaps(context: Context, frame: Frame, colours: Palette): void {
  for (const { range, lanes } of frame.overlaps) {
    const left = Math.max(frame.left, frame.xScale.px(range.from));
    const right = Math.min(frame.right, frame.xScale.px(range.to));
    for (const { lane, box } of frame.lanes) {
      if (!lanes.includes(lane.id)) continue;
      hatched(context, left, box.plotTop, right - left, box.plotBottom - box.plotTop, css(colours.warning, 0.75));
    }
  }
}

/** Thin lines where the gas changes; the names stand below the numbers of the abscissa, clear of the curves. */
function drawGas(context: Context, state: ViewState, frame: Frame, colours: Palette): void {
  const changes = state.gasChanges
    .map(({ gas, time, temperature }) => ({ gas, x: frame.xScale.px(frame.abscissa === 'time' ? time : temperature) }))
    .filter(({ x }) => x >= frame.left && x <= frame.right)
    .sort((a, b) => a.x - b.x);
  const end = frame.right - context.measureText(abscissaLabel(frame.abscissa)).width - 14;
  const wanted = changes.map(({ gas, x }) => ({ left: x + 4, width: context.measureText(gas).width }));
  const lefts = besideEachOther(wanted, frame.left, end, 12);
  context.save();
  context.strokeStyle = css(colours.muted);
  context.fillStyle = css(colours.muted);
  context.lineWidth = 1;
  context.textBaseline = 'top';
  context.textAlign = 'left';
  context.setLineDash([1, 3]);
  changes.forEach(({ gas, x }, i) => {
    for (const { box } of frame.lanes) line(context, crisp(x), box.plotTop, crisp(x), box.plotBottom);
    if (x < end) line(context, crisp(x), frame.axisTop + 21, crisp(x), frame.axisTop + 34);
    const room = (i + 1 < lefts.length ? lefts[i + 1] - 12 : end) - lefts[i];
    context.fillText(fitted(context, gas, room), lefts[i], frame.axisTop + 22);
  });
  context.restore();
}

/** As much of a text as there is room for. */
function fitted(context: Context, text: string, room: number): string {
  if (context.measureText(text).width <= room + 1) return text;
  let length = text.length - 1;
  while (length > 0 && context.measureText(`${text.slice(0, length)}…`).width > room) length--;
  return length === 0 ? '' : `${text.slice(0, length)}…`;
}

function drawAbscissa(context: Context, frame: Frame, colours: Palette): void {
  const top = frame.axisTop;
  const label = abscissaLabel(frame.abscissa);
  context.textBaseline = 'top';
  context.fillStyle = css(colours.ink);
  context.textAlign = 'right';
  context.fillText(label, frame.right, top + 22);
  context.fillStyle = css(colours.muted);
  context.strokeStyle = css(colours.edge);
  context.lineWidth = 1;
  let free = -Infinity;
  for (const { value, text } of frame.xTicks) {
    const x = frame.xScale.px(value);
    line(context, crisp(x), top, crisp(x), top + 4);
    const width = context.measureText(text).width;
    const centre = Math.min(Math.max(x, width / 2 + 2), frame.width - width / 2 - 2);
    if (centre - width / 2 < free + 8) continue;
    free = centre + width / 2;
    context.textAlign = 'center';
    context.fillText(text, centre, top + 7);
  }
}
