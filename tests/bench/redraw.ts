import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { summary, type BenchRow, type NotRun } from './harness';

interface Redraws {
  readonly samples: number;
  readonly width: number;
  readonly lanes: number;
  readonly script: readonly number[];
  readonly onScreen: readonly number[];
}

const repeats = 60;
const name = 'redraw of 4 lanes, 1600 px, 4 samples a pixel, lines of 1.5 px';

/** The curves view in headless Chromium, drawn by software: script and picture of a pan; the first draw apart. */
export async function redraw(): Promise<readonly (BenchRow | NotRun)[]> {
  const browser = process.env.CHROMIUM ?? '/usr/bin/chromium';
  if (!existsSync(browser)) return [{ name, reason: 'no Chromium here (CHROMIUM names one)' }];
  // Of another compile unit, that knows a browser's types.
  const path = join(__dirname, '..', 'page', 'webview', 'measureRedraw.js');
  const { measureRedraw } = (await import(path)) as { measureRedraw(count: number): Promise<Redraws> };
  const { samples, width, lanes, script, onScreen } = await measureRedraw(repeats);
  const note = `${lanes} lanes of ${Math.round(width)} px, ${samples} samples in view, ${script.length} redraws`;
  return [
    { name: `${name}: script, p95`, value: summary(script).p95, unit: 'ms', limit: 25, note },
    { name: `${name}: script, median`, value: summary(script).median, unit: 'ms', limit: null, note },
    {
      name: `${name}: on screen, p95`,
      value: summary(onScreen).p95,
      unit: 'ms',
      limit: 70,
      note: `${onScreen.length} keys; the browser rounds to 8 ms and leaves out what took less than 16 ms`,
    },
  ];
}
