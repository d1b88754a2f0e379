import assert from 'node:assert/strict';
import { eventually } from './eventually';
import { closeBrowser, openFake } from './fakePage';

export interface Redraws {
  /** Samples on the canvases, and how wide each of them is, px. */
  readonly samples: number;
  readonly width: number;
  readonly lanes: number;
  /** ms of script in a redraw: the key's handler and all callbacks of its frame. */
  readonly script: readonly number[];
  /** ms from the key to the picture on the screen, as the browser's event timing tells it, in steps of 8 ms. */
  readonly onScreen: readonly number[];
}

/** Pans four lanes of 1600 px, four samples a pixel, by keys, drawn by software; the first draws do not count. */
export async function measureRedraw(repeats: number): Promise<Redraws> {
  const fake = await openFake({ scenario: { interval: 0.1, companions: 0 }, viewport: { width: 1700, height: 900 } });
  try {
    const { page } = fake;
    await fake.drawn();
    for (const part of ['hold 1', 'cooling 1']) {
      await page.getByRole('button', { name: part, exact: true }).click();
      await fake.drawn();
    }
    const widthNow = (): Promise<number> =>
      page.locator('.lane[data-lane="mass"] canvas.curve').evaluate((canvas) => canvas.getBoundingClientRect().width);
    await page.setViewportSize({ width: 1700 + Math.round(1600 - (await widthNow())), height: 900 });
    await fake.drawn();
    const summary = page.locator('.drawn summary');
    await summary.click();
    const samples = await eventually(async () => {
      const drawn = await page.locator('.drawn tbody tr td:last-child').allTextContents();
      const sum = drawn.reduce((all, text) => all + Number(/^\d+/.exec(text)?.[0] ?? 0), 0);
      assert.ok(sum > 0, 'no samples are drawn');
      return sum;
    });
    // What is listed in it is counted at each redraw: closed, as it is at first.
    await summary.click();
    await page.evaluate(() => {
      const times: number[] = [];
      const ask = window.requestAnimationFrame.bind(window);
      let spent = 0;
      window.requestAnimationFrame = (work) =>
        ask((now) => {
          const start = performance.now();
          work(now);
          spent += performance.now() - start;
        });
      const shown: number[] = [];
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) if (entry.name === 'keydown') shown.push(entry.duration);
      }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
      const bag = { times, shown, start: () => (spent = 0), spent: () => spent };
      (window as unknown as { bag: typeof bag }).bag = bag;
    });
    await page.locator('.surface').focus();
    const script = await page.evaluate(async (count) => {
      const { bag } = window as unknown as { bag: { start(): void; spent(): number } };
      const surface = document.querySelector<HTMLElement>('.surface')!;
      const frames = (): Promise<void> => new Promise((done) => setTimeout(() => setTimeout(done, 60), 0));
      const times: number[] = [];
      for (let k = 0; k < count + 6; k++) {
        bag.start();
        const start = performance.now();
        surface.dispatchEvent(
          new KeyboardEvent('keydown', {
            key: k % 2 === 0 ? 'ArrowRight' : 'ArrowLeft',
            shiftKey: true,
            bubbles: true,
          }),
        );
        const handler = performance.now() - start;
        await frames();
        if (k >= 6) times.push(handler + bag.spent());
      }
      return times;
    }, repeats);
    for (let k = 0; k < repeats; k++) {
      await page.keyboard.press(k % 2 === 0 ? 'Shift+ArrowRight' : 'Shift+ArrowLeft');
      await page.waitForTimeout(40);
    }
    await page.waitForTimeout(300);
    const onScreen = await page.evaluate(() => (window as unknown as { bag: { shown: number[] } }).bag.shown);
    return { samples, width: await widthNow(), lanes: await page.locator('.lane').count(), script, onScreen };
  } finally {
    await fake.close();
    await closeBrowser();
  }
}
