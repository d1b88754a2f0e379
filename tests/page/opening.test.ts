import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import type { Theme } from '../served/settings';
import { openEditor, type Editor } from './support/editor';
import { eventually } from './webview/eventually';

describe('a gloss opened in the editor', () => {
  let editor: Editor;

  before(async () => {
    editor = await openEditor({ workspace: 'limestone' });
    await editor.openFile('vq217-1.gloss');
  });
  after(() => editor.close());

  it('shows its text', async () => {
    const written = readFileSync('examples/limestone/vq217-1.gloss', 'utf8').split('\n');
    const [first] = await editor.lines();
    assert.equal(first, written[0]);
  });

  it('is known as a gloss', async () => {
    const language = editor.page.locator('.statusbar-item#status\\.editor\\.mode');
    await language.filter({ hasText: 'Gloss' }).waitFor();
  });

  it('takes what is typed, and gives it back with one undo', async () => {
    const before = await editor.lines();
    await editor.goTo(1);
    await editor.typeText('##');
    await eventually(async () => assert.equal((await editor.lines())[0], `##${before[0]}`));
    await editor.press('Control+Z');
    await eventually(async () => assert.equal((await editor.lines())[0], before[0]));
  });

  for (const theme of ['dark', 'high contrast', 'high contrast light', 'light'] satisfies Theme[]) {
    it(`follows the theme of the editor without a reload (${theme})`, async () => {
      await editor.setTheme(theme);
      await editor.screenshot(`opening ${theme}`);
      assert.equal((await editor.lines()).length > 5, true);
    });
  }
});
