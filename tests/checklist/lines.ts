import type { Line } from './line';
import { freshness } from './lines/freshness';
import { output } from './lines/output';
import { platform } from './lines/platform';
import { server } from './lines/server';
import { view } from './lines/view';

/** Every line of the checklist but those of comparisons and the command line, in its order. */
export const lines: readonly Line[] = [...freshness, ...view, ...output, ...server, ...platform];
