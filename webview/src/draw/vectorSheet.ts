/** How a text stands to its place. */
export interface TextPlace {
  readonly anchor: 'start' | 'middle' | 'end';
  /** Its middle, or its upper edge. */
  readonly at: 'middle' | 'top';
}

interface Item {
  readonly tag: 'path' | 'text';
  readonly attributes: Readonly<Record<string, string>>;
  /** Of a path its data, of a text its words. */
  content: string;
}

/**
 * A picture of lines, rectangles and texts as elements of an SVG: the browser draws what changed in the tiles it has. A
 * canvas of the size of the whole plot costs more on each redraw than all curves together where it is drawn by software.
 */
export class VectorSheet {
  private readonly items: Item[] = [];

  line(x1: number, y1: number, x2: number, y2: number, stroke: string, width = 1, dash = ''): void {
    const attributes = { fill: 'none', stroke, 'stroke-width': String(width), 'stroke-dasharray': dash };
    this.path(attributes, `M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}`);
  }

  rectangle(x: number, y: number, width: number, height: number, fill: string): void {
    const attributes = { fill, stroke: 'none', 'stroke-width': '0', 'stroke-dasharray': '' };
    this.path(attributes, `M${at(x)} ${at(y)}h${at(width)}v${at(height)}h${at(-width)}z`);
  }

  text(words: string, x: number, y: number, fill: string, { anchor, at: edge }: TextPlace): void {
    // The small font's middle and upper edge, from its line of letters.
    const attributes = { x: at(x), y: at(y + (edge === 'middle' ? 3.9 : 8)), fill, 'text-anchor': anchor };
    this.items.push({ tag: 'text', attributes, content: words });
  }

  /** Parallel strokes over a rectangle: a warning that needs no colour. */
  hatched(left: number, top: number, width: number, height: number, stroke: string): void {
    if (width <= 0 || height <= 0) return;
    // Anchored to the sheet, so that the strokes of neighbours meet.
    const first = Math.floor((left - height) / 7) * 7;
    for (let x = first; x < left + width; x += 7) {
      const from = Math.max(0, left - x);
      const to = Math.min(height, left + width - x);
      if (to > from) this.line(x + from, top + height - from, x + to, top + height - to, stroke);
    }
  }

  /** Puts the picture into an SVG element; elements that are there already are used again. */
  show(svg: SVGSVGElement): void {
    this.items.forEach(({ tag, attributes, content }, i) => {
      let element = svg.children[i] as SVGElement | undefined;
      if (element?.tagName !== tag) {
        const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
        if (element === undefined) svg.append(made);
        else element.replaceWith(made);
        element = made;
      }
      for (const [name, value] of Object.entries(attributes)) {
        if (element.getAttribute(name) !== value) element.setAttribute(name, value);
      }
      if (tag === 'text') {
        if (element.textContent !== content) element.textContent = content;
      } else if (element.getAttribute('d') !== content) element.setAttribute('d', content);
    });
    while (svg.children.length > this.items.length) svg.lastElementChild!.remove();
  }

  /** Neighbours of one look are one path. */
  private path(attributes: Item['attributes'], data: string): void {
    const last = this.items.at(-1);
    const isSame =
      last?.tag === 'path' && Object.entries(attributes).every(([name, value]) => last.attributes[name] === value);
    if (isSame) last.content += data;
    else this.items.push({ tag: 'path', attributes, content: data });
  }
}

function at(value: number): string {
  return String(Math.round(value * 100) / 100);
}
