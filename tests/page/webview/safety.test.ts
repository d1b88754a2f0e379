import assert from 'node:assert/strict';
import { closeBrowser, openFake, type FakePage } from './fakePage';
import { hostileName } from './fake/scenario';

describe('the curves view under the page’s content policy', function () {
  this.timeout(180_000);
  let fake: FakePage;
  afterEach(() => fake.close());
  after(closeBrowser);

  it('leaves the console clean through everything it can do', async () => {
    fake = await openFake();
    const { page } = fake;
    await fake.drawn();
    await fake.send({ type: 'caret', statement: 'step First' });
    await page.locator('.surface').focus();
    for (const key of ['+', 'ArrowRight', 'PageDown', '.', 'Enter', '0', 'Escape']) await page.keyboard.press(key);
    await page.locator('.handle.is-selected').first().focus();
    await page.keyboard.press('Enter');
    await page.locator('.value-box input').press('Escape');
    for (const entry of ['Copy picture', 'Save picture (PNG)…', 'Copy drawing (SVG text)', 'Copy table as cells']) {
      const before = (await page.locator('.notices').innerText()) || '';
      await page.getByRole('button', { name: 'copy' }).click();
      await page.getByRole('menuitem', { name: entry }).click();
      await page.waitForFunction(
        (was) => ((document.querySelector('.notices') as HTMLElement).innerText || '') !== was,
        before,
        { timeout: 60_000 },
      );
    }
    await fake.theme('vscode-high-contrast');
    await fake.drawn();
    assert.deepEqual(fake.messages, []);
    assert.deepEqual(await fake.posted('fault'), []);
  });

  it('shows hostile names of files, statements and messages as text', async () => {
    fake = await openFake({ scenario: { hostile: true } });
    const { page } = fake;
    await fake.drawn();
    await fake.send({ type: 'caret', statement: 'step First' });
    await page.getByRole('button', { name: 'lay over' }).click();
    await page.getByRole('menuitemcheckbox').nth(1).click();
    await page.keyboard.press('Escape');
    await fake.drawn();
    assert.equal(await page.title(), 'Curves');
    assert.equal(await page.locator('img').count(), 0);
    assert.ok((await page.locator('h1').textContent())?.startsWith(hostileName));
    assert.equal(await page.locator('.tab.is-selected .tab-name').textContent(), hostileName);
    assert.ok((await page.locator('.legend').textContent())?.includes(hostileName));
    assert.ok((await page.locator('.findings').textContent())?.includes(hostileName));
    assert.deepEqual(fake.messages, []);
  });

  it('takes no harm from messages that are none, or that nobody asked for', async () => {
    fake = await openFake();
    await fake.drawn();
    await fake.page.evaluate(() => {
      for (const data of [
        null,
        1,
        'state',
        {},
        { type: 'unknown' },
        { type: 'samples', call: 999, answer: null },
        { type: 'caret', statement: 'nothing such' },
      ]) {
        window.dispatchEvent(new MessageEvent('message', { data }));
      }
    });
    await fake.update({});
    await fake.drawn();
    assert.deepEqual(fake.messages, []);
    assert.deepEqual(await fake.posted('fault'), []);
  });
});
