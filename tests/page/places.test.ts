import assert from 'node:assert/strict';
import { currentFrame } from './support/currentFrame';
import { openEditor, type Editor } from './support/editor';
import { eventually } from './webview/eventually';

const file = 'preform/pet-07.gloss';

describe('the caret, moved in every way there is', () => {
  let editor: Editor;
  let lines: string[];

  before(async () => {
    editor = await openEditor({ workspace: '', viewport: { width: 1500, height: 900 } });
    lines = editor.read(file).split('\n');
    await editor.openFile(file);
    await editor.runCommand('Thermogloss: Show Curves Beside the Text');
    await currentFrame(editor);
    await editor.press('Control+1');
  });
  after(() => editor.close());

  /** Line, from 1, and name of a statement. */
  function statement(pattern: RegExp): { readonly line: number; readonly name: string } {
    const at = lines.findIndex((l) => pattern.test(l));
    return { line: at + 1, name: pattern.exec(lines[at]!)![1]! };
  }

  async function isSelected(name: string): Promise<void> {
    const frame = await currentFrame(editor);
    await eventually(async () =>
      assert.deepEqual([...new Set(await frame.locator('.tab.is-selected .tab-name').allInnerTexts())], [name]),
    );
  }

  it('by keys selects the statement it comes to in the curves, and none where there is none', async () => {
    const { line, name } = statement(/^peak (\w+)/);
    await editor.goTo(line - 1);
    await editor.press('ArrowDown');
    await isSelected(name);
    await editor.goTo(1);
    const frame = await currentFrame(editor);
    await eventually(async () => assert.equal(await frame.locator('.tab.is-selected').count(), 0));
  });

  it('by the mouse', async () => {
    const { name } = statement(/^glass (\w+)/);
    const text = editor.page.locator('.view-line', { hasText: new RegExp(`^glass.${name}`) }).first();
    await text.click({ position: { x: 30, y: 8 } });
    await isSelected(name);
  });

  it('by searching', async () => {
    const { name } = statement(/^peak (\w+)/);
    await editor.goTo(1);
    await editor.press('Control+F');
    await editor.page.locator('.find-widget textarea').first().fill(`peak ${name}`);
    await editor.press('Enter', 'Escape');
    await isSelected(name);
  });

  it('by the outline', async () => {
    const { name } = statement(/^glass (\w+)/);
    await editor.press('Control+Shift+O');
    await editor.page.locator('.quick-input-widget').waitFor({ state: 'visible' });
    await editor.page.keyboard.type(name, { delay: 30 });
    await editor.page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().waitFor();
    await editor.press('Enter');
    await isSelected(name);
  });
});
