import type { Frame, Page } from 'playwright-core';

/**
 * The page inside a web view of the extension: that of the frame that can be seen and, where a part of a title is given,
 * whose document is titled so. A web view is two frames: the editor's own around the extension's.
 */
export async function webViewFrame(page: Page, title: string | null): Promise<Frame> {
  const end = Date.now() + 30_000;
  for (;;) {
    for (const outer of page.frames().filter((f) => f.url().includes('extensionId=thermogloss.thermogloss'))) {
      const [inner] = outer.childFrames();
      if (inner === undefined) continue;
      try {
        const element = await outer.frameElement();
        if (!(await element.isVisible())) continue;
        await inner.waitForLoadState('domcontentloaded');
        if (title === null || (await inner.title()).includes(title)) return inner;
      } catch {
        // It went while it was looked at.
      }
    }
    if (Date.now() > end)
      throw new Error(`No web view of the extension can be seen${title === null ? '' : `: ${title}`}.`);
    await page.waitForTimeout(100);
  }
}
