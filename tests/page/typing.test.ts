import assert from 'node:assert/strict';
import { currentFrame } from './support/currentFrame';
import { openEditor, type Editor } from './support/editor';
import { eventually } from './webview/eventually';

const file = 'preform/pet-07.gloss';

describe('an hour of work, in short', () => {
  let editor: Editor;

  before(async () => {
    editor = await openEditor({ workspace: '', viewport: { width: 1500, height: 900 } });
    await editor.openFile(file);
    await editor.runCommand('Thermogloss: Show Curves Beside the Text');
    await currentFrame(editor);
    await editor.press('Control+1');
  });
  after(() => editor.close());

  it('types among inline results without a line ever changing its height or its place', async () => {
    const line =
      editor
        .read(file)
        .split('\n')
        .findIndex((l) => l.startsWith('peak Melting ')) + 1;
    await editor.goTo(line);
    await editor.page.locator('.view-line', { hasText: /±\s\d/ }).first().waitFor();
    await editor.page.evaluate(() => {
      const odd: string[] = [];
      (window as unknown as { odd: string[]; looks: number }).odd = odd;
      (window as unknown as { looks: number }).looks = 0;
      const editorLines = document.querySelector('.editor-group-container .monaco-editor .view-lines')!;
      const height = (editorLines.querySelector('.view-line') as HTMLElement).offsetHeight;
      const look = (): void => {
        (window as unknown as { looks: number }).looks++;
        for (const one of editorLines.querySelectorAll<HTMLElement>('.view-line')) {
          const isPlain = one.offsetHeight === height && one.offsetTop % height === 0;
          if (!isPlain && odd.length < 5) odd.push(`${one.offsetTop} ${one.offsetHeight} ${one.textContent}`);
        }
        requestAnimationFrame(look);
      };
      look();
    });
    await editor.press('End');
    for (let k = 0; k < 3; k += 1) {
      await editor.typeText('  # seen');
      await currentFrame(editor);
      for (let i = 0; i < 8; i += 1) await editor.press('Backspace');
    }
    await editor.typeText(' in in');
    const broken = (await editor.frameOf()).getByText(/line \d+ has an error/);
    await broken.first().waitFor();
    for (let i = 0; i < 6; i += 1) await editor.press('Backspace');
    await currentFrame(editor);
    const { odd, looks } = await editor.page.evaluate(() => {
      const seen = window as unknown as { odd: string[]; looks: number };
      return { odd: seen.odd, looks: seen.looks };
    });
    assert.ok(looks > 20, `${looks} looks`);
    assert.deepEqual(odd, []);
  });

  it('takes back and repeats a moved edge by the keys of the editor, with the focus in the curves', async () => {
    const frame = await currentFrame(editor);
    // On the cooling ramp the window begins at its right edge.
    const handle = frame.locator('[data-statement="peak FromMelt"][data-which=from]').first();
    const value = (): Promise<string | null> => handle.getAttribute('aria-valuetext');
    await handle.focus();
    // The frame has the focus a moment after its page.
    await frame.waitForFunction(() => document.hasFocus());
    await editor.page.waitForTimeout(500);
    await editor.press('ArrowRight', 'ArrowRight', 'Enter');
    await isWritten('232');
    await editor.press('Control+Z');
    await isWritten('230');
    await editor.press('Control+Shift+Z');
    await isWritten('232');
    await frame.locator('.surface').focus();
    await editor.press('Control+Z');
    await isWritten('230');
    await eventually(async () => assert.match((await value()) ?? '', /^230/));
  });

  it('has shown no notification in all this', async () => {
    await editor.press('Control+1');
    await editor.runCommand('Thermogloss: Copy Results');
    await editor.page.waitForTimeout(1000);
    assert.deepEqual(editor.notifications, []);
  });

  it('is shown the notes of a draft, which is asked for: the count above would have seen it', async () => {
    await editor.runCommand('Thermogloss: Draft a Gloss for a Run');
    const row = editor.page.locator('.quick-input-list .monaco-list-row', { hasText: 'pet-07.txt' }).first();
    await row.click();
    await eventually(async () => assert.ok(editor.notifications.length > 0));
  });

  /** Waits until the line of the peak in the text ends its window so. */
  async function isWritten(end: string): Promise<void> {
    const text = editor.page.locator('.view-line', { hasText: new RegExp(`^peak.FromMelt\\s+160\\.\\.${end}.°C`) });
    await text.first().waitFor();
    // The focus goes to the text for the edit, and comes back: a key meanwhile is for nobody.
    const frame = await currentFrame(editor);
    await frame.waitForFunction(() => document.hasFocus());
    await editor.page.waitForTimeout(300);
  }
});
