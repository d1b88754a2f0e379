import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame } from 'playwright-core';
import { openEditor, type Editor } from './support/editor';
import { currentFrame } from './support/currentFrame';
import { eventually } from './webview/eventually';

const gloss = 'pet-07.gloss';

/** What a person sees of the choices made: parts, zoom, selected statement, order and open rows of the table, scroll. */
function seen(frame: Frame): Promise<Readonly<Record<string, unknown>>> {
  return frame.evaluate(() => ({
    parts: [...document.querySelectorAll('.controls .toggle')].map(
      (b) => `${b.textContent} ${b.getAttribute('aria-pressed')}`,
    ),
    lanes: [...document.querySelectorAll<HTMLElement>('.lane')].map((l) => [l.dataset['lane'], l.style.height]),
    // Where names of windows stand, in twentieths of the plotted width, whatever that is by now: the zoom.
    tabs: [...document.querySelectorAll<HTMLElement>('.tab')].map((t) => {
      const plotted = document.querySelector('canvas.curve')!.getBoundingClientRect();
      const share = (t.getBoundingClientRect().left - plotted.left) / plotted.width;
      return `${t.querySelector('.tab-name')?.textContent} ${Math.max(0, Math.round(20 * share))}`;
    }),
    selected: [...document.querySelectorAll<HTMLElement>('.ledger tbody tr[aria-selected="true"]')].map(
      (r) => r.dataset['key'],
    ),
    rows: [...document.querySelectorAll<HTMLElement>('.ledger tbody tr')].map(
      (r) => `${r.dataset['key']} ${r.getAttribute('aria-expanded')}`,
    ),
    sorted: [...document.querySelectorAll('.ledger th')].map((th) => th.getAttribute('aria-sort')),
    scroll: Math.round(document.documentElement.scrollTop),
  }));
}

describe('what a person chose to see in the curves', function () {
  // Each look waits for a picture that is current, on a machine that may be busy.
  this.timeout(300_000);
  let editor: Editor;
  let chosen: Readonly<Record<string, unknown>>;

  before(async () => {
    editor = await openEditor({ workspace: 'preform', viewport: { width: 1500, height: 900 } });
    await editor.openFile(gloss);
    await editor.runCommand('Thermogloss: Show Curves Beside the Text');
    const frame = await currentFrame(editor);
    await frame.getByRole('button', { name: 'cooling 1' }).click();
    await frame.getByRole('button', { name: /^Value/ }).click();
    await frame.locator('.ledger tbody tr').first().focus();
    await editor.press('ArrowRight');
    await frame.locator('.surface').focus();
    for (let k = 0; k < 4; k += 1) await editor.press('+');
    // The last to be selected, by a click that takes the caret to its line.
    await frame.locator('.ledger tbody tr').nth(2).locator('td').nth(1).click();
    await editor.page.waitForTimeout(500);
    await frame.evaluate(() => (document.documentElement.scrollTop = 60));
    await editor.page.waitForTimeout(1000);
    chosen = await seen(await currentFrame(editor));
    assert.match(JSON.stringify(chosen['parts']), /cooling 1 false/);
    assert.match(JSON.stringify(chosen['sorted']), /ascending|descending/);
    assert.match(JSON.stringify(chosen['rows']), / true/);
    assert.equal(chosen['scroll'], 60);
    assert.ok((chosen['selected'] as string[]).length > 0);
  });
  after(() => editor.close());

  async function isAsBefore(): Promise<void> {
    await eventually(async () => {
      const now = await seen(await currentFrame(editor));
      assert.deepEqual(now, chosen);
    });
  }

  it('stays while the text is edited, broken, mended and saved', async () => {
    // The click on the row has put the caret into the line of the selected statement: it is that line that is edited.
    await editor.press('Control+1', 'End');
    await editor.typeText(' in in');
    await (
      await editor.frameOf()
    )
      .getByText(/line \d+ has an error/)
      .first()
      .waitFor();
    for (let k = 0; k < 6; k += 1) await editor.press('Backspace');
    await isAsBefore();
    await editor.typeText('  # looked at twice');
    await editor.press('Control+S');
    await eventually(async () => assert.match(await Promise.resolve(editor.read(gloss)), /looked at twice/));
    await isAsBefore();
    await editor.press('Control+Z', 'Control+S');
    await isAsBefore();
  });

  it('stays where the data change on disk', async () => {
    const revision = async (): Promise<string | null> =>
      (await currentFrame(editor)).locator('#view').getAttribute('data-revision');
    const before = await revision();
    const path = join(editor.folder, 'pet-07.txt');
    const text = readFileSync(path, 'utf8');
    // The last reading of the heat flow, outside every window.
    assert.match(text, /2,0683/);
    writeFileSync(path, text.replace('2,0683', '2,0684'));
    await eventually(async () => assert.notEqual(await revision(), before));
    await isAsBefore();
  });

  it('stays over a switch of theme', async () => {
    await editor.setTheme('dark');
    await isAsBefore();
    await editor.setTheme('light');
    await isAsBefore();
  });

  it('stays while its tab is behind another one', async () => {
    await editor.press('Control+2');
    await editor.openFile('pet-07.txt');
    await editor.page.locator('.tab', { hasText: 'Curves of' }).click();
    await isAsBefore();
    await editor.page.locator('.tab', { hasText: 'pet-07.txt' }).click();
    await editor.runCommand('View: Close Editor');
    await isAsBefore();
  });

  it('stays where the curves are moved to another group, and where the text is split', async () => {
    await editor.page.locator('.tab', { hasText: 'Curves of' }).click();
    await editor.runCommand('View: Move Editor into First Group');
    await isAsBefore();
    await editor.runCommand('View: Move Editor into Next Group');
    await isAsBefore();
    await editor.press('Control+1');
    await editor.runCommand('View: Split Editor Down');
    await isAsBefore();
  });

  it('stays over a reload of the window, with its gloss', async () => {
    // The editor writes what it keeps of a page to its store some seconds later, and nothing tells when.
    await editor.page.waitForTimeout(5000);
    await editor.reload();
    await editor.page.locator('.tab', { hasText: `Curves of ${gloss}` }).waitFor({ timeout: 90_000 });
    await isAsBefore();
  });
});
