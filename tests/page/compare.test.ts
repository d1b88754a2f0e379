import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { lossRun } from '../lsp/support/lossRun';
import { openEditor, type Editor } from './support/editor';

// Invented data, computed from a formula; no laboratory measured this.
const gloss = 'run "a.csv"\n  hazard "none: invented"\n\nstep First 200..450 °C\n\nresidue Rest at 600 °C\n';

function commit(folder: string): void {
  const author = ['-c', 'user.name=A. Fictitious', '-c', 'user.email=a@example.org'];
  for (const words of [
    ['init', '-q', '-b', 'main'],
    ['add', '-A'],
    ['commit', '-q', '-m', 'start'],
  ]) {
    execFileSync('git', [...author, ...words], { cwd: folder, stdio: 'ignore' });
  }
}

describe('results compared by a person with the keyboard', () => {
  let editor: Editor;

  before(async () => {
    editor = await openEditor({
      workspace: { 'a.csv': lossRun(), 'a.gloss': gloss },
      settings: { 'files.autoSave': 'off' },
      viewport: { width: 1500, height: 950 },
    });
    commit(editor.folder);
  });
  after(() => editor.close());

  /** Waits for a row of the input line's list and takes it with Enter. */
  const take = async (label: string): Promise<void> => {
    const box = editor.page.locator('.quick-input-widget');
    const row = box.locator('.quick-input-list .monaco-list-row.focused', { hasText: label });
    await row.waitFor();
    await editor.press('Enter');
    await row.waitFor({ state: 'hidden' });
  };
  const panel = () => editor.page.locator('.part.panel');

  it('are those of a window that was typed and not saved, each opening its changed line', async () => {
    await editor.openFile('a.gloss');
    await editor.goTo(4, 17);
    await editor.press('Delete', 'Delete', 'Delete');
    await editor.typeText('335');
    await editor.press('Escape', 'F1');
    await editor.page.locator('.quick-input-widget').waitFor({ state: 'visible' });
    await editor.typeText('Thermogloss: Compare Results with');
    await take('Thermogloss: Compare Results with…');
    await take('HEAD');
    const loss = panel().locator('.monaco-list-row', { hasText: 'First.loss' });
    await loss.waitFor();
    const said = (await loss.innerText()).replace(/\s+/g, ' ');
    assert.match(said, /→/);
    assert.match(said, /decision changed: step First 200\.\.450 °C → step First 200\.\.335 °C/);
    await panel()
      .getByText(/From HEAD \([0-9a-f]{7}\) to working copy with unsaved texts\. 5 results moved beyond tolerance/)
      .waitFor();
    await panel()
      .getByText(/results? within tolerance (?:is|are) not shown/)
      .waitFor();
    await editor.screenshot('compare tree');

    // The tree has the focus: down to the first result, and Enter.
    await editor.press('Home', 'Enter');
    const diff = editor.page.locator('.monaco-diff-editor');
    await diff.waitFor();
    await diff.locator('.editor.original .view-line', { hasText: '200..450' }).waitFor();
    await diff.locator('.editor.modified .view-line', { hasText: '200..335' }).waitFor();
    await editor.screenshot('compare lines');
    assert.equal(editor.read('a.gloss'), gloss, 'nothing was saved');
  });

  it('are laid over one another in the curves, the revision named', async () => {
    await editor.press('F1');
    await editor.page.locator('.quick-input-widget').waitFor({ state: 'visible' });
    await editor.typeText('Thermogloss: Show Both in the Curves');
    await take('Thermogloss: Show Both in the Curves');
    const frame = await editor.frameOf();
    await frame
      .locator('.legend, [class*=legend]')
      .getByText(/^[0-9a-f]{7,}$/)
      .first()
      .waitFor();
    await editor.screenshot('compare curves');
  });
});
