import type { Page } from 'playwright-core';

/** What was drawn in the canvas of one lane, column by column. */
export interface Columns {
  readonly width: number;
  readonly height: number;
  /** For each column, the rows that are at least half inked. */
  readonly inked: readonly (readonly number[])[];
}

export function laneColumns(page: Page, lane: string): Promise<Columns> {
  return page.evaluate((id) => {
    const canvas = document.querySelector<HTMLCanvasElement>(`.lane[data-lane="${id}"] canvas.curve`)!;
    const { width, height } = canvas;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, width, height);
    const inked: number[][] = [];
    for (let x = 0; x < width; x++) {
      const rows: number[] = [];
      for (let y = 0; y < height; y++) if (data[4 * (y * width + x) + 3] > 127) rows.push(y);
      inked.push(rows);
    }
    return { width, height, inked };
  }, lane);
}

/** Pixels of a lane's canvas that are inked at all. */
export async function inkOf(page: Page, lane: string): Promise<number> {
  const { inked } = await laneColumns(page, lane);
  return inked.reduce((sum, rows) => sum + rows.length, 0);
}

/** The colour most of a lane's opaque pixels have, as `r,g,b`. */
export function inkColour(page: Page, lane: string): Promise<string> {
  return page.evaluate((id) => {
    const canvas = document.querySelector<HTMLCanvasElement>(`.lane[data-lane="${id}"] canvas.curve`)!;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    const counts = new Map<string, number>();
    for (let i = 0; i < data.length; i += 4) {
      if (data[i + 3] < 250) continue;
      const key = `${data[i]},${data[i + 1]},${data[i + 2]}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? '';
  }, lane);
}

/** Ordinate range of a lane as its numbers are laid out: the padded extent of the state. */
export function rowOf(value: number, extent: { from: number; to: number }, height: number): number {
  const air = 0.06 * (extent.to - extent.from);
  const [from, to] = [extent.from - air, extent.to + air];
  return height - ((value - from) / (to - from)) * height;
}
