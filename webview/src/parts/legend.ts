import { keyed, make, setText } from '../dom';
import { curveStyle, laidOver, markerOutline } from '../draw/curveStyle';
import { say } from '../words';
import type { Part } from './controls';

const svgNames = 'http://www.w3.org/2000/svg';

/** Names of curves laid over, each with its dash and its mark. Without any there is no legend. */
export function legend(): Part {
  const element = make('ul', { class: 'legend', attributes: { 'aria-label': say('legend') } });
  return {
    element,
    update({ state }) {
      const names = laidOver(state);
      element.hidden = names.length === 0;
      const own = { key: '=', name: state.title.split(' · ')[0], place: -1, reason: null as string | null };
      const items = names.map((name, place) => ({
        key: `+${name}`,
        name,
        place,
        reason: state.overlays.find((o) => o.name === name)?.reason ?? null,
      }));
      keyed(
        element,
        names.length === 0 ? [] : [own, ...items],
        (item) => item.key,
        (item) => make('li', { children: [sample(item.place), make('span')] }),
        (li, item) => {
          const words = item.reason === null ? item.name : `${item.name}, ${say('noCurve', item.reason)}`;
          if (li.dataset.place !== String(item.place)) li.firstElementChild?.replaceWith(sample(item.place));
          li.dataset.place = String(item.place);
          if (li.lastElementChild !== null) setText(li.lastElementChild, words);
        },
      );
    },
  };
}

function sample(place: number): SVGSVGElement {
  const { dash, marker } = curveStyle(place);
  const svg = shape('svg', { width: '44', height: '14', viewBox: '0 0 44 14', 'aria-hidden': 'true' });
  const stroke = place < 0 ? 'ink' : 'muted';
  svg.append(shape('path', { d: 'M1 7H43', class: `sample ${stroke}`, 'stroke-dasharray': dash.join(' ') }));
  if (marker !== null) {
    const outline = markerOutline(marker, 3.4).map(([x, y]) => `${(22 + x).toFixed(2)} ${(7 + y).toFixed(2)}`);
    svg.append(shape('path', { d: `M${outline.join('L')}Z`, class: 'sample marker' }));
  }
  return svg;
}

function shape<K extends 'svg' | 'path'>(
  tag: K,
  attributes: Readonly<Record<string, string>>,
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(svgNames, tag);
  for (const [name, value] of Object.entries(attributes)) if (value !== '') element.setAttribute(name, value);
  return element as SVGElementTagNameMap[K];
}
