/** Width in px of a text in the small font of the plot, measured once each. */
export interface TextWidths {
  (text: string): number;
  /** Fonts may have changed with the theme. */
  forget(): void;
}

export function textWidths(): TextWidths {
  const context = document.createElement('canvas').getContext('2d');
  let known = new Map<string, number>();
  let font = '';
  const width = (text: string): number => {
    const found = known.get(text);
    if (found !== undefined) return found;
    if (font === '') font = `11px ${getComputedStyle(document.body).fontFamily}`;
    if (context === null) return 6 * text.length;
    context.font = font;
    // Names of files are anybody's text: what is remembered has an end.
    if (known.size > 2000) known = new Map();
    const { width: measured } = context.measureText(text);
    known.set(text, measured);
    return measured;
  };
  return Object.assign(width, {
    forget: () => {
      known = new Map();
      font = '';
    },
  });
}
