import { make, setAttribute } from '../dom';
import { allowedHeight, highestLane, lowestLane } from '../geometry/lanes';
import type { Actions } from '../look';
import { say } from '../words';

/** The bar below a lane that sets its height: dragged, or by arrow keys (window splitter pattern). */
export function laneBar(
  id: string,
  actions: Actions,
  height: () => number,
): { readonly element: HTMLElement; update(name: string): void } {
  const element = make('div', {
    class: 'lane-bar',
    attributes: {
      role: 'separator',
      tabindex: '0',
      'aria-orientation': 'horizontal',
      'aria-valuemin': String(lowestLane),
      'aria-valuemax': String(highestLane),
    },
  });
  const set = (to: number): void => actions.keep({ do: 'height', lane: id, height: allowedHeight(to) });
  element.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.stopPropagation();
    element.focus();
    element.setPointerCapture(event.pointerId);
    const start = event.clientY - height();
    const move = (e: PointerEvent): void => set(e.clientY - start);
    const stop = (): void => {
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', stop);
      element.removeEventListener('pointercancel', stop);
    };
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', stop);
    element.addEventListener('pointercancel', stop);
  });
  element.addEventListener('dblclick', (event) => event.stopPropagation());
  element.addEventListener('keydown', (event) => {
    const by = event.key === 'ArrowDown' ? 10 : event.key === 'ArrowUp' ? -10 : 0;
    if (by === 0) return;
    event.preventDefault();
    event.stopPropagation();
    set(height() + by);
  });
  return {
    element,
    update(name) {
      setAttribute(element, 'aria-label', say('laneBar', name));
      setAttribute(element, 'aria-valuenow', String(Math.round(height())));
      setAttribute(element, 'aria-valuetext', say('pixels', Math.round(height())));
    },
  };
}
