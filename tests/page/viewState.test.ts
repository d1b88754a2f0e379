import assert from 'node:assert/strict';
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

  async function isAsBefore(atAnyScroll = false): Promise<void> {
    await eventually(async () => {
      const now = await seen(await currentFrame(editor));
      assert.deepEqual(atAnyScroll ? { ...now, scroll: chosen['scroll'] } : now, chosen);
    });
  }

  it('stays while the text is edited, broken, mended and saved', async () => {
    await editor.press('Control+1');
    await editor.goTo(24);
    await editor.press('End');
    await editor.typeText(' in in');
    await (
      await editor.frameOf()
    )
      .getByText(/line \d+ has an error/)
      .first()
      .waitFor();
    for (let k = 0; k < 6; k += 1) await editor.press('Backspace');
    await currentFrame(editor);
    await editor.typeText('  # looked at twice');
    await editor.press('Control+S');
    await editor.press('Control+Z');
    await editor.press('Control+S');
    const selected = chosen['selected'];
    // The caret stands in the run's own line now: that selection is the person's too.
    const frame = await currentFrame(editor);
    await frame.locator('.ledger tbody tr').nth(2).locator('td').nth(1).click();
    await eventually(async () => assert.deepEqual((await seen(frame))['selected'], selected));
    await frame.evaluate(() => (document.documentElement.scrollTop = 60));
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

  it('stays, but for the scroll, where the curves are moved to another group, and where the text is split', async () => {
    await editor.page.locator('.tab', { hasText: 'Curves of' }).click();
    await editor.runCommand('View: Move Editor into First Group');
    await isAsBefore(true);
    await editor.runCommand('View: Move Editor into Next Group');
    await isAsBefore(true);
    await editor.press('Control+1');
    await editor.runCommand('View: Split Editor Down');
    await isAsBefore(true);
  });

  it('stays over a reload of the window, with its gloss', async () => {
    const frame = await currentFrame(editor);
    await frame.evaluate(() => (document.documentElement.scrollTop = 60));
    await editor.page.waitForTimeout(5000);
    await editor.reload();
    await editor.page.locator('.tab', { hasText: `Curves of ${gloss}` }).waitFor({ timeout: 90_000 });
    await isAsBefore();
  });
});
