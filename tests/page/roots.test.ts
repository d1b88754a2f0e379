import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openEditor, type Editor } from './support/editor';
import { eventually } from './webview/eventually';

const read = (name: string): string => readFileSync(join('examples', 'preform', name), 'utf8');
const gloss = read('pet-07.gloss');
const data = read('pet-07.txt');

describe('a workspace of two root folders, one inside the other', () => {
  let editor: Editor;

  before(async () => {
    const files: Record<string, string> = {
      'both.code-workspace': JSON.stringify({ folders: [{ path: 'shelf' }, { path: 'shelf/inner' }], settings: {} }),
      'shelf/outer.gloss': gloss,
      'shelf/.vscode/settings.json': JSON.stringify({ 'thermogloss.inline.results': false }),
      'shelf/inner/within.gloss': gloss,
      'elsewhere/outside.gloss': gloss,
    };
    for (const folder of ['shelf', 'shelf/inner', 'elsewhere']) files[`${folder}/pet-07.txt`] = data;
    editor = await openEditor({
      workspace: files,
      workspaceFile: 'both.code-workspace',
      viewport: { width: 1500, height: 900 },
    });
  });
  after(() => editor.close());

  const results = (): Promise<number> =>
    editor.page.locator('.editor-group-container.active .view-line', { hasText: /±\s\d.*J\/g/ }).count();
  async function computed(): Promise<void> {
    await editor.page.locator('.statusbar-item', { hasText: /\d+ results/ }).waitFor({ timeout: 60_000 });
  }

  it('has in each the settings of that folder, of a nested one its own', async () => {
    await editor.openFile('within.gloss');
    await computed();
    await eventually(async () => assert.ok((await results()) > 0));
    await editor.openFile('outer.gloss');
    await computed();
    await editor.page.waitForTimeout(1000);
    assert.equal(await results(), 0);
  });

  it('has results also for a gloss outside every root', async () => {
    await editor.page.keyboard.press('Control+O');
    const box = editor.page.locator('.quick-input-widget');
    await box.waitFor({ state: 'visible' });
    const wanted = join(editor.folder, 'elsewhere', 'outside.gloss');
    const input = box.locator('input').first();
    // The dialog writes its first folder when it has read it, over what stands there.
    await box.locator('.monaco-list-row').first().waitFor();
    await eventually(async () => {
      await input.fill(wanted);
      await editor.page.waitForTimeout(500);
      assert.equal(await input.inputValue(), wanted);
    });
    await editor.press('Enter');
    await editor.page.locator('.tab.active', { hasText: 'outside.gloss' }).waitFor();
    await computed();
    await eventually(async () => assert.ok((await results()) > 0));
    assert.deepEqual(editor.notifications, []);
  });
});
