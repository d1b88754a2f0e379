import assert from 'node:assert/strict';
import type { KeptView } from '../../../server/src/protocol/messages';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';

const kept = (fake: FakePage): Promise<KeptView> =>
  fake.page.evaluate(() => JSON.parse(sessionStorage.getItem('kept') ?? 'null') as KeptView);

/** What a person sees of the choices, apart from what is kept. */
async function seen(fake: FakePage): Promise<unknown> {
  return fake.page.evaluate(() => ({
    lanes: [...document.querySelectorAll<HTMLElement>('.lane')].map((l) => [l.dataset.lane, l.style.height]),
    parts: [...document.querySelectorAll('.controls .toggle')].map(
      (b) => `${b.textContent} ${b.getAttribute('aria-pressed')}`,
    ),
    marks: [...document.querySelectorAll<HTMLElement>('.tab')].map(
      (t) => `${t.textContent} ${t.style.left} ${t.style.width}`,
    ),
    rows: [...document.querySelectorAll<HTMLElement>('.ledger tbody tr')].map(
      (r) => `${r.dataset.key} ${r.getAttribute('aria-expanded')} ${r.getAttribute('aria-selected')}`,
    ),
    scroll: Math.round(document.documentElement.scrollTop),
    sorted: [...document.querySelectorAll('.ledger th')].map((th) => th.getAttribute('aria-sort')),
  }));
}

async function arrange(fake: FakePage): Promise<void> {
  await fake.page.getByRole('button', { name: 'hold 1' }).click();
  await fake.drawn();
  await fake.page.getByRole('button', { name: 'ion current 44', exact: true }).click();
  await fake.page.locator('.lane[data-lane="rate"] .lane-grip').focus();
  await fake.page.keyboard.press('ArrowUp');
  await fake.page.locator('.lane[data-lane="mass"] .lane-bar').focus();
  await fake.page.keyboard.press('ArrowDown');
  await fake.page.getByRole('button', { name: /^Value/ }).click();
  await fake.page.getByRole('button', { name: 'all quantities' }).click();
  await fake.send({ type: 'caret', statement: 'step First' });
  await fake.page.locator('.ledger tbody tr').first().focus();
  await fake.page.keyboard.press('ArrowRight');
  await fake.page.locator('.surface').focus();
  for (let k = 0; k < 5; k++) await fake.page.keyboard.press('+');
  await fake.page.evaluate(() => (document.documentElement.scrollTop = 120));
  await eventually(async () => assert.equal((await kept(fake)).scroll, 120));
  await fake.drawn();
}

describe('what a person chose to see', function () {
  this.timeout(180_000);
  let fake: FakePage;
  let before: unknown;
  beforeEach(async () => {
    fake = await openFake();
    await fake.drawn();
    await arrange(fake);
    before = await seen(fake);
  });
  afterEach(() => fake.close());
  after(closeBrowser);

  it('stays after an edit, a failing edit, its repair, a reload of the data, and a switch of theme', async () => {
    const error = {
      uri: 'file:///invented/vq217-1.gloss',
      line: 12,
      span: { start: 0, end: 1 },
      message: 'unexpected text',
    };
    const changes = [
      { freshness: { state: 'current', text: 'current', error: null } },
      { freshness: { state: 'stale', text: 'revision 2: line 12 has an error', error } },
      { freshness: { state: 'stale', text: 'revision 2: line 12 has an error', error }, lanes: [], bands: [] },
    ] as const;
    const lanes = await fake.page.evaluate(() => window.fake.state.lanes);
    const bands = await fake.page.evaluate(() => window.fake.state.bands);
    for (const change of changes) {
      await fake.update(change);
      await fake.drawn();
      await eventually(async () => assert.deepEqual(await seen(fake), before));
    }
    await fake.update({ ...changes[0], lanes, bands });
    await fake.drawn();
    await fake.theme('vscode-high-contrast');
    assert.deepEqual(await seen(fake), before);
  });

  it('stays over a reload of the page', async () => {
    const was = await kept(fake);
    await fake.page.reload();
    await fake.drawn();
    await eventually(async () => assert.deepEqual(await seen(fake), before));
    await fake.drawn();
    assert.deepEqual(await kept(fake), was);
    assert.deepEqual(await fake.page.evaluate(() => window.fake.state.choices.hiddenParts), ['hold 1']);
  });

  it('keeps its scroll where the sheet comes to its height later, and where the editor scrolls a page it made anew', async () => {
    const { lanes, bands } = await fake.page.evaluate(() => window.fake.state);
    const was = await kept(fake);
    await fake.update({ lanes: [], bands: [] });
    const scroll = (): Promise<number> => fake.page.evaluate(() => Math.round(document.documentElement.scrollTop));
    await eventually(async () => assert.ok((await scroll()) < 120));
    // The first one that comes is older than what the page has itself.
    for (let k = 0; k < 2; k += 1) await fake.send({ type: 'kept', kept: was });
    await fake.update({ lanes, bands });
    await eventually(async () => assert.equal(await scroll(), 120));
    await fake.page.evaluate(() => window.scrollTo(0, 400));
    await eventually(async () => assert.equal(await scroll(), 120));
    assert.equal((await kept(fake)).scroll, 120);
    await fake.page.mouse.move(200, 200);
    await fake.page.mouse.wheel(0, 50);
    await eventually(async () => assert.equal((await kept(fake)).scroll, 170));
  });

  it('is told to the host after a pause, whole and small', async () => {
    const told = (await fake.posted('kept')).at(-1);
    assert.ok(told?.type === 'kept');
    await eventually(async () => {
      const last = (await fake.posted('kept')).at(-1);
      assert.ok(last?.type === 'kept');
      assert.deepEqual(last.kept, await kept(fake));
    });
    assert.ok(JSON.stringify(await kept(fake)).length < 2000);
    const count = (await fake.posted('kept')).length;
    await fake.page.evaluate(async () => {
      const surface = document.querySelector<HTMLElement>('.surface')!;
      for (let k = 0; k < 60; k++) {
        surface.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', shiftKey: true, bubbles: true }));
        await Promise.resolve();
      }
    });
    await eventually(async () => assert.ok((await fake.posted('kept')).length > count));
    await fake.page.waitForTimeout(300);
    assert.equal((await fake.posted('kept')).length, count + 1, 'one message for sixty keys');
  });

  it('is kept also where it was changed a moment before the page went', async () => {
    await fake.page.evaluate(() => {
      [...document.querySelectorAll<HTMLElement>('.toggle')].find((b) => b.textContent === 'cooling 1')?.click();
    });
    const hidden = ['hold 1', 'cooling 1'];
    const drawnWith = (): Promise<readonly string[]> => fake.page.evaluate(() => window.fake.state.choices.hiddenParts);
    // The host draws what was chosen before it is told what is kept.
    await eventually(async () => assert.deepEqual(await drawnWith(), hidden));
    await fake.page.evaluate(() =>
      sessionStorage.setItem(
        'told',
        JSON.stringify({ ...JSON.parse(sessionStorage.getItem('told')!), choices: window.fake.state.choices }),
      ),
    );
    await fake.page.reload();
    await fake.drawn();
    await eventually(async () => assert.deepEqual((await kept(fake)).choices.hiddenParts, hidden));
    await eventually(async () => assert.deepEqual(await drawnWith(), hidden));
  });

  it('belongs to its gloss: another one begins with the whole data', async () => {
    const state = await fake.page.evaluate(() => window.fake.state);
    const generation = { uri: 'file:///invented/other.gloss', version: 1, revision: 500 };
    await fake.send({
      type: 'kept',
      kept: {
        ...(await kept(fake)),
        uri: generation.uri,
        visible: null,
        selected: null,
        openRows: [],
        choices: { ...state.choices, hiddenParts: [] },
      },
    });
    await fake.page.evaluate((g) => {
      window.fake.state = { ...window.fake.state, generation: g };
      window.fake.send({ type: 'state', state: window.fake.state });
    }, generation);
    await fake.drawn();
    assert.equal((await kept(fake)).uri, generation.uri);
    assert.equal((await kept(fake)).visible, null);
  });
});
