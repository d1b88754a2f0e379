import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { say, type Word } from '../../../webview/src/words';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';

/** Every word of the view with its letters in full width (U+FF21 on): a language that nobody writes by accident. */
function invented(): Readonly<Record<string, string>> {
  const source = readFileSync('webview/src/words.ts', 'utf8');
  const table = source.slice(source.indexOf('{'), source.indexOf('as const'));
  const keys = [...table.matchAll(/^ {2}(\w+):/gm)].map((m) => m[1] as Word);
  const wide = (text: string): string =>
    text.replace(/[A-Za-z]/g, (c) => String.fromCharCode(c.charCodeAt(0) + 0xfee0));
  return Object.fromEntries(keys.map((key) => [key, wide(say(key, '{0}', '{1}', '{2}', '{3}', '{4}', '{5}', '{6}'))]));
}

/** Words in plain letters that a person sees or hears, which the state of the picture does not hold. */
async function plainWords(fake: FakePage): Promise<string[]> {
  const texts = await fake.page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    while (walker.nextNode()) found.push(walker.currentNode.textContent ?? '');
    for (const element of document.body.querySelectorAll('*'))
      for (const name of ['aria-label', 'title', 'placeholder', 'aria-valuetext', 'aria-description', 'alt'])
        found.push(element.getAttribute(name) ?? '');
    return found;
  });
  const given = await fake.page.evaluate(() => JSON.stringify(window.fake.state));
  const words = texts.flatMap((text) => text.match(/[A-Za-z]{3,}/g) ?? []);
  return [...new Set(words)].filter((word) => !given.includes(word));
}

describe('the view in another language', function () {
  this.timeout(180_000);
  let fake: FakePage;
  before(async () => {
    fake = await openFake({ words: invented() });
    await fake.drawn();
  });
  after(async () => {
    await fake.close();
    await closeBrowser();
  });

  it('has no word of its own left in English, with a statement selected, rows and lists open', async () => {
    await fake.send({ type: 'caret', statement: 'step First' });
    await fake.page.locator('.mark').first().waitFor();
    await fake.page.locator('.drawn summary').click();
    await fake.page.locator('.ledger tbody tr').nth(1).focus();
    await fake.page.keyboard.press('ArrowRight');
    await eventually(async () => assert.ok(await fake.page.getByText('Ｒｅｓｕｌｔｓ').first().isVisible()));
    assert.deepEqual(await plainWords(fake), []);
  });

  it('has none in its menus, the box of an edge, a refusal and the words of a lost connection', async () => {
    for (const button of await fake.page.locator('.lane-menu, [aria-haspopup="menu"]').all()) {
      await button.click();
      await fake.page.getByRole('menu').waitFor();
      assert.deepEqual(await plainWords(fake), []);
      await fake.page.keyboard.press('Escape');
    }
    await fake.page.locator('.handle').first().focus();
    await fake.page.keyboard.press('Enter');
    await fake.page.locator('.value-box input').fill('?');
    await fake.page.locator('.value-box input').press('Enter');
    assert.deepEqual(await plainWords(fake), []);
    await fake.page.locator('.value-box input').press('Escape');
    await fake.send({ type: 'connection', up: false, text: '' });
    await eventually(async () =>
      assert.match(await fake.page.locator('.freshness').innerText(), /ｃｏｎｎｅｃｔｉｏｎ/),
    );
    assert.deepEqual(await plainWords(fake), []);
  });

  it('is told from a page with English left in it', async () => {
    await fake.page.locator('h1').evaluate((h) => h.setAttribute('title', 'Forgotten words'));
    assert.deepEqual(await plainWords(fake), ['Forgotten', 'words']);
  });
});
