import { colourFrom, css, distinct } from './colour';
import type { Palette, ThemeColour } from './palette';

/** Reads the theme's colours from the page. */
export function themeColours(body: HTMLElement): ThemeColour {
  const style = getComputedStyle(body);
  return (name) => {
    const text = style.getPropertyValue(`--vscode-${name}`);
    return text.trim() === '' ? null : colourFrom(text);
  };
}

/** The word for the theme: of the attribute, else of the class, as the editor sets both. */
export function themeKind(body: HTMLElement): string {
  const named = body.dataset.vscodeThemeKind;
  if (named !== undefined && named !== '') return named;
  const known = ['vscode-high-contrast-light', 'vscode-high-contrast', 'vscode-light', 'vscode-dark'];
  return known.find((name) => body.classList.contains(name)) ?? 'vscode-dark';
}

/** Hands the palette to the style sheet as `--sheet-…`. */
export function publish(colours: Palette, root: HTMLElement): void {
  const { isHighContrast, ...named } = colours;
  for (const [name, colour] of Object.entries(named)) root.style.setProperty(`--sheet-${name}`, css(colour));
  root.dataset.contrast = isHighContrast ? 'high' : 'normal';
  // Text on the tinted ground of a selected row.
  for (const name of ['ink', 'muted', 'accent', 'warning', 'error', 'good'] as const) {
    root.style.setProperty(`--sheet-${name}-on-tint`, css(distinct(colours[name], colours.tint, 4.6)));
  }
}
