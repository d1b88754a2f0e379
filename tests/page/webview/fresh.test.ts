import assert from 'node:assert/strict';
import type { Freshness } from '../../../server/src/protocol/view';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';
import { inkOf } from './pixels';

const error = {
  uri: 'file:///invented/vq217-1.gloss',
  line: 12,
  span: { start: 0, end: 1 },
  message: 'unexpected text after the window',
};
const stale: Freshness = { state: 'stale', text: 'revision 1: line 12 has an error', error };
const computing: Freshness = { state: 'computing', text: 'computing', error: null };
const current: Freshness = { state: 'current', text: 'current', error: null };

describe('how fresh the picture is', function () {
  this.timeout(180_000);
  let fake: FakePage;
  const head = (): Promise<string> => fake.page.locator('.freshness').innerText();
  const revision = (): Promise<string | null> => fake.page.locator('.sheet').getAttribute('data-revision');
  beforeEach(async () => {
    fake = await openFake();
    await fake.drawn();
  });
  afterEach(() => fake.close());
  after(closeBrowser);

  it('is said in words with a sign, and the number drawn is that of the state whose samples are on the canvas', async () => {
    assert.match(await head(), /current · revision 1/);
    await fake.page.evaluate(() => (window.fake.delays = { samples: 400 }));
    await fake.update({ freshness: current });
    await eventually(async () => assert.match(await head(), /revision 2/));
    assert.equal(await revision(), '1', 'its samples are not there yet');
    await fake.drawn();
    assert.equal(await revision(), '2');
  });

  it('keeps the last good curves under an error, which it names and links', async () => {
    const ink = await inkOf(fake.page, 'mass');
    for (const bare of [{}, { lanes: [], bands: [], parts: [] }]) {
      await fake.update({ freshness: stale, ...bare });
      await fake.drawn();
      await eventually(async () => assert.match(await head(), /line 12 has an error/));
      assert.equal(await inkOf(fake.page, 'mass'), ink);
    }
    await fake.page.getByRole('button', { name: /line 12 has an error/ }).click();
    const [told] = await fake.posted('reveal');
    assert.ok(told.type === 'reveal' && told.range?.start.line === 11 && told.uri === error.uri);
  });

  it('says computing only where it lasts, and goes on drawing', async () => {
    const seen = await fake.page.evaluate(
      async ({ computing, current }) => {
        const words: string[] = [];
        const look = (): number => words.push(document.querySelector('.freshness')?.textContent ?? '');
        const observer = new MutationObserver(look);
        observer.observe(document.querySelector('.freshness')!, {
          subtree: true,
          childList: true,
          characterData: true,
        });
        const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
        for (let k = 0; k < 5; k++) {
          window.fake.update({ freshness: computing });
          await wait(40);
          window.fake.update({ freshness: current });
          await wait(40);
        }
        return words;
      },
      { computing, current },
    );
    assert.ok(
      seen.every((words) => !words.includes('computing')),
      seen.join(),
    );
    const ink = await inkOf(fake.page, 'mass');
    await fake.update({ freshness: computing });
    await eventually(async () => assert.match(await head(), /computing/));
    assert.equal(await inkOf(fake.page, 'mass'), ink);
  });

  it('is told when the connection is lost, with the picture kept, and drawing goes on when it is back', async () => {
    const ink = await inkOf(fake.page, 'mass');
    await fake.page.evaluate(() => (window.fake.silent = true));
    await fake.send({ type: 'connection', up: false, text: 'The language server is not running.' });
    await eventually(async () => assert.match(await head(), /not running/));
    await fake.page.locator('.surface').focus();
    await fake.page.keyboard.press('+');
    assert.ok((await inkOf(fake.page, 'mass')) > 0);
    await fake.page.keyboard.press('0');
    await eventually(async () => assert.equal(await inkOf(fake.page, 'mass'), ink));
    await fake.page.evaluate(() => (window.fake.silent = false));
    await fake.send({ type: 'connection', up: true, text: '' });
    await fake.update({ freshness: current });
    await fake.drawn();
    assert.equal(await revision(), '2');
  });

  it('never leaves an empty canvas between abscissae, units and zooms, however slow the samples are', async () => {
    await fake.page.evaluate(() => (window.fake.delays = { samples: 150 }));
    const emptied = await fake.page.evaluate(async () => {
      let empty = 0;
      let frames = 0;
      const inked = (): boolean => {
        const canvas = document.querySelector<HTMLCanvasElement>('.lane[data-lane="mass"] canvas.curve');
        const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data;
        return data?.some((v, i) => i % 4 === 3 && v > 0) ?? false;
      };
      let isOver = false;
      const watch = (): void => {
        frames++;
        if (!inked()) empty++;
        if (!isOver) requestAnimationFrame(watch);
      };
      requestAnimationFrame(watch);
      const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
      const press = (text: string): void =>
        [...document.querySelectorAll<HTMLElement>('.toggle')].find((b) => b.textContent === text)?.click();
      press('time');
      await wait(600);
      const unit = document.querySelector<HTMLSelectElement>('.lane[data-lane="mass"] select')!;
      unit.value = 'mg';
      unit.dispatchEvent(new Event('change'));
      await wait(600);
      press('temperature');
      await wait(600);
      const surface = document.querySelector<HTMLElement>('.surface')!;
      for (let k = 0; k < 10; k++) {
        surface.dispatchEvent(new KeyboardEvent('keydown', { key: '+', bubbles: true }));
        await wait(40);
      }
      isOver = true;
      return { empty, frames };
    });
    assert.ok(emptied.frames > 10);
    assert.equal(emptied.empty, 0);
  });

  it('offers what could be done where there is nothing to draw, as buttons', async () => {
    await fake.close();
    fake = await openFake({ scenario: { empty: true } });
    await fake.page.getByRole('button', { name: 'Draft a gloss for vq217-2.csv' }).click();
    const [command] = await fake.posted('command');
    assert.deepEqual(command, { type: 'command', command: 'thermogloss.draft', argument: 'vq217-2.csv' });
    assert.match(await fake.page.locator('.empty').innerText(), /no run is named yet/);
  });

  it('of a method is shown with a run of one’s choice', async () => {
    await fake.close();
    fake = await openFake({ scenario: { role: 'method' } });
    await fake.drawn();
    await fake.page.getByRole('combobox', { name: 'with' }).selectOption({ label: 'vq217-3' });
    const [chosen] = await fake.posted('choices');
    assert.ok(chosen.type === 'choices' && chosen.choices.run === 'file:///invented/vq217-3.gloss');
  });
});
