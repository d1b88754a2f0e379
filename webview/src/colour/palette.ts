import { black, contrast, distinct, mixed, over, white, type Colour } from './colour';

/** Every colour of the sheet, computed from the editor's at the moment of drawing. */
export interface Palette {
  readonly ground: Colour;
  /** Curves and text. */
  readonly ink: Colour;
  /** Second text, curves of others: still 4.5 to 1. */
  readonly muted: Colour;
  /** Edges of bands, marks of axes: 3 to 1. */
  readonly edge: Colour;
  /** Lines of the grid: decoration. */
  readonly grid: Colour;
  readonly accent: Colour;
  readonly warning: Colour;
  readonly error: Colour;
  readonly good: Colour;
  /** Ground of the selected band and row. */
  readonly tint: Colour;
  readonly focus: Colour;
  readonly isHighContrast: boolean;
}

/** Colours given by name (`--vscode-…` without the dashes and prefix); null where the theme has none. */
export type ThemeColour = (name: string) => Colour | null;

/** The palette of a theme. `kind`: the editor's own word for it, which settles what is missing. */
export function palette(theme: ThemeColour, kind: string): Palette {
  const first = (...names: string[]): Colour | null => names.map(theme).find((c) => c !== null) ?? null;
  const isLight = /light/.test(kind);
  const isHighContrast = /high-contrast/.test(kind);
  const paper = isLight ? white : isHighContrast ? black : { r: 30, g: 30, b: 30, a: 1 };
  const ground = over(first('editor-background', 'panel-background') ?? paper, paper);
  const farther = contrast(black, ground) > contrast(white, ground) ? black : white;
  const ink = distinct(first('editor-foreground', 'foreground') ?? farther, ground, isHighContrast ? 7 : 4.5);
  const seen = (ratio: number, ...names: string[]): Colour =>
    distinct(over(first(...names) ?? mixed(ink, ground, 0.6), ground), ground, ratio);
  const text = isHighContrast ? 7 : 4.6;
  const accent = seen(text, 'textLink-foreground', 'focusBorder', 'charts-blue');
  const tint = mixed(accent, ground, isHighContrast ? 0.22 : 0.13);
  return {
    ground,
    ink,
    muted: distinct(mixed(ink, ground, isHighContrast ? 0.82 : 0.68), ground, text),
    edge: distinct(mixed(ink, ground, 0.45), ground, 3.1),
    grid: mixed(ink, ground, isHighContrast ? 0.28 : 0.12),
    accent,
    warning: seen(text, 'editorWarning-foreground', 'charts-yellow'),
    error: seen(text, 'editorError-foreground', 'errorForeground', 'charts-red'),
    good: seen(text, 'testing-iconPassed', 'charts-green'),
    tint,
    focus: seen(3.1, 'focusBorder', 'contrastActiveBorder', 'textLink-foreground'),
    isHighContrast,
  };
}
