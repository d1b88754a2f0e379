import { escapeXml } from '../escapeXml';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element with attributes in the order given; content is already XML. Numbers are written with two decimals at most. */
export function element(name: string, attributes: Attributes, ...content: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined && value !== '')
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? px(value) : escapeXml(String(value))}"`)
    .join('');
  const inside = content.join('');
  return inside === '' ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`;
}

/** Text as text. */
export function text(x: number, y: number, words: string, attributes: Attributes = {}): string {
  return words === '' ? '' : element('text', { x, y, ...attributes }, escapeXml(words));
}

export function line(x1: number, y1: number, x2: number, y2: number, attributes: Attributes): string {
  return element('path', { d: `M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}`, ...attributes });
}

/** A chain of points as path data; empty for fewer than two. */
export function chain(points: readonly (readonly [number, number])[]): string {
  if (points.length < 2) return '';
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
}

/** Two decimals are a hundredth of a pixel; no zeros behind, no minus before zero. */
export function px(value: number): string {
  if (!Number.isFinite(value)) return '0';
  const written = value.toFixed(2).replace(/\.?0+$/, '');
  return written === '-0' ? '0' : written;
}

/**
 * Width of a text without measuring it: letters of a sans serif are about half as wide as they are high, capitals and
 * digits a little more. An upper estimate, for room is left by it.
 */
export function roughWidth(words: string, size: number): number {
  let width = 0;
  for (const c of words) width += /[ilj.,:;'|!()[\]ft ]/.test(c) ? 0.33 : /[A-ZΦΔmw%°±→]/.test(c) ? 0.78 : 0.58;
  return width * size;
}

/** Words on lines no wider than `width`; a single word may be wider. */
export function wrapped(words: string, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/).filter((w) => w !== '')) {
    const last = lines.at(-1);
    if (last !== undefined && roughWidth(`${last} ${word}`, size) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
