import type { Edges } from '../control/edges';
import type { EdgeMove } from '../geometry/edgeMove';
import type { Look } from '../look';
import { intoChoice } from './intoChoice';
import { valueBox } from './valueBox';

export interface Editing {
  /** The value box of a handle: a number typed there is written at once, as one edit. */
  box(handle: HTMLElement): Promise<void>;
  choose(move: EdgeMove): Promise<'gloss' | 'method' | null>;
}

export function editing(outside: { host(): HTMLElement; look(): Look | null; edges: Edges }): Editing {
  const { edges } = outside;
  const place = (handle: Element | null): { left: number; top: number } => {
    const host = outside.host().getBoundingClientRect();
    const at = handle?.getBoundingClientRect() ?? host;
    return { left: at.left - host.left + 4, top: Math.max(0, at.top - host.top + 6) };
  };
  return {
    async box(handle) {
      const { statement = '', which } = handle.dataset;
      const side = which === 'to' ? 'to' : 'from';
      if (!edges.begin(statement, side, 'keys') || edges.move === null) return;
      handle.dataset.box = 'open';
      const { left, top } = place(handle);
      const name = handle.getAttribute('aria-label') ?? '';
      const value = await valueBox(outside.host(), left, top, name, edges.move.edge);
      if (value === null) edges.cancel();
      else {
        edges.set(value);
        edges.commit();
      }
      delete handle.dataset.box;
      handle.focus();
    },
    choose(move) {
      const handle = [...outside.host().querySelectorAll<HTMLElement>('.handle')].find(
        (h) => h.dataset.statement === move.statement && h.dataset.which === move.which,
      );
      const { left, top } = place(handle ?? null);
      const companions = outside.look()?.state.companions.length ?? 0;
      return intoChoice(outside.host(), left, top, companions + 1);
    },
  };
}
