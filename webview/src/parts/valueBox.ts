import type { Edge } from '../../../server/src/protocol/view';
import { make, px } from '../dom';
import { say } from '../words';
import { numberFrom } from './numberFrom';

/** A field for the value of an edge, over the plot beside its handle. Enter gives the number, Escape and leaving give null. */
export function valueBox(
  host: HTMLElement,
  left: number,
  top: number,
  name: string,
  edge: Edge,
): Promise<number | null> {
  return new Promise((resolve) => {
    const field = make('input', {
      attributes: { type: 'text', inputmode: 'decimal', 'aria-label': `${name}, ${say('edgeBox', edge.unit)}` },
    });
    const unit = make('span', { text: edge.unit, attributes: { 'aria-hidden': 'true' } });
    const words = make('span', { class: 'field-words', attributes: { role: 'alert' } });
    const box = make('div', { class: 'value-box', children: [field, unit, words] });
    field.value = edge.value.toFixed(edge.decimals);
    host.append(box);
    box.style.left = px(Math.max(4, Math.min(left + 8, host.clientWidth - box.offsetWidth - 4)));
    box.style.top = px(top);
    field.focus();
    field.select();
    let isDone = false;
    const done = (value: number | null): void => {
      if (isDone) return;
      isDone = true;
      box.remove();
      resolve(value);
    };
    field.addEventListener('keydown', (event) => {
      event.stopPropagation();
      if (event.key === 'Escape') done(null);
      if (event.key !== 'Enter') return;
      const value = numberFrom(field.value);
      if (value !== null) done(value);
      else {
        words.textContent = say('edgeNotNumber');
        field.setAttribute('aria-invalid', 'true');
      }
    });
    field.addEventListener('blur', () => done(null));
  });
}
