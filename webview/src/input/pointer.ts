import type { Range } from '../../../server/src/protocol/view';
import { px } from '../dom';
import type { Frame, FrameLane } from '../draw/frame';
import { dragged, panned, wheelFactor, zoomAbout } from '../geometry/zoom';

export interface PointerOutside {
  frame(): Frame | null;
  /** What is to be in view from the next picture on: of turns of a wheel that come faster than pictures, none is lost. */
  wanted(frame: Frame): Range;
  /** The same of a lane's ordinate. */
  wantedOrdinate(lane: FrameLane): Range;
  look(visible: Range | null): void;
  ordinate(lane: string, range: Range | null): void;
  hover(x: number | null): void;
  /** A press without a drag in a lane. */
  click(lane: string, x: number): void;
}

type Zone =
  | { readonly kind: 'lane' | 'gutter'; readonly lane: FrameLane }
  | { readonly kind: 'axis' }
  | { readonly kind: 'none' };

/** Mouse, pen and touch on the plot: wheel and drag on an axis zoom, drag in a lane pans, double click shows all data. */
export function pointerInput(surface: HTMLElement, rubber: HTMLElement, outside: PointerOutside): void {
  const place = (event: MouseEvent): { readonly x: number; readonly y: number } => {
    const box = surface.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  surface.addEventListener('wheel', (event) => wheel(event, place(event), outside), { passive: false });
  surface.addEventListener('dblclick', (event) => {
    const frame = outside.frame();
    const zone = frame === null ? null : zoneAt(frame, place(event));
    if (zone?.kind === 'gutter') outside.ordinate(zone.lane.lane.id, null);
    else if (zone !== null && zone.kind !== 'none') outside.look(null);
  });
  surface.addEventListener('pointermove', (event) => {
    const frame = outside.frame();
    const { x, y } = place(event);
    if (frame === null) return;
    const zone = zoneAt(frame, { x, y });
    surface.dataset.zone = zone.kind;
    if (event.buttons === 0) outside.hover(zone.kind === 'lane' ? frame.xScale.value(x) : null);
  });
  let wasDrag = false;
  surface.addEventListener('click', (event) => {
    const frame = outside.frame();
    const zone = frame === null ? null : zoneAt(frame, place(event));
    // The second press of a double click shows all data; it is no second visit.
    if (frame === null || zone?.kind !== 'lane' || wasDrag || event.detail > 1) return;
    outside.click(zone.lane.lane.id, frame.xScale.value(place(event).x));
  });
  surface.addEventListener('pointerleave', () => outside.hover(null));
  surface.addEventListener('pointerdown', (event) => {
    const frame = outside.frame();
    if (event.button !== 0 || frame === null) return;
    const start = place(event);
    const zone = zoneAt(frame, start);
    if (zone.kind === 'none') return;
    surface.setPointerCapture(event.pointerId);
    const drag = dragOf(frame, zone, start, rubber, outside);
    let hasMoved = false;
    const move = (e: PointerEvent): void => {
      const now = place(e);
      hasMoved ||= Math.hypot(now.x - start.x, now.y - start.y) >= 4;
      if (hasMoved) drag.move(now);
    };
    const stop = (e: PointerEvent): void => {
      surface.removeEventListener('pointermove', move);
      surface.removeEventListener('pointerup', stop);
      surface.removeEventListener('pointercancel', stop);
      delete surface.dataset.panning;
      rubber.hidden = true;
      if (e.type === 'pointercancel') return;
      if (hasMoved) drag.end(place(e));
      wasDrag = hasMoved;
    };
    surface.addEventListener('pointermove', move);
    surface.addEventListener('pointerup', stop);
    surface.addEventListener('pointercancel', stop);
  });
}

interface Point {
  readonly x: number;
  readonly y: number;
}

interface Drag {
  move(now: Point): void;
  end(now: Point): void;
}

function dragOf(frame: Frame, zone: Zone, start: Point, rubber: HTMLElement, outside: PointerOutside): Drag {
  if (zone.kind === 'lane') {
    const move = (now: Point): void => outside.look(panned(frame.x, (start.x - now.x) * frame.xScale.perPixel));
    return { move, end: move };
  }
  if (zone.kind === 'gutter') {
    const { lane, box, yScale } = zone.lane;
    const held = (y: number): number => Math.min(box.plotBottom, Math.max(box.plotTop, y));
    return {
      move: (now) => stretch(rubber, 0, Math.min(start.y, held(now.y)), frame.right, Math.abs(held(now.y) - start.y)),
      end: (now) => {
        const range = dragged(yScale.value(start.y), yScale.value(held(now.y)), Math.abs(now.y - start.y));
        if (range !== null) outside.ordinate(lane.id, range);
      },
    };
  }
  const held = (x: number): number => Math.min(frame.right, Math.max(frame.left, x));
  const first = held(start.x);
  const top = frame.lanes[0]?.box.plotTop ?? 0;
  return {
    move: (now) =>
      stretch(rubber, Math.min(first, held(now.x)), top, Math.abs(held(now.x) - first), frame.axisTop - top + 20),
    end: (now) => {
      const range = dragged(frame.xScale.value(first), frame.xScale.value(held(now.x)), Math.abs(now.x - first));
      if (range !== null) outside.look(range);
    },
  };
}

function stretch(rubber: HTMLElement, left: number, top: number, width: number, height: number): void {
  rubber.hidden = false;
  rubber.style.left = px(left);
  rubber.style.top = px(top);
  rubber.style.width = px(width);
  rubber.style.height = px(height);
}

function wheel(event: WheelEvent, { x, y }: Point, outside: PointerOutside): void {
  const frame = outside.frame();
  const zone = frame === null ? null : zoneAt(frame, { x, y });
  if (frame === null || zone === null || zone.kind === 'none') return;
  event.preventDefault();
  // Lines and pages of the wheel as pixels, as browsers count them.
  const unit = event.deltaMode === 1 ? 40 : event.deltaMode === 2 ? 800 : 1;
  const sideways = event.shiftKey ? event.deltaY : event.deltaX;
  if (zone.kind === 'gutter') {
    const { yScale, lane } = zone.lane;
    outside.ordinate(
      lane.id,
      zoomAbout(outside.wantedOrdinate(zone.lane), yScale.value(y), wheelFactor(event.deltaY * unit)),
    );
  } else if (Math.abs(sideways) > Math.abs(event.shiftKey ? 0 : event.deltaY)) {
    outside.look(panned(outside.wanted(frame), sideways * unit * frame.xScale.perPixel));
  } else {
    const centre = frame.xScale.value(Math.min(frame.right, Math.max(frame.left, x)));
    outside.look(zoomAbout(outside.wanted(frame), centre, wheelFactor(event.deltaY * unit)));
  }
}

function zoneAt(frame: Frame, { x, y }: Point): Zone {
  if (y >= frame.axisTop) return { kind: 'axis' };
  const lane = frame.lanes.find(({ box }) => y >= box.plotTop && y <= box.plotBottom);
  if (lane === undefined) return { kind: 'none' };
  return { kind: x < frame.left ? 'gutter' : 'lane', lane };
}
