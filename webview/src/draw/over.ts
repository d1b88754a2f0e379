import type { Band, Part, ViewPoint, ViewShape, ViewState } from '../../../server/src/protocol/view';
import { css } from '../colour/colour';
import type { Palette } from '../colour/palette';
import { edgePlace } from '../geometry/abscissa';
import { firstNotBelow, type CurveBlocks, type Sample } from '../state/blocks';
import { columnMeans } from './columnMeans';
import { laidOver, markerOutline, styleOf } from './curveStyle';
import type { Frame, FrameLane } from './frame';
import { crisp, line } from './surface';

type Context = CanvasRenderingContext2D;
type Blocks = ReadonlyMap<string, CurveBlocks>;

/** The filled area of the selected statement in one lane: below the curves. */
export function drawAreas(context: Context, frame: Frame, lane: FrameLane, blocks: Blocks, colours: Palette): void {
  const band = selectedBand(frame);
  for (const shape of band?.construction ?? []) {
    if (shape.shape !== 'area' || band === undefined || shape.lane !== lane.lane.id) continue;
    fillArea(context, frame, lane, band, shape, blocks, colours);
  }
}

/** Whether anything lies over the curves. */
export function drawsOver(state: ViewState, frame: Frame): boolean {
  const isBuilt = (selectedBand(frame)?.construction.length ?? 0) > 0;
  return isBuilt || frame.moved !== null || ramps(state, frame).length > 1 || laidOver(state).length > 0;
}

/** What lies over the curves: marks of curves laid over, the construction of the selected statement, a moved edge's ghost. */
export function drawOver(context: Context, state: ViewState, frame: Frame, blocks: Blocks, colours: Palette): void {
  drawWays(context, state, frame, blocks, colours);
  drawMarkers(context, state, frame, blocks, colours);
  for (const shape of selectedBand(frame)?.construction ?? []) {
    if (shape.shape === 'area') continue;
    inLane(context, frame, shape.lane, (lane) => {
      if (shape.shape === 'line') drawLine(context, frame, lane, shape, colours);
      else drawMark(context, frame, lane, shape.at, colours);
    });
  }
  drawGhost(context, frame, colours);
}

/** The selected band, where its part is shown. */
export function selectedBand(frame: Frame): Band | undefined {
  return frame.bands.find(({ band }) => band.statement === frame.selected)?.band;
}

function inLane(context: Context, frame: Frame, id: string, draw: (lane: FrameLane) => void): void {
  const lane = frame.lanes.find((l) => l.lane.id === id);
  if (lane === undefined) return;
  context.save();
  context.beginPath();
  context.rect(frame.left, lane.box.plotTop, frame.right - frame.left, lane.box.plotBottom - lane.box.plotTop);
  context.clip();
  draw(lane);
  context.restore();
}

function points(frame: Frame, lane: FrameLane, list: readonly ViewPoint[]): [number, number][] {
  return list.flatMap((point) => {
    const x = edgePlace(point, frame.abscissa);
    return x === null ? [] : [[frame.xScale.px(x), lane.yScale.px(point.y)] as [number, number]];
  });
}

function traced(context: Context, list: readonly (readonly [number, number])[]): void {
  context.beginPath();
  list.forEach(([x, y], i) => (i === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
}

const lineDashes = { level: [], tangent: [7, 3], baseline: [2, 3] } as const;

function drawLine(
  context: Context,
  frame: Frame,
  lane: FrameLane,
  shape: Extract<ViewShape, { shape: 'line' }>,
  colours: Palette,
): void {
  context.strokeStyle = css(colours.accent);
  context.lineWidth = shape.role === 'level' ? 2 : 1.25;
  context.setLineDash([...lineDashes[shape.role]]);
  traced(context, points(frame, lane, shape.points));
  context.stroke();
}

function drawMark(context: Context, frame: Frame, lane: FrameLane, at: ViewPoint, colours: Palette): void {
  for (const [x, y] of points(frame, lane, [at])) {
    context.beginPath();
    context.arc(x, y, 3.5, 0, 2 * Math.PI);
    context.fillStyle = css(colours.ground);
    context.fill();
    context.strokeStyle = css(colours.accent);
    context.lineWidth = 1.5;
    context.stroke();
  }
}

function fillArea(
  context: Context,
  frame: Frame,
  lane: FrameLane,
  band: Band,
  shape: Extract<ViewShape, { shape: 'area' }>,
  blocks: Blocks,
  colours: Palette,
): void {
  const ends = [edgePlace(shape.from, frame.abscissa), edgePlace(shape.to, frame.abscissa)];
  // A mask cuts a part into several curves.
  const curves = lane.lane.curves.filter((c) => c.of === 'run' && c.part === band.part);
  const drawn = curves.map((c) => blocks.get(c.id)?.drawn ?? []).filter((samples) => samples.length > 0);
  if (ends[0] === null || ends[1] === null || drawn.length === 0) return;
  const low = Math.min(ends[0], ends[1]);
  const high = Math.max(ends[0], ends[1]);
  const place = { low, high, visible: frame.x, xScale: frame.xScale, yScale: lane.yScale };
  const top = drawn.sort((a, b) => a[0].x - b[0].x).flatMap((samples) => columnMeans(samples, place));
  const base = points(frame, lane, shape.baseline).sort((a, b) => b[0] - a[0]);
  traced(context, [...top, ...base]);
  context.closePath();
  context.fillStyle = css(colours.accent, colours.isHighContrast ? 0.45 : 0.28);
  context.fill();
}

function drawMarkers(context: Context, state: ViewState, frame: Frame, blocks: Blocks, colours: Palette): void {
  const entries = laidOver(state);
  if (entries.length === 0) return;
  for (const { lane } of frame.lanes) {
    inLane(context, frame, lane.id, (placed) => {
      for (const curve of lane.curves) {
        const { marker } = styleOf(lane, curve, entries);
        if (marker === null) continue;
        const outline = markerOutline(marker, 3.2);
        // Each curve's marks begin elsewhere, so that those of curves close together do not cover each other.
        const first = frame.left + 20 + 23 * (entries.findIndex((e) => e.name === curve.name) % 6);
        for (const { x, y } of along(blocks.get(curve.id)?.drawn ?? [], frame, first)) {
          const [cx, cy] = [frame.xScale.px(x), placed.yScale.px(y)];
          traced(
            context,
            outline.map(([dx, dy]) => [cx + dx, cy + dy] as const),
          );
          context.closePath();
          context.fillStyle = css(colours.ground);
          context.fill();
          context.strokeStyle = css(colours.muted);
          context.lineWidth = 1.1;
          context.stroke();
        }
      }
    });
  }
}

/** Where several parts share an abscissa in °C: an arrowhead on each ramp tells which way it went in time. */
function drawWays(context: Context, state: ViewState, frame: Frame, blocks: Blocks, colours: Palette): void {
  const list = ramps(state, frame);
  if (list.length < 2) return;
  for (const { lane } of frame.lanes) {
    inLane(context, frame, lane.id, (placed) => {
      for (const curve of lane.curves) {
        const place = list.findIndex((part) => part.name === curve.part);
        const samples = blocks.get(curve.id)?.drawn ?? [];
        if (curve.of !== 'run' || place < 0 || samples.length < 2) continue;
        const from = Math.max(frame.x.from, samples[0].x);
        const to = Math.min(frame.x.to, samples[samples.length - 1].x);
        const sample = samples[firstNotBelow(samples, from + (0.3 + 0.08 * (place % 4)) * (to - from))];
        if (to <= from || sample === undefined) continue;
        const way = list[place].to > list[place].from ? 1 : -1;
        const [x, y] = [frame.xScale.px(sample.x), placed.yScale.px(sample.y)];
        traced(context, [
          [x - 4 * way, y - 4],
          [x + 4 * way, y],
          [x - 4 * way, y + 4],
        ]);
        context.closePath();
        context.fillStyle = css(colours.ink);
        context.fill();
      }
    });
  }
}

/** Ramps that lie over one another; over time none do. */
function ramps(state: ViewState, frame: Frame): readonly Part[] {
  if (frame.abscissa === 'time') return [];
  return state.parts.filter((part) => part.shown && Math.abs(part.to - part.from) > 5);
}

/** One sample about every 140 px. */
function along(samples: readonly Sample[], frame: Frame, first: number): Sample[] {
  const found: Sample[] = [];
  for (let px = first; px < frame.right; px += 140) {
    const wanted = frame.xScale.value(px);
    const sample = samples[firstNotBelow(samples, wanted)];
    if (sample !== undefined && Math.abs(frame.xScale.px(sample.x) - px) < 20) found.push(sample);
  }
  return found;
}

function drawGhost(context: Context, frame: Frame, colours: Palette): void {
  const { moved } = frame;
  const placed = frame.bands.find(({ band }) => band.statement === moved?.statement);
  if (moved === null || placed === undefined) return;
  const lanes = frame.lanes.filter(({ lane }) => placed.band.lanes.includes(lane.id));
  for (const { box } of lanes) {
    if (moved.was !== null) {
      context.strokeStyle = css(colours.muted);
      context.lineWidth = 1;
      context.setLineDash([4, 4]);
      const x = crisp(frame.xScale.px(moved.was));
      if (x >= frame.left && x <= frame.right) line(context, x, box.plotTop, x, box.plotBottom);
    }
    context.setLineDash([]);
    context.strokeStyle = css(colours.accent);
    context.lineWidth = 2;
    const x = Math.min(frame.right, Math.max(frame.left, frame.xScale.px(moved.at)));
    line(context, x, box.plotTop, x, box.plotBottom);
  }
}
