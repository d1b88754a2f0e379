import type { Line } from './line';
import { freshness } from './lines/freshness';
import { output } from './lines/output';
import { platform } from './lines/platform';
import { results } from './lines/results';
import { server } from './lines/server';
import { view } from './lines/view';

/** Every line of the checklist, in its order. */
export const lines: readonly Line[] = [...freshness, ...view, ...output, ...server, ...platform, ...results];
