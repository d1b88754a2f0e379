import type { Actions, Look } from '../look';
import { reordered } from './laneHead';

/** Drags a lane by its grip: it changes places with a neighbour as soon as the pointer is past that one's middle. */
export function laneMover(
  lane: string,
  event: PointerEvent,
  plot: HTMLElement,
  look: () => Look | null,
  actions: Actions,
): void {
  const grip = event.currentTarget;
  if (event.button !== 0 || !(grip instanceof HTMLElement)) return;
  event.stopPropagation();
  grip.setPointerCapture(event.pointerId);
  const move = (e: PointerEvent): void => {
    const now = look();
    if (now === null) return;
    const y = e.clientY - plot.getBoundingClientRect().top;
    const { lanes } = now.frame;
    const at = lanes.findIndex((l) => l.lane.id === lane);
    const middle = (i: number): number => (lanes[i].box.top + lanes[i].box.plotBottom) / 2;
    const by = at > 0 && y < middle(at - 1) ? -1 : at >= 0 && at < lanes.length - 1 && y > middle(at + 1) ? 1 : 0;
    if (by !== 0) actions.keep({ do: 'order', lanes: reordered(now, lane, by) });
  };
  const stop = (): void => {
    grip.removeEventListener('pointermove', move);
    grip.removeEventListener('pointerup', stop);
    grip.removeEventListener('pointercancel', stop);
  };
  grip.addEventListener('pointermove', move);
  grip.addEventListener('pointerup', stop);
  grip.addEventListener('pointercancel', stop);
}
