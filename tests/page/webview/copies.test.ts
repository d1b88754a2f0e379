import assert from 'node:assert/strict';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';

/** Width, height and the colour of the first pixel of a PNG. */
function looked(fake: FakePage, base64: string): Promise<{ width: number; height: number; corner: number[] }> {
  return fake.page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const context = canvas.getContext('2d')!;
    context.drawImage(image, 0, 0);
    return { width: image.width, height: image.height, corner: [...context.getImageData(2, 2, 1, 1).data] };
  }, base64);
}

describe('copies of the curves view', function () {
  this.timeout(180_000);
  let fake: FakePage;
  const choose = async (
    entry: string,
    role: 'menuitem' | 'menuitemradio' | 'menuitemcheckbox' = 'menuitem',
  ): Promise<void> => {
    await fake.page.getByRole('button', { name: 'copy' }).click();
    await fake.page.getByRole(role, { name: entry, exact: true }).click();
    if (role !== 'menuitem') await fake.page.keyboard.press('Escape');
  };
  const told = (pattern: RegExp): Promise<void> =>
    eventually(async () => assert.match(await fake.page.locator('.notices').innerText(), pattern));
  const saved = async (): Promise<{ name: string; mime: string; base64: string }> =>
    eventually(async () => {
      const last = (await fake.posted('save')).at(-1);
      assert.ok(last?.type === 'save');
      return last;
    });
  beforeEach(async () => {
    fake = await openFake({ theme: 'vscode-dark' });
    await fake.drawn();
  });
  afterEach(() => fake.close());
  after(closeBrowser);

  it('put a picture on the clipboard, twice as many pixels as it is wide, on white by default, and say so', async () => {
    await choose('Copy picture');
    await told(/Picture copied/);
    const base64 = await fake.page.evaluate(async () => {
      const [item] = await navigator.clipboard.read();
      const bytes = new Uint8Array(await (await item.getType('image/png')).arrayBuffer());
      let text = '';
      for (const byte of bytes) text += String.fromCharCode(byte);
      return btoa(text);
    });
    const plot = (await fake.page.locator('.plot').boundingBox())!;
    const picture = await looked(fake, base64);
    assert.equal(picture.width, 2 * Math.round(plot.width));
    assert.deepEqual(picture.corner, [255, 255, 255, 255]);
  });

  it('say why there is none where the page has no clipboard', async () => {
    await fake.page.evaluate(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
    await choose('Copy picture');
    await told(/Not done: the clipboard of this page takes no pictures/);
    await choose('Copy table as CSV');
    await told(/Table copied/);
    const [copied] = await fake.posted('copyText');
    assert.ok(copied.type === 'copyText' && copied.text.startsWith('Name,Quantity,Value,Number,Unit'));
  });

  it('are in the colours chosen: dark, as in the editor, or without a background', async () => {
    const colours: number[][] = [];
    for (const theme of ['dark', 'print', 'as in the editor']) {
      await choose(theme, 'menuitemradio');
      const before = (await fake.posted('save')).length;
      await choose('Save picture (PNG)…');
      await eventually(async () => assert.equal((await fake.posted('save')).length, before + 1));
      colours.push((await looked(fake, (await saved()).base64)).corner);
    }
    assert.ok(colours[0][0] < 60 && colours[1][0] === 255);
    assert.deepEqual(colours[2], [31, 31, 31, 255]);
    await choose('without background', 'menuitemcheckbox');
    const before = (await fake.posted('save')).length;
    await choose('Save picture (PNG)…');
    await eventually(async () => assert.equal((await fake.posted('save')).length, before + 1));
    assert.equal((await looked(fake, (await saved()).base64)).corner[3], 0);
  });

  it('save the drawing as XML that stands on its own, under the name of the run, the same twice', async () => {
    await choose('Save drawing (SVG)…');
    await told(/SVG saved/);
    const first = await saved();
    assert.deepEqual([first.name, first.mime], ['vq217-1.svg', 'image/svg+xml']);
    const text = Buffer.from(first.base64, 'base64').toString('utf8');
    const broken = await fake.page.evaluate(
      (svg) => new DOMParser().parseFromString(svg, 'image/svg+xml').querySelector('parsererror')?.textContent ?? null,
      text,
    );
    assert.equal(broken, null);
    assert.ok(!/(?:href|src)=|url\((?!#)/.test(text), 'nothing from elsewhere');
    assert.ok(text.includes('>First<') && text.includes('m/%'));
    await choose('Save drawing (SVG)…');
    await eventually(async () => assert.equal((await fake.posted('save')).length, 2));
    assert.equal((await saved()).base64, first.base64);
  });

  it('put the table on the clipboard as cells and as a table at once, in the order shown', async () => {
    await fake.page.getByRole('button', { name: 'Value' }).click();
    await choose('Copy table as cells');
    await told(/Table copied: 11 rows/);
    const [types, text, html] = await fake.page.evaluate(async () => {
      const [item] = await navigator.clipboard.read();
      const read = async (type: string): Promise<string> => (await item.getType(type)).text();
      return [item.types.join(), await read('text/plain'), await read('text/html')];
    });
    assert.equal(types, 'text/plain,text/html');
    const rows = text
      .replace(/\n$/, '')
      .split('\n')
      .map((line) => line.split('\t'));
    assert.equal(rows.length, 12);
    assert.ok(rows.every((row) => row.length === rows[0].length));
    assert.deepEqual(
      rows.slice(1).map((row) => Number(row[3])),
      [...rows.slice(1).map((row) => Number(row[3]))].sort((a, b) => a - b),
    );
    assert.equal((html.match(/<tr/g) ?? []).length, 12);
    await choose('Copy table as Markdown');
    await eventually(async () =>
      assert.match(await fake.page.evaluate(() => navigator.clipboard.readText()), /^\| Name\s+\|/),
    );
  });
});
