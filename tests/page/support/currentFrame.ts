import type { Frame } from 'playwright-core';
import type { Editor } from './editor';

/** The page of the curves that can be seen, once it has drawn a current picture. The page may be replaced meanwhile. */
export async function currentFrame(editor: Editor): Promise<Frame> {
  for (let tries = 0; ; tries++) {
    try {
      const frame = await editor.frameOf();
      await frame.locator('#view[data-revision][data-freshness="current"]').waitFor({ timeout: 20_000 });
      return frame;
    } catch (error) {
      if (tries === 4) throw error;
    }
  }
}
