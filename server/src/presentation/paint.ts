/** What a stretch of text is, for a terminal that can show it. Colour never carries a meaning alone. */
export type Style = 'error' | 'warning' | 'note' | 'good' | 'strong' | 'faint';

export type Paint = (style: Style, text: string) => string;

export const unpainted: Paint = (_style, text) => text;
