import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import { colourFrom, contrast, mixed, type Colour } from '../../../webview/src/colour/colour';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';
import { themeNames } from './fake/themes';
import { inkColour } from './pixels';

const axe = readFileSync(createRequire(__filename).resolve('axe-core/axe.min.js'), 'utf8');

/** Serious and critical findings of axe, as text. */
async function violations(fake: FakePage): Promise<string[]> {
  // Through the debugger: the page's own policy lets no further script in.
  await fake.page.evaluate(axe);
  const found = await fake.page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(options: object): Promise<AxeResults> } };
    const { violations } = await axe.run({ resultTypes: ['violations'] });
    return violations.map((v) => ({
      id: v.id,
      impact: v.impact ?? '',
      nodes: v.nodes.map((n) => n.html.slice(0, 160)),
    }));
  });
  return found
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes.join(' | ')}`);
}

interface Painted {
  readonly text: string;
  readonly colour: string;
  readonly grounds: readonly string[];
}

/** Every visible text with its colour and the grounds behind it, nearest first. */
function painted(fake: FakePage): Promise<Painted[]> {
  return fake.page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found: { text: string; colour: string; grounds: string[] }[] = [];
    while (walker.nextNode()) {
      const text = walker.currentNode.textContent?.trim() ?? '';
      const element = walker.currentNode.parentElement;
      if (text === '' || element === null || element.tagName === 'OPTION' || element.closest('.unseen') !== null)
        continue;
      if (!element.checkVisibility({ opacityProperty: false })) continue;
      const grounds: string[] = [];
      for (let e: Element | null = element; e !== null; e = e.parentElement)
        grounds.push(getComputedStyle(e).backgroundColor);
      found.push({ text: text.slice(0, 40), colour: getComputedStyle(element).color, grounds });
    }
    return found;
  });
}

function ratio({ colour, grounds }: Painted): number {
  let ground: Colour = { r: 255, g: 255, b: 255, a: 1 };
  for (const layer of [...grounds].reverse()) {
    const c = colourFrom(layer);
    if (c !== null) ground = mixed(c, ground, c.a);
  }
  const ink = colourFrom(colour);
  return ink === null ? 0 : contrast(mixed(ink, ground, ink.a), ground);
}

describe('the curves view for everybody', function () {
  this.timeout(180_000);
  let fake: FakePage;
  afterEach(() => fake.close());
  after(closeBrowser);

  for (const theme of themeNames) {
    it(`has no serious finding of axe, with a band selected, rows open and everything listed (${theme})`, async () => {
      fake = await openFake({ theme });
      await fake.drawn();
      assert.deepEqual(await violations(fake), []);
      await fake.send({ type: 'caret', statement: 'step First' });
      await fake.page.locator('.drawn summary').click();
      await fake.page.locator('.ledger tbody tr').nth(1).focus();
      await fake.page.keyboard.press('ArrowRight');
      await fake.page.getByRole('button', { name: 'copy' }).click();
      assert.deepEqual(await violations(fake), []);
    });

    it(`shows text at 4.5 to 1 and lines at 3 to 1, by the colours computed (${theme})`, async () => {
      fake = await openFake({ theme });
      await fake.drawn();
      await fake.send({ type: 'caret', statement: 'step First' });
      await fake.page.locator('.drawn summary').click();
      await fake.page.locator('.mark').first().waitFor();
      const texts = await painted(fake);
      assert.ok(texts.length > 80, String(texts.length));
      assert.deepEqual(
        texts.filter((t) => ratio(t) < 4.5).map((t) => `${t.text} ${ratio(t).toFixed(2)}`),
        [],
      );
      const colours = await fake.page.evaluate(() => {
        const style = getComputedStyle(document.querySelector('.sheet')!);
        return Object.fromEntries(
          ['ground', 'ink', 'muted', 'edge', 'accent', 'warning', 'focus'].map((n) => [
            n,
            style.getPropertyValue(`--sheet-${n}`),
          ]),
        );
      });
      const ground = colourFrom(colours.ground)!;
      for (const name of ['ink', 'muted', 'edge', 'accent', 'warning', 'focus']) {
        assert.ok(contrast(colourFrom(colours[name])!, ground) >= 3, name);
      }
      // What is really on the canvas.
      const drawn = colourFrom(`rgb(${await inkColour(fake.page, 'mass')})`)!;
      assert.ok(contrast(drawn, ground) >= 4.5);
    });
  }

  it('follows a switch of theme at once, without a reload, on the canvas too', async () => {
    fake = await openFake({ theme: 'vscode-light' });
    await fake.drawn();
    const seen = new Set<string>();
    for (const theme of [...themeNames, 'vscode-dark' as const]) {
      await fake.theme(theme);
      const wanted = await fake.page.evaluate(() =>
        getComputedStyle(document.querySelector('.sheet')!).getPropertyValue('--sheet-ink'),
      );
      const ink = colourFrom(wanted)!;
      await eventually(async () => assert.equal(await inkColour(fake.page, 'mass'), `${ink.r},${ink.g},${ink.b}`));
      seen.add(wanted);
    }
    assert.equal(seen.size, 4);
    assert.equal((await fake.posted('ready')).length, 1);
  });

  it('gives every lane a named picture, a summary, and the table what is drawn and how old it is', async () => {
    fake = await openFake();
    await fake.drawn();
    // The words follow the picture when the view is at rest.
    const names = await eventually(async () => {
      const found = await fake.page
        .getByRole('img')
        .evaluateAll((all) => all.filter((c) => c.tagName === 'CANVAS').map((c) => c.getAttribute('aria-label')));
      assert.equal(found.length, 4);
      assert.match(
        found[0] ?? '',
        /^mass, m\/%: 3 curves, heating 1, hold 1, cooling 1 from 55\.\d+ to 100\.\d+ %\. 4 windows\.$/,
      );
      return found;
    });
    assert.match(names[2] ?? '', /endothermic down/);
    await fake.page.locator('.drawn summary').focus();
    await fake.page.keyboard.press('Enter');
    await eventually(async () =>
      assert.match(await fake.page.locator('.drawn caption').innerText(), /revision 1, current · T\/°C/),
    );
    assert.equal(await fake.page.locator('.drawn tbody tr').count(), 12);
    assert.equal(await fake.page.getByRole('treegrid').getByRole('row').count(), 12);
  });

  it('walks the samples by keys, changes the part, visits the marks, and speaks when it has come to rest', async () => {
    fake = await openFake();
    await fake.drawn();
    await fake.send({ type: 'caret', statement: 'step First' });
    const spoken = fake.page.locator('[aria-live="polite"]').last();
    await fake.page.locator('.surface').focus();
    await fake.page.keyboard.press('ArrowRight');
    await eventually(async () => assert.match((await spoken.textContent()) ?? '', /^heating 1, 51\d\./));
    const changes = await fake.page.evaluate(async () => {
      let count = 0;
      const region = [...document.querySelectorAll('[aria-live="polite"]')].at(-1)!;
      new MutationObserver(() => count++).observe(region, { childList: true, characterData: true, subtree: true });
      const surface = document.querySelector<HTMLElement>('.surface')!;
      const start = performance.now();
      for (let k = 0; k < 200; k++) {
        surface.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
        await new Promise((done) => setTimeout(done, 4));
      }
      await new Promise((done) => setTimeout(done, 600));
      return { count, most: Math.ceil((performance.now() - start) / 180) };
    });
    const asked = (await fake.posted('cursor')).length;
    assert.ok(changes.count >= 1 && changes.count <= changes.most, `${changes.count} times, at most ${changes.most}`);
    assert.ok(changes.count < asked, 'not with every answer');
    await fake.page.keyboard.press('PageDown');
    await eventually(async () => assert.match((await spoken.textContent()) ?? '', /^hold 1/));
    await fake.page.keyboard.press('.');
    await eventually(async () =>
      assert.match(await fake.page.locator('.notices').innerText(), /start 72\d\.\d ± 1\.5 °C/),
    );
    await eventually(async () => assert.match((await spoken.textContent()) ?? '', /^heating 1, 72\d/));
    await fake.page.keyboard.press('Escape');
    await fake.page.locator('.cursor').waitFor({ state: 'hidden' });
  });

  it('shows the values of all signals at the mouse, at most one question a time', async () => {
    fake = await openFake();
    await fake.drawn();
    const canvas = (await fake.page.locator('.lane[data-lane="mass"] canvas.curve').boundingBox())!;
    await fake.page.evaluate(() => (window.fake.delays = { cursor: 50 }));
    await fake.page.mouse.move(canvas.x + 100, canvas.y + 40);
    await fake.page.mouse.move(canvas.x + 500, canvas.y + 40, { steps: 100 });
    await eventually(async () =>
      assert.equal((await fake.page.locator('.reading').allInnerTexts()).filter((t) => /\d/.test(t)).length, 4),
    );
    assert.equal(await fake.page.locator('.dot').count(), 4);
    assert.equal(await fake.page.evaluate(() => window.fake.most.cursor), 1);
    await fake.page.mouse.move(canvas.x + 500, canvas.y + 900);
    await fake.page.locator('.cursor').waitFor({ state: 'hidden' });
  });

  it('is tabbed through as it is read, to the end and out again, with a ring that is seen', async () => {
    fake = await openFake();
    await fake.drawn();
    await fake.send({ type: 'caret', statement: 'step First' });
    await fake.page.locator('.mark').first().waitFor();
    await fake.page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    const stops: { key: string; top: number; ring: boolean; band: number }[] = [];
    for (let k = 0; k < 120; k++) {
      await fake.page.keyboard.press('Tab');
      const stop = await fake.page.evaluate(() => {
        const e = document.activeElement;
        if (!(e instanceof HTMLElement) || e === document.body) return null;
        const box = e.getBoundingClientRect();
        const style = getComputedStyle(e);
        const outer = e.closest('.lane-name');
        const ring = [style, ...(outer === null ? [] : [getComputedStyle(outer)])].some(
          (s) => s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 1,
        );
        const sections = ['.head', '.controls', '.surface', '.lane', '.results', '.findings', '.drawn'];
        return {
          key: `${e.tagName} ${e.className} ${e.getAttribute('aria-label') ?? e.textContent?.slice(0, 20)}`,
          top: box.top + document.documentElement.scrollTop,
          ring,
          band: sections.findIndex((s) => e.closest(s) !== null),
        };
      });
      if (stop === null) break;
      stops.push(stop);
    }
    assert.ok(stops.length > 25 && stops.length < 120, `${stops.length} stops, then out of the page`);
    assert.deepEqual(
      stops.filter((s) => !s.ring).map((s) => s.key),
      [],
    );
    const order = stops.map((s) => s.band);
    assert.deepEqual(
      order,
      [...order].sort((a, b) => a - b),
      'sections from top to bottom',
    );
    assert.deepEqual([...new Set(order)], [0, 1, 2, 3, 4, 5, 6], 'each of them is reached');
    assert.equal(new Set(stops.map((s, i) => `${s.key}${i}`)).size, stops.length);
  });

  it('holds no one in a menu: Escape, Tab and a click elsewhere leave it', async () => {
    fake = await openFake();
    await fake.drawn();
    const menu = fake.page.getByRole('menu');
    const copy = fake.page.getByRole('button', { name: 'copy' });
    for (const leave of ['Escape', 'Tab']) {
      await copy.focus();
      await fake.page.keyboard.press('Enter');
      await menu.waitFor();
      await fake.page.keyboard.press('ArrowDown');
      await fake.page.keyboard.press(leave);
      await menu.waitFor({ state: 'detached' });
    }
    await copy.click();
    await fake.page.locator('h1').click();
    await menu.waitFor({ state: 'detached' });
  });

  for (const [name, viewport, zoom] of [
    ['320 px wide', { width: 320, height: 700 }, 1],
    ['at 200 % zoom', { width: 640, height: 450 }, 2],
  ] as const) {
    it(`keeps every control in reach ${name}`, async () => {
      fake = await openFake({ viewport });
      await fake.drawn();
      // Zoom of a page halves the px it has: the same as half the window.
      if (zoom === 2) await fake.page.setViewportSize({ width: viewport.width / 2, height: viewport.height / 2 });
      await fake.send({ type: 'caret', statement: 'step First' });
      await fake.drawn();
      const out = await fake.page.evaluate(() => {
        const width = document.documentElement.clientWidth;
        const wide = document.documentElement.scrollWidth > width + 1;
        const cut = [...document.querySelectorAll<HTMLElement>('button, select, summary, .handle, .lane-bar')].filter(
          (e) => {
            const box = e.getBoundingClientRect();
            return e.checkVisibility() && e.closest('.table-wrap') === null && (box.right > width + 6 || box.left < -6);
          },
        );
        return { wide, cut: cut.map((e) => `${e.className} ${e.textContent}`) };
      });
      assert.deepEqual(out, { wide: false, cut: [] });
      await fake.page.getByRole('button', { name: 'copy' }).click();
      const box = (await fake.page.getByRole('menu').boundingBox())!;
      assert.ok(box.x >= 0 && box.x + box.width <= (zoom === 2 ? 320 : 320) + 1, JSON.stringify(box));
    });
  }

  it('keeps still where motion is unwanted', async () => {
    fake = await openFake({ bodyClass: 'vscode-reduce-motion' });
    await fake.drawn();
    await fake.update({ freshness: { state: 'computing', text: 'computing', error: null } });
    await eventually(async () => assert.match(await fake.page.locator('.freshness').innerText(), /computing/));
    assert.deepEqual(await fake.page.evaluate(() => document.getAnimations().length), 0);
  });
});
