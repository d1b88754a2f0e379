import { css } from '../colour/colour';
import { make, px, setAttribute } from '../dom';
import { laneChart, type Curve } from '../draw/chart';
import { isOwn, laidOver, styleOf } from '../draw/curveStyle';
import type { FrameLane } from '../draw/frame';
import { drawAreas } from '../draw/over';
import type { Actions, Look } from '../look';
import { noBlocks } from '../state/blocks';
import { laneSummary } from './drawn';
import { updateHandles, type HandlesOutside } from './handles';
import { laneBar } from './laneBar';
import { laneHead } from './laneHead';
import { updateMarks } from './marks';
import { updateTabs } from './tabs';

export interface LaneView {
  readonly element: HTMLElement;
  update(look: Look, placed: FrameLane): void;
  updateReading(look: Look): void;
  summarize(look: Look): void;
  destroy(): void;
}

export interface LaneOutside extends HandlesOutside {
  readonly actions: Actions;
  measure(text: string): number;
  grab(lane: string, event: PointerEvent): void;
}

/** One lane: its head with name and tabs, its curves, the handles and marks on them, the bar below. */
export function laneView(id: string, outside: LaneOutside): LaneView {
  const { actions } = outside;
  const canvas = make('canvas', { class: 'curve', attributes: { role: 'img' } });
  const chart = laneChart(canvas);
  const head = laneHead(
    id,
    actions,
    () => outside.look(),
    (event) => outside.grab(id, event),
  );
  const tabs = make('div', { class: 'tabs' });
  const handles = make('div', { class: 'handles' });
  const marks = make('div', { class: 'marks' });
  let height = 0;
  const bar = laneBar(id, actions, () => height);
  const element = make('div', {
    class: 'lane',
    attributes: { role: 'group' },
    children: [...head.before, tabs, ...head.after, canvas, handles, marks, bar.element],
  });
  return {
    element,
    update(look, placed) {
      const { lane, box, y } = placed;
      const { frame } = look;
      height = box.plotBottom - box.plotTop;
      setAttribute(element, 'aria-label', lane.name);
      element.dataset.lane = id;
      element.style.top = px(box.top);
      element.style.height = px(box.plotBottom - box.top);
      canvas.style.left = px(frame.left);
      canvas.style.top = px(box.head);
      bar.element.style.top = px(box.plotBottom - box.top);
      head.update(look, lane);
      bar.update(lane.name);
      if (!canvas.hasAttribute('aria-label')) setAttribute(canvas, 'aria-label', lane.name);
      updateTabs(tabs, look, placed, actions);
      updateHandles(handles, look, id, outside);
      updateMarks(marks, look, placed, actions, (text) => outside.measure(text));
      chart.draw({
        curves: curvesOf(look, placed),
        x: frame.x,
        y,
        width: Math.max(1, frame.right - frame.left),
        height,
        devicePixelRatio: window.devicePixelRatio || 1,
        below(context) {
          context.save();
          context.translate(-frame.left, -box.plotTop);
          drawAreas(context, frame, placed, look.blocks, look.colours);
          context.restore();
        },
      });
    },
    summarize: (look) => setAttribute(canvas, 'aria-label', laneSummary(look, id)),
    updateReading: (look) => head.updateReading(look),
    destroy: () => chart.destroy(),
  };
}

/** Others first, so that the run itself lies on top. */
function curvesOf({ state, blocks, colours }: Look, { lane }: FrameLane): Curve[] {
  const entries = laidOver(state);
  const rank = { overlay: 0, against: 1, run: 2 } as const;
  return [...lane.curves]
    .sort((a, b) => rank[a.of] - rank[b.of])
    .map((curve) => ({
      samples: (blocks.get(curve.id) ?? noBlocks).drawn,
      colour: css(isOwn(lane, curve) ? colours.ink : colours.muted),
      width: isOwn(lane, curve) ? 1.5 : 1.2,
      dash: styleOf(lane, curve, entries).dash,
    }));
}
