/**
 * Colours of a picture that is copied or saved. A curve is told by its lane and its dashes, never by its colour: the run in
 * ink, the selected statement in the accent, whatever is laid over it in muted dashes. Text has 4.5 to 1 against the paper,
 * lines 3 to 1 (WCAG 2.2, 1.4.3 and 1.4.11).
 */
export interface FigureColours {
  readonly paper: string;
  readonly ink: string;
  readonly muted: string;
  /** Axes and the edges of bands. */
  readonly edge: string;
  /** Decoration only. */
  readonly grid: string;
  readonly accent: string;
  readonly warning: string;
  readonly error: string;
}

export type FigureTheme = 'print' | 'light' | 'dark';

export const figureColours: Readonly<Record<FigureTheme, FigureColours>> = {
  print: {
    paper: '#ffffff',
    ink: '#000000',
    muted: '#595959',
    edge: '#6e6e6e',
    grid: '#e3e3e3',
    accent: '#123c86',
    warning: '#7a4b00',
    error: '#9a0f1c',
  },
  light: {
    paper: '#ffffff',
    ink: '#22262b',
    muted: '#5b626b',
    edge: '#747b84',
    grid: '#e6e8ea',
    accent: '#1b55b3',
    warning: '#855300',
    error: '#ae1a26',
  },
  dark: {
    paper: '#1d2024',
    ink: '#e8eaed',
    muted: '#a7adb5',
    edge: '#8b929b',
    grid: '#343940',
    accent: '#86b8ff',
    warning: '#e6b450',
    error: '#ff9a94',
  },
};

/** Dashes of ten runs laid over, told apart without colour; px. */
export const overlayDashes: readonly (readonly number[])[] = [
  [8, 4],
  [2, 3],
  [10, 3, 2, 3],
  [5, 2],
  [14, 5],
  [10, 3, 2, 3, 2, 3],
  [4, 4],
  [16, 3, 4, 3],
  [1, 5],
  [6, 2, 2, 2],
];

/** Of the revision compared with. */
export const againstDashes: readonly number[] = [3, 2];

/** Dashes of a curve laid over, by its place in the legend. */
export function dashesOf(of: 'run' | 'overlay' | 'against', place: number): readonly number[] {
  if (of === 'run') return [];
  return of === 'against' ? againstDashes : overlayDashes[place % overlayDashes.length];
}
