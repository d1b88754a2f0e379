import { css } from '../colour/colour';
import { keyed, make, px, setAttribute } from '../dom';
import { drawOver, drawsOver } from '../draw/over';
import { cleared } from '../draw/surface';
import { drawUnder } from '../draw/under';
import type { Look } from '../look';
import { say } from '../words';
import { cursorLine } from './cursorLine';
import { laneView, type LaneOutside, type LaneView } from './lane';

export interface Plot {
  readonly element: HTMLElement;
  /** Takes the pointer and, when focused, the keys. */
  readonly surface: HTMLElement;
  /** The strip that shows a range being dragged on an axis. */
  readonly rubber: HTMLElement;
  update(look: Look): void;
  /** Says in words what the pictures show; apart from drawing, because it looks at every sample. */
  summarize(look: Look): void;
  /** Only the hairline and what reads it. */
  updateCursor(look: Look): void;
}

/** The stacked lanes. Below: grid and bands; then each lane's curves; above: construction; on top: what can be used. */
export function plot(outside: LaneOutside): Plot {
  const under = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  setAttribute(under, 'class', 'layer under');
  setAttribute(under, 'aria-hidden', 'true');
  const over = make('canvas', { class: 'layer above', attributes: { 'aria-hidden': 'true' } });
  const surface = make('div', {
    class: 'surface',
    attributes: {
      tabindex: '0',
      role: 'application',
      'aria-label': say('curves'),
      'aria-description': say('curvesHelp'),
    },
  });
  const lanes = make('div', { class: 'lanes' });
  const hairline = cursorLine();
  const rubber = make('div', { class: 'rubber', attributes: { 'aria-hidden': 'true' } });
  rubber.hidden = true;
  const element = make('div', { class: 'plot', children: [under, surface, lanes, over, hairline.element, rubber] });
  const views = new Map<string, LaneView>();
  return {
    element,
    surface,
    rubber,
    update(look) {
      const { frame, colours, state, blocks } = look;
      element.style.height = px(frame.height);
      setAttribute(under, 'width', String(frame.width));
      setAttribute(under, 'height', String(frame.height));
      drawUnder(state, frame, colours, (text) => outside.measure(text)).show(under);
      keyed(
        lanes,
        frame.lanes,
        ({ lane }) => lane.id,
        ({ lane }) => {
          const view = laneView(lane.id, outside);
          views.set(lane.id, view);
          return view.element;
        },
        (_element, placed) => views.get(placed.lane.id)?.update(look, placed),
      );
      for (const [id, view] of views) {
        if (frame.lanes.some(({ lane }) => lane.id === id)) continue;
        view.destroy();
        views.delete(id);
      }
      // An empty sheet laid over all the others costs as much as a full one.
      over.hidden = !drawsOver(state, frame);
      const above = over.hidden ? null : cleared(over, frame.width, frame.height);
      if (above !== null) drawOver(above, state, frame, blocks, colours);
      surface.style.height = px(frame.height);
      setAttribute(surface, 'data-lanes', String(frame.lanes.length));
      hairline.update(look);
      element.style.setProperty('--moved', css(colours.accent));
    },
    summarize(look) {
      for (const view of views.values()) view.summarize(look);
    },
    updateCursor(look) {
      hairline.update(look);
      for (const view of views.values()) view.updateReading(look);
    },
  };
}
