import type { ViewState } from '../../../server/src/protocol/view';
import { css } from '../colour/colour';
import type { Palette } from '../colour/palette';
import { abscissaLabel } from '../geometry/abscissa';
import type { PlacedBand } from '../geometry/bands';
import { besideEachOther } from '../geometry/besideEachOther';
import { rowHeight } from '../geometry/lanes';
import type { Frame, FrameLane } from './frame';
import { crisp } from './surface';
import { VectorSheet } from './vectorSheet';

/** What lies below the curves: grid, axes, bands, hatching, changes of gas. `measure`: width of a text, px. */
export function drawUnder(
  state: ViewState,
  frame: Frame,
  colours: Palette,
  measure: (text: string) => number,
): VectorSheet {
  const sheet = new VectorSheet();
  for (const lane of frame.lanes) drawGrid(sheet, frame, lane, colours);
  for (const placed of frame.bands) {
    if (placed.band.statement !== frame.selected) drawBand(sheet, frame, placed, colours);
  }
  for (const placed of frame.bands) {
    if (placed.band.statement === frame.selected) drawBand(sheet, frame, placed, colours);
  }
  drawOverlaps(sheet, frame, colours);
  drawGas(sheet, state, frame, colours, measure);
  drawAbscissa(sheet, frame, colours, measure);
  for (const lane of frame.lanes) drawOrdinate(sheet, frame, lane, colours);
  return sheet;
}

function drawGrid(sheet: VectorSheet, frame: Frame, { box, yTicks, yScale }: FrameLane, colours: Palette): void {
  const grid = css(colours.grid);
  for (const { value } of frame.xTicks) {
    const x = crisp(frame.xScale.px(value));
    sheet.line(x, box.plotTop, x, box.plotBottom, grid);
  }
  for (const { value } of yTicks) {
    const y = crisp(yScale.px(value));
    sheet.line(frame.left, y, frame.right, y, grid);
  }
  sheet.line(frame.left, crisp(box.plotTop), frame.right, crisp(box.plotTop), grid);
  const edge = css(colours.edge);
  sheet.line(crisp(frame.left), box.plotTop, crisp(frame.left), box.plotBottom + 1, edge);
  sheet.line(frame.left, crisp(box.plotBottom), frame.right, crisp(box.plotBottom), edge);
}

function drawOrdinate(sheet: VectorSheet, frame: Frame, { box, yTicks, yScale }: FrameLane, colours: Palette): void {
  for (const { value, text } of yTicks) {
    const y = yScale.px(value);
    // A label that would be cut by the border of its lane is left out, not moved: it would mark another place.
    if (y <= box.plotTop + 6 || y >= box.plotBottom - 5) continue;
    sheet.text(text, frame.left - 8, y, css(colours.muted), { anchor: 'end', at: 'middle' });
  }
}

function drawBand(sheet: VectorSheet, frame: Frame, placed: PlacedBand, colours: Palette): void {
  const { band, range } = placed;
  const isSelected = band.statement === frame.selected;
  const left = Math.max(frame.left, frame.xScale.px(range.from));
  const right = Math.min(frame.right, frame.xScale.px(range.to));
  if (right < frame.left || left > frame.right) return;
  const lanes = frame.lanes.filter(({ lane }) => band.lanes.includes(lane.id));
  const fill = isSelected ? css(colours.accent, colours.isHighContrast ? 0.2 : 0.11) : css(colours.ink, 0.045);
  const stroke = css(isSelected ? colours.accent : colours.edge);
  const width = isSelected ? 1.5 : 1;
  for (const { box } of lanes) {
    const height = box.plotBottom - box.plotTop;
    sheet.rectangle(left, box.plotTop, Math.max(1, right - left), height, fill);
    for (const at of [range.from, range.to]) {
      const x = crisp(frame.xScale.px(at));
      if (x >= frame.left && x <= frame.right + 0.5) sheet.line(x, box.plotTop, x, box.plotBottom, stroke, width);
    }
    if (band.severity === 'warning' || band.severity === 'error') {
      sheet.hatched(left, box.plotTop, Math.max(2, right - left), 6, css(colours[band.severity]));
    }
  }
  const first = lanes[0];
  const tab = first?.tabs.find((t) => t.id === band.statement);
  if (first === undefined || tab === undefined) return;
  // The stem that leads from the tab down to the band.
  const stem = crisp(Math.max(frame.left, frame.xScale.px(range.from)));
  sheet.line(stem, first.box.top + (tab.row + 1) * rowHeight, stem, first.box.plotTop, stroke, width);
}

function drawOverlaps(sheet: VectorSheet, frame: Frame, colours: Palette): void {
  for (const { range, lanes } of frame.overlaps) {
    const left = Math.max(frame.left, frame.xScale.px(range.from));
    const right = Math.min(frame.right, frame.xScale.px(range.to));
    for (const { lane, box } of frame.lanes) {
      if (!lanes.includes(lane.id)) continue;
      sheet.hatched(left, box.plotTop, right - left, box.plotBottom - box.plotTop, css(colours.warning, 0.75));
    }
  }
}

/** Thin lines where the gas changes; the names stand below the numbers of the abscissa, clear of the curves. */
function drawGas(
  sheet: VectorSheet,
  state: ViewState,
  frame: Frame,
  colours: Palette,
  measure: (text: string) => number,
): void {
  const changes = state.gasChanges
    .map(({ gas, time, temperature }) => ({ gas, x: frame.xScale.px(frame.abscissa === 'time' ? time : temperature) }))
    .filter(({ x }) => x >= frame.left && x <= frame.right)
    .sort((a, b) => a.x - b.x);
  const end = frame.right - measure(abscissaLabel(frame.abscissa)) - 14;
  const wanted = changes.map(({ gas, x }) => ({ left: x + 4, width: measure(gas) }));
  const lefts = besideEachOther(wanted, frame.left, end, 12);
  const muted = css(colours.muted);
  changes.forEach(({ gas, x }, i) => {
    for (const { box } of frame.lanes) sheet.line(crisp(x), box.plotTop, crisp(x), box.plotBottom, muted, 1, '1 3');
    if (x < end) sheet.line(crisp(x), frame.axisTop + 21, crisp(x), frame.axisTop + 34, muted, 1, '1 3');
    const room = (i + 1 < lefts.length ? lefts[i + 1] - 12 : end) - lefts[i];
    sheet.text(fitted(measure, gas, room), lefts[i], frame.axisTop + 22, muted, { anchor: 'start', at: 'top' });
  });
}

/** As much of a text as there is room for. */
function fitted(measure: (text: string) => number, text: string, room: number): string {
  if (measure(text) <= room + 1) return text;
  let length = text.length - 1;
  while (length > 0 && measure(`${text.slice(0, length)}…`) > room) length--;
  return length === 0 ? '' : `${text.slice(0, length)}…`;
}

function drawAbscissa(sheet: VectorSheet, frame: Frame, colours: Palette, measure: (text: string) => number): void {
  const top = frame.axisTop;
  const muted = css(colours.muted);
  for (const { value } of frame.xTicks) {
    const x = crisp(frame.xScale.px(value));
    sheet.line(x, top, x, top + 4, css(colours.edge));
  }
  let free = -Infinity;
  for (const { value, text } of frame.xTicks) {
    const width = measure(text);
    const centre = Math.min(Math.max(frame.xScale.px(value), width / 2 + 2), frame.width - width / 2 - 2);
    if (centre - width / 2 < free + 8) continue;
    free = centre + width / 2;
    sheet.text(text, centre, top + 7, muted, { anchor: 'middle', at: 'top' });
  }
  const label = abscissaLabel(frame.abscissa);
  sheet.text(label, frame.right, top + 22, css(colours.ink), { anchor: 'end', at: 'top' });
}
