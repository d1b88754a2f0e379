import type { Band, Edge } from '../../../server/src/protocol/view';
import type { Edges } from '../control/edges';
import { keyed, make, px, setAttribute } from '../dom';
import { edgeText } from '../geometry/bands';
import type { Look } from '../look';
import { say } from '../words';

interface Handle {
  readonly band: Band;
  readonly which: 'from' | 'to';
  readonly left: number;
  readonly top: number;
  readonly height: number;
  /** Middle of the first lane, where the grip is seen. */
  readonly middle: number;
}

export interface HandlesOutside {
  readonly edges: Edges;
  look(): Look | null;
  select(statement: string): void;
  /** Abscissa of a pointer, and of how much one pixel is. */
  at(clientX: number): { readonly x: number; readonly perPixel: number };
  /** Opens the value box of a handle. */
  box(handle: HTMLElement): void;
}

/**
 * The edges of the bands that have their tab in this lane. Each is a slider: it can be dragged, or focused and moved by
 * keys; only those of the selected band are in the tab order.
 */
export function updateHandles(parent: HTMLElement, look: Look, lane: string, outside: HandlesOutside): void {
  keyed(
    parent,
    handlesOf(look, lane),
    ({ band, which }) => `${band.statement}/${which}`,
    ({ band, which }) => handleElement(band.statement, which, outside),
    (element, handle) => updateHandle(element, handle, look),
  );
}

function handlesOf({ frame }: Look, laneId: string): Handle[] {
  return frame.bands.flatMap(({ band, range, low }) => {
    const lanes = frame.lanes.filter(({ lane }) => band.lanes.includes(lane.id));
    const first = lanes[0];
    const last = lanes.at(-1);
    if (first === undefined || last === undefined || first.lane.id !== laneId) return [];
    const top = first.box.plotTop - first.box.top;
    const height = last.box.plotBottom - first.box.plotTop;
    const middle = (first.box.plotBottom - first.box.plotTop) / 2;
    return (['from', 'to'] as const).flatMap((which): Handle[] => {
      const left = frame.xScale.px(which === low ? range.from : range.to);
      return left < frame.left - 1 || left > frame.right + 1 ? [] : [{ band, which, left, top, height, middle }];
    });
  });
}

function handleElement(statement: string, which: 'from' | 'to', outside: HandlesOutside): HTMLElement {
  const handle = make('div', {
    class: 'handle',
    attributes: { role: 'slider', 'aria-orientation': 'horizontal' },
    children: [make('span', { class: 'grip-mark' })],
  });
  const { edges } = outside;
  const isMine = (): boolean => edges.move?.statement === statement && edges.move.which === which;
  handle.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.stopPropagation();
    handle.focus();
    outside.select(statement);
    if (!edges.begin(statement, which, 'pointer')) return;
    handle.setPointerCapture(event.pointerId);
    follow(handle, event.clientX, outside);
  });
  handle.addEventListener('dblclick', (event) => event.stopPropagation());
  handle.addEventListener('keydown', (event) => keys(event, handle, statement, which, outside, isMine));
  handle.addEventListener('focus', () => outside.select(statement));
  handle.addEventListener('blur', () => {
    if (isMine() && edges.move?.by === 'keys' && !edges.isLet && handle.dataset.box !== 'open') edges.cancel();
  });
  return handle;
}

/** From the press to the release of the pointer. Only a pointer that has moved changes anything. */
function follow(handle: HTMLElement, pressedAt: number, { edges, at }: HandlesOutside): void {
  let hasLeft = false;
  const move = (event: PointerEvent): void => {
    hasLeft ||= Math.abs(event.clientX - pressedAt) >= 2;
    const { x, perPixel } = at(event.clientX);
    if (hasLeft) edges.drag(x, perPixel);
  };
  const stop = (): void => {
    handle.removeEventListener('pointermove', move);
    handle.removeEventListener('pointerup', up);
    handle.removeEventListener('pointercancel', leave);
    document.removeEventListener('keydown', escape, true);
  };
  const up = (): void => {
    stop();
    edges.commit();
  };
  const leave = (): void => {
    stop();
    edges.cancel();
  };
  const escape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    leave();
  };
  handle.addEventListener('pointermove', move);
  handle.addEventListener('pointerup', up);
  handle.addEventListener('pointercancel', leave);
  document.addEventListener('keydown', escape, true);
}

function keys(
  event: KeyboardEvent,
  handle: HTMLElement,
  statement: string,
  which: 'from' | 'to',
  { edges, box }: HandlesOutside,
  isMine: () => boolean,
): void {
  if (event.ctrlKey || event.metaKey || event.altKey || event.target !== handle) return;
  const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
  if (event.key in steps) {
    if (isMine() || edges.begin(statement, which, 'keys')) edges.step(steps[event.key] * (event.shiftKey ? 10 : 1));
  } else if (event.key === 'Enter') {
    if (isMine()) edges.commit();
    else box(handle);
  } else if (event.key === 'Escape' && isMine()) edges.cancel();
  else return;
  event.preventDefault();
  event.stopPropagation();
}

function updateHandle(element: HTMLElement, { band, which, left, top, height, middle }: Handle, look: Look): void {
  const isSelected = band.statement === look.kept.selected;
  const edge = band[which];
  const move = look.move?.statement === band.statement && look.move.which === which ? look.move : null;
  const value = move?.value ?? edge.value;
  element.style.transform = `translate(${px(left)}, ${px(top)})`;
  element.style.height = px(height);
  element.style.setProperty('--grip-top', px(middle - 11));
  element.classList.toggle('is-selected', isSelected);
  element.classList.toggle('is-moving', move !== null);
  element.dataset.statement = band.statement;
  element.dataset.which = which;
  setAttribute(element, 'tabindex', isSelected ? '0' : '-1');
  setAttribute(element, 'aria-label', say(which === 'from' ? 'edgeFrom' : 'edgeTo', band.name));
  setAttribute(element, 'aria-valuenow', String(Number(value.toPrecision(12))));
  setAttribute(element, 'aria-valuetext', spoken(edge, value, move !== null));
  setAttribute(element, 'aria-readonly', look.state.editable ? null : 'true');
  element.dataset.written = move === null ? '' : (look.preview?.written ?? edgeText(edge, value).replace(/ .*/, ''));
}

function spoken(edge: Edge, value: number, isMoving: boolean): string {
  const source = edge.source === 'own' ? '' : `, ${say(edge.source === 'rule' ? 'edgeRule' : 'edgeMethod')}`;
  if (isMoving) return say('edgePending', edgeText(edge, value), edgeText(edge));
  return `${edgeText(edge)}${source}`;
}
