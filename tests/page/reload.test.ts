import assert from 'node:assert/strict';
import { rmSync, writeFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openEditor, type Editor } from './support/editor';

describe('curves over a reload of the window', () => {
  let editor: Editor;

  before(async () => {
    editor = await openEditor({ workspace: 'limestone' });
    await editor.openFile('vq217-1.gloss');
    await editor.runCommand('Thermogloss: Show Curves Beside the Text');
    await drawn();
  });
  after(() => editor.close());

  /** The revision that the page says it has drawn. The page itself may be replaced meanwhile. */
  async function drawn(): Promise<number> {
    for (let tries = 0; ; tries++) {
      try {
        const view = (await editor.frameOf()).locator('#view[data-revision][data-freshness="current"]');
        await view.waitFor({ timeout: 20_000 });
        return Number(await view.getAttribute('data-revision'));
      } catch (error) {
        if (tries === 4) throw error;
      }
    }
  }

  it('are drawn beside the text', async () => {
    assert.ok((await drawn()) >= 1);
    await editor.page.locator('.tab', { hasText: 'Curves of vq217-1.gloss' }).waitFor();
    await editor.screenshot('curves beside the text');
  });

  it('come back with their gloss, kept on it if they were', async () => {
    await editor.page.locator('.tab', { hasText: 'Curves of vq217-1.gloss' }).click();
    await editor.page.getByRole('button', { name: 'Keep These Curves on Their Gloss' }).first().click();
    await editor.page.locator('.tab', { hasText: 'Curves of vq217-1.gloss (kept)' }).waitFor();
    await editor.page.waitForTimeout(5000);
    await editor.reload();
    await editor.page.locator('.tab', { hasText: 'Curves of vq217-1.gloss (kept)' }).waitFor({ timeout: 90_000 });
    assert.ok((await drawn()) >= 1);
  });

  it('write nothing to the console of the browser but what the editor writes itself', async () => {
    const ours = editor.messages.filter((m) => /webview\.js|thermogloss/i.test(m.from + m.text));
    const broken = editor.messages.filter((m) => /Content Security Policy/i.test(m.text));
    assert.deepEqual([...ours.filter((m) => m.kind === 'error'), ...broken], []);
  });

  it('are a page with words where the gloss is gone after the reload, and are back with it', async () => {
    const path = join(editor.folder, 'vq217-1.gloss');
    const text = readFileSync(path, 'utf8');
    await editor.page
      .locator('.tab', { hasText: /^vq217-1\.gloss/ })
      .first()
      .click();
    await editor.press('Control+F4');
    rmSync(path);
    await editor.reload();
    const frame = await editor.frameOf();
    await frame.locator('h1', { hasText: 'vq217-1.gloss is not there' }).waitFor({ timeout: 90_000 });
    await editor.screenshot('a gloss that is gone');
    // The editor begins to watch its folder some time after a reload: a file that came before is not told.
    const comeBack = (): void => {
      rmSync(path, { force: true });
      writeFileSync(path, text);
    };
    comeBack();
    const again = setInterval(comeBack, 8000);
    try {
      assert.ok((await drawn()) >= 1);
    } finally {
      clearInterval(again);
    }
  });
});
