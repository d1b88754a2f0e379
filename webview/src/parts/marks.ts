import { keyed, make, px, setAttribute, setText } from '../dom';
import type { FrameLane } from '../draw/frame';
import { selectedBand } from '../draw/over';
import { edgePlace } from '../geometry/abscissa';
import { placedLabels, type Box } from '../geometry/labels';
import type { Actions, Look } from '../look';

export interface PlacedMark {
  readonly id: string;
  /** As it is labelled, and in full. */
  readonly text: string;
  readonly words: string;
  /** On the abscissa. */
  readonly at: number;
  readonly part: string;
  readonly x: number;
  readonly y: number;
}

/** Marks of the selected statement in one lane that are in view. */
export function marksOf({ frame }: Look, { lane, yScale }: FrameLane): PlacedMark[] {
  const band = selectedBand(frame);
  return (band?.construction ?? []).flatMap((shape, i) => {
    if (shape.shape !== 'mark' || shape.lane !== lane.id || band === undefined) return [];
    const at = edgePlace(shape.at, frame.abscissa);
    if (at === null || at < frame.x.from || at > frame.x.to) return [];
    const words = shape.text.includes(shape.quantity) ? shape.text : `${shape.quantity} ${shape.text}`;
    // In a narrow view four labels must fit beside each other; the ledger has the uncertainty.
    const text = frame.width < 520 ? words.replace(/ ± \S+/, '') : words;
    const id = `${band.statement}/${lane.id}/${shape.quantity}/${i}`;
    return [{ id, text, words, at, part: band.part, x: frame.xScale.px(at), y: yScale.px(shape.at.y) }];
  });
}

/** Labels of the marks: buttons that go to the statement, laid so that none covers another. */
export function updateMarks(
  parent: HTMLElement,
  look: Look,
  lane: FrameLane,
  actions: Actions,
  measure: (text: string) => number,
): void {
  const { box } = lane;
  const marks = marksOf(look, lane).filter(({ y }) => y >= box.plotTop && y <= box.plotBottom);
  const { left, right } = look.frame;
  const bounds: Box = {
    left: left + 2,
    top: box.plotTop + 2,
    width: right - left - 4,
    height: box.plotBottom - box.plotTop - 4,
  };
  const size = (text: string): { width: number; height: number } => ({
    width: Math.ceil(measure(text)) + 8,
    height: 17,
  });
  const dots = marks.map(({ x, y }): Box => ({ left: x - 4, top: y - 4, width: 8, height: 8 }));
  const labels = placedLabels(
    marks.map((m) => ({ id: m.id, x: m.x, y: m.y, ...size(m.text) })),
    bounds,
    dots,
  );
  keyed(
    parent,
    marks,
    (mark) => mark.id,
    () => {
      const button = make('button', { class: 'mark', attributes: { type: 'button' } });
      button.addEventListener('click', () => actions.activate(button.dataset.statement ?? ''));
      return button;
    },
    (button, mark) => {
      const place = labels.get(mark.id);
      if (place === undefined) return;
      button.style.left = px(place.left);
      button.style.top = px(place.top - box.top);
      button.dataset.statement = look.frame.selected ?? '';
      setText(button, mark.text);
      setAttribute(button, 'title', mark.words);
    },
  );
}
