import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openEditor, type Editor } from './support/editor';
import { eventually } from './webview/eventually';

const file = 'pet-07.gloss';

describe('a revision of git beside the text', () => {
  let editor: Editor;
  let committed: string[];
  let git: (...words: readonly string[]) => void;

  before(async () => {
    editor = await openEditor({ workspace: 'preform', viewport: { width: 1600, height: 900 } });
    committed = editor.read(file).split('\n');
    git = (...words) => {
      const person = ['-c', 'user.name=Nobody', '-c', 'user.email=nobody@invalid'];
      const run = spawnSync('git', [...person, ...words], { cwd: editor.folder, encoding: 'utf8' });
      assert.equal(run.status, 0, run.stderr);
    };
    git('init', '-q');
    git('add', '.');
    git('commit', '-q', '-m', 'As measured');
    writeFileSync(join(editor.folder, file), editor.read(file).replace('160..230 °C', '162..230 °C'));
    // The editor looks for repositories when it opens a folder.
    await editor.reload();
    await editor.openFile(file);
    await editor.runCommand('Git: Open Changes');
    await editor.page
      .locator('.monaco-diff-editor .editor.modified .view-line', { hasText: /±\s\d/ })
      .first()
      .waitFor();
  });
  after(() => editor.close());

  /** Lines of one side that can be seen, as they are drawn. */
  async function side(which: 'original' | 'modified'): Promise<string[]> {
    const texts = await editor.page.locator(`.monaco-diff-editor .editor.${which} .view-line`).allTextContents();
    return texts.map((text) => text.replaceAll('\u00a0', ' ').trimEnd()).filter((text) => text !== '');
  }

  it('has the committed text and nothing in it: no results, no findings, no curves, no message', async () => {
    const old = await side('original');
    assert.ok(old.length > 10, old.join('\n'));
    const written = new Set(committed.map((line) => line.trimEnd()));
    assert.deepEqual(
      old.filter((line) => !written.has(line)),
      [],
    );
    assert.equal(await editor.page.locator('.monaco-diff-editor .editor.original [class*="squiggly"]').count(), 0);
    assert.deepEqual(editor.notifications, []);
  });

  it('stands beside the text of today, which has its results', async () => {
    await eventually(async () => {
      const now = await side('modified');
      assert.ok(
        now.some((line) => /162\.\.230 °C.*± \d/.test(line)),
        now.join('\n'),
      );
    });
  });

  it('is another one after a commit made elsewhere, which the curves see without a key pressed', async () => {
    await editor.openFile(file);
    await editor.runCommand('Thermogloss: Show Curves Beside the Text');
    const frame = await editor.frameOf();
    const away = frame.locator('.column-since:not(.is-quiet)', { hasText: /\d/ });
    await away.first().waitFor();
    git('commit', '-q', '-a', '-m', 'The window begins later');
    await away.first().waitFor({ state: 'detached' });
    await frame.locator('.column-since.is-quiet', { hasText: '—' }).first().waitFor();
  });
});
