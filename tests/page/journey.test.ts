import assert from 'node:assert/strict';
import type { Frame } from 'playwright-core';
import { openEditor, type Editor } from './support/editor';

/** Waits for a drawn picture: of a later revision than the one given. */
async function drawn(frame: Frame, after = 0): Promise<number> {
  await frame.waitForFunction(
    (than) => Number(document.querySelector<HTMLElement>('[data-revision]')?.dataset['revision'] ?? 0) > than,
    after,
  );
  return Number(await frame.locator('[data-revision]').first().getAttribute('data-revision'));
}

/** Waits until the file on disk is as wanted: saving takes its time. */
async function saved(editor: Editor, path: string, wanted: (text: string) => boolean): Promise<string> {
  await editor.press('Control+S');
  for (let tries = 0; tries < 100 && !wanted(editor.read(path)); tries += 1) await editor.page.waitForTimeout(100);
  return editor.read(path);
}

const limestone = 'limestone/vq217-1.gloss';

describe('the day of an analyst in the editor', () => {
  let editor: Editor;

  before(async () => {
    editor = await openEditor({ workspace: '', viewport: { width: 1600, height: 1000 } });
  });
  after(() => editor.close());

  it('a gloss opened has its curves drawn beside it, its numbers in the text', async () => {
    await editor.openFile(limestone);
    await editor.runCommand('Thermogloss: Show Curves Beside the Text');
    const frame = await editor.frameOf();
    await drawn(frame);
    await frame
      .getByText(/^current/)
      .first()
      .waitFor();
    await editor.screenshot('journey curves');
    assert.match((await frame.locator('body').innerText()).replace(/\s+/g, ' '), /First/);
  });

  it('an overlap that is typed is a warning, told with the other line, and its fix takes it away', async () => {
    await editor.openFile('limestone/limestone.gloss');
    const before = editor.read('limestone/limestone.gloss');
    const line =
      editor
        .read('limestone/limestone.gloss')
        .split('\n')
        .findIndex((l) => l.startsWith('step First')) + 1;
    await editor.goTo(line);
    await editor.press('End', 'Enter');
    await editor.press('Home');
    await editor.typeText('step Between 700..900 °C');
    await editor.press('Control+S');
    await editor.openFile(limestone);
    const problem = editor.page.locator('.squiggly-warning').first();
    await problem.waitFor();
    await editor.screenshot('journey overlap');
    await editor.openFile('limestone/limestone.gloss');
    await editor.goTo(line + 1);
    await editor.press('Control+Shift+K');
    await saved(editor, 'limestone/limestone.gloss', (text) => text === before);
    await editor.page.locator('.squiggly-warning').first().waitFor({ state: 'detached' });
    assert.equal(editor.read('limestone/limestone.gloss'), before);
  });

  it('an edge dragged in the plot changes one number, and one undo gives the text back', async () => {
    const files = 'preform/pet-07.gloss';
    const before = editor.read(files);
    await editor.openFile(files);
    const frame = await editor.frameOf();
    // An edge that stands alone, in a picture of this gloss.
    const handle = frame.locator('[data-statement="peak FromMelt"][data-which=from]').first();
    await handle.waitFor();
    const revision = await drawn(frame);
    const box = (await handle.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await editor.page.mouse.move(x, y);
    await editor.page.mouse.down();
    await editor.page.mouse.move(x + 12, y, { steps: 5 });
    await editor.screenshot('journey drag');
    await editor.page.mouse.up();
    await drawn(frame, revision);
    await editor.screenshot('journey dragged');
    await editor.press('Control+1');
    const moved = await saved(editor, files, (text) => text !== before);
    const differing = moved.split('\n').filter((l, i) => l !== before.split('\n')[i]);
    assert.equal(differing.length, 1, differing.join('\n'));
    await editor.press('Control+Z');
    assert.equal(await saved(editor, files, (text) => text === before), before);
  });

  it('a broken line leaves the last good picture, says so in words and links the line', async () => {
    const files = 'preform/pet-07.gloss';
    await editor.openFile(files);
    const frame = await editor.frameOf();
    await frame.locator('#view[data-freshness="current"]').waitFor();
    await frame
      .getByText(/^current/)
      .first()
      .waitFor();
    const revision = await drawn(frame);
    const line =
      editor
        .read(files)
        .split('\n')
        .findIndex((l) => l.startsWith('peak')) + 1;
    await editor.goTo(line);
    await editor.press('End');
    await editor.typeText(' in in');
    // The picture that stays is told by the number under which it was drawn as current.
    const words = frame.getByText(new RegExp(`revision \\d+: line ${line} has an error`)).first();
    await words.waitFor();
    const told = Number(/revision (\d+)/.exec((await words.textContent()) ?? '')?.[1]);
    // What is known of HEAD may have drawn it once more meanwhile.
    assert.ok(told >= revision, String(told));
    await drawn(frame, told);
    await editor.screenshot('journey broken');
    for (let i = 0; i < 6; i += 1) await editor.press('Backspace');
    await frame
      .getByText(/^current/)
      .first()
      .waitFor();
  });
});
