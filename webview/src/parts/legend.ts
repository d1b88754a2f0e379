import { keyed, make, setText } from '../dom';
import { laidOver, markerOutline, styleOfEntry, type CurveStyle } from '../draw/curveStyle';
import { say } from '../words';
import type { Part } from './controls';

const svgNames = 'http://www.w3.org/2000/svg';

/** Names of curves laid over, each with its dash and its mark. Without any there is no legend. */
export function legend(): Part {
  const element = make('ul', { class: 'legend', attributes: { 'aria-label': say('legend') } });
  return {
    element,
    update({ state }) {
      const entries = laidOver(state);
      element.hidden = entries.length === 0;
      const own = { key: '=', words: state.title.split(' · ')[0], style: null as CurveStyle | null };
      const items = entries.map((entry, place) => ({
        key: `${entry.of}+${entry.name}`,
        words: entry.reason === null ? entry.name : `${entry.name}, ${say('noCurve', entry.reason)}`,
        style: styleOfEntry(entry, place),
      }));
      keyed(
        element,
        entries.length === 0 ? [] : [own, ...items],
        (item) => item.key,
        (item) => make('li', { children: [sample(item.style), make('span')] }),
        (li, item) => {
          const look = JSON.stringify(item.style);
          if (li.dataset.look !== look) li.firstElementChild?.replaceWith(sample(item.style));
          li.dataset.look = look;
          if (li.lastElementChild !== null) setText(li.lastElementChild, item.words);
        },
      );
    },
  };
}

/** A piece of the line as it is drawn; null: the run itself. */
function sample(style: CurveStyle | null): SVGSVGElement {
  const svg = shape('svg', { width: '44', height: '14', viewBox: '0 0 44 14', 'aria-hidden': 'true' });
  const stroke = style === null ? 'ink' : 'muted';
  const dash = style?.dash.join(' ') ?? '';
  svg.append(shape('path', { d: 'M1 7H43', class: `sample ${stroke}`, 'stroke-dasharray': dash }));
  if (style !== null && style.marker !== null) {
    const outline = markerOutline(style.marker, 3.4).map(([x, y]) => `${(22 + x).toFixed(2)} ${(7 + y).toFixed(2)}`);
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
