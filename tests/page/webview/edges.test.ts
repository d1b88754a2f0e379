import assert from 'node:assert/strict';
import type { EdgeRequest } from '../../../server/src/protocol/view';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';

const handle = (fake: FakePage, which: 'from' | 'to', statement = 'step First') =>
  fake.page.locator(`.handle[data-statement="${statement}"][data-which="${which}"]`);

async function edits(fake: FakePage): Promise<EdgeRequest[]> {
  const posted = await fake.posted('edgeEdit');
  return posted.flatMap((m) => (m.type === 'edgeEdit' ? [m.request] : []));
}

async function select(fake: FakePage, statement = 'step First'): Promise<void> {
  await fake.send({ type: 'caret', statement });
  await fake.page.locator(`.handle.is-selected[data-statement="${statement}"]`).first().waitFor();
}

async function value(fake: FakePage, which: 'from' | 'to'): Promise<string> {
  return (await handle(fake, which).getAttribute('aria-valuetext')) ?? '';
}

describe('an edge in a browser', function () {
  this.timeout(180_000);
  let fake: FakePage;
  beforeEach(async () => {
    fake = await openFake();
    await fake.drawn();
    await select(fake);
  });
  afterEach(() => fake.close());
  after(closeBrowser);

  it('dragged by hand is one edit on release; meanwhile the old edge stays as a ghost and the ledger shows what would be', async () => {
    const at = (await handle(fake, 'from').boundingBox())!;
    await fake.page.mouse.move(at.x + 5, at.y + 60);
    await fake.page.mouse.down();
    await fake.page.mouse.move(at.x - 35, at.y + 64, { steps: 8 });
    await eventually(async () => assert.equal(await fake.page.locator('.ledger .is-preview').count(), 1));
    assert.deepEqual(await edits(fake), []);
    assert.equal(await handle(fake, 'from').evaluate((h) => h.classList.contains('is-moving')), true);
    await fake.page.mouse.up();
    await eventually(async () => assert.equal((await edits(fake)).length, 1));
    await fake.drawn();
    const [edit] = await edits(fake);
    assert.deepEqual([edit.statement, edit.edge, edit.into], ['step First', 'from', 'gloss']);
    assert.ok(edit.typed !== null && edit.typed < 620 && edit.perPixel !== null && edit.perPixel > 0.5);
    assert.equal(await fake.page.locator('.ledger .is-preview').count(), 0);
    assert.equal(await value(fake, 'from'), `${edit.typed} °C`);
  });

  it('pressed and released without moving is no edit', async () => {
    const at = (await handle(fake, 'from').boundingBox())!;
    await fake.page.mouse.move(at.x + 5, at.y + 60);
    await fake.page.mouse.down();
    await fake.page.mouse.up();
    await handle(fake, 'from').press('Escape');
    assert.deepEqual(await edits(fake), []);
    assert.equal((await fake.posted('edgePreview')).length, 0);
  });

  it('let go with Escape changes nothing, by hand and by key', async () => {
    const at = (await handle(fake, 'to').boundingBox())!;
    await fake.page.mouse.move(at.x + 5, at.y + 60);
    await fake.page.mouse.down();
    await fake.page.mouse.move(at.x + 50, at.y + 60, { steps: 5 });
    await fake.page.keyboard.press('Escape');
    await fake.page.mouse.up();
    await handle(fake, 'to').focus();
    for (let k = 0; k < 3; k++) await fake.page.keyboard.press('ArrowRight');
    await eventually(async () => assert.match(await value(fake, 'to'), /^845 °C, was 842 °C/));
    await fake.page.keyboard.press('Escape');
    await eventually(async () => assert.equal(await value(fake, 'to'), '842 °C'));
    assert.deepEqual(await edits(fake), []);
    assert.equal(await fake.page.evaluate(() => window.fake.state.generation.revision), 1);
  });

  it('moved by keys is one edit: arrows a step of the text, Shift ten, Enter writes it', async () => {
    await handle(fake, 'from').focus();
    await fake.page.keyboard.press('ArrowRight');
    await fake.page.keyboard.press('ArrowRight');
    await fake.page.keyboard.press('Shift+ArrowRight');
    await fake.page.keyboard.press('ArrowLeft');
    await eventually(async () => assert.match(await value(fake, 'from'), /^631 °C, was 620 °C/));
    await fake.page.keyboard.press('Enter');
    await eventually(async () => assert.equal((await edits(fake)).length, 1));
    const [edit] = await edits(fake);
    assert.deepEqual([edit.typed, edit.perPixel], [631, null]);
    await eventually(async () => assert.equal(await value(fake, 'from'), '631 °C'));
    assert.match(await fake.page.locator('.notices').innerText(), /Written: Move the start/);
  });

  it('moved by keys goes on over a newer picture that comes before Enter', async () => {
    await handle(fake, 'from').focus();
    await fake.page.keyboard.press('ArrowRight');
    await fake.update({});
    await fake.drawn();
    await fake.page.keyboard.press('ArrowRight');
    await fake.update({});
    await fake.drawn();
    await eventually(async () => assert.match(await value(fake, 'from'), /^622 °C, was 620 °C/));
    await fake.page.keyboard.press('Enter');
    await eventually(async () => assert.equal((await edits(fake)).length, 1));
    assert.equal((await edits(fake))[0].typed, 622);
  });

  it('left by Tab with a move not written stays where the text has it', async () => {
    await handle(fake, 'from').focus();
    await fake.page.keyboard.press('ArrowRight');
    await fake.page.keyboard.press('Tab');
    await eventually(async () => assert.equal(await value(fake, 'from'), '620 °C'));
    assert.deepEqual(await edits(fake), []);
  });

  it('takes a typed value in a box: Enter writes it once, Escape nothing, words are refused', async () => {
    await handle(fake, 'from').focus();
    await fake.page.keyboard.press('Enter');
    const field = fake.page.locator('.value-box input');
    await field.waitFor();
    assert.equal(await field.inputValue(), '620');
    await field.fill('about 600');
    await field.press('Enter');
    assert.match(await fake.page.locator('.value-box').innerText(), /no number/);
    await field.press('Escape');
    await field.waitFor({ state: 'detached' });
    assert.deepEqual(await edits(fake), []);
    await fake.page.keyboard.press('Enter');
    await field.fill('612,5');
    await field.press('Enter');
    await eventually(async () => assert.equal((await edits(fake)).length, 1));
    assert.deepEqual([(await edits(fake))[0].typed, (await edits(fake))[0].perPixel], [612.5, null]);
  });

  it('is moved over time too, in its own unit', async () => {
    const over = (await handle(fake, 'from').boundingBox())!;
    await fake.page.getByRole('button', { name: 'time', exact: true }).click();
    // The picture over temperature is a drawn one too.
    const at = await eventually(async () => {
      const box = (await handle(fake, 'from').boundingBox())!;
      assert.ok(Math.abs(box.x - over.x) > 20, `${box.x}`);
      return box;
    });
    await fake.drawn();
    await fake.page.mouse.move(at.x + 5, at.y + 60);
    await fake.page.mouse.down();
    await fake.page.mouse.move(at.x - 20, at.y + 60, { steps: 4 });
    await fake.page.mouse.up();
    await eventually(async () => assert.equal((await edits(fake)).length, 1));
    const [edit] = await edits(fake);
    assert.ok(edit.typed === null && edit.time < 3540 && (edit.perPixel ?? 0) > 0.5);
  });

  it('takes undo and redo to the text, wherever in the sheet the focus is', async () => {
    await handle(fake, 'from').focus();
    await fake.page.keyboard.press('Control+z');
    await fake.page.locator('.surface').focus();
    await fake.page.keyboard.press('Control+Shift+z');
    await fake.page.locator('.ledger tbody tr').first().focus();
    await fake.page.keyboard.press('Meta+z');
    const kinds = (await fake.posted()).map((m) => m.type).filter((t) => t === 'undo' || t === 'redo');
    assert.deepEqual(kinds, ['undo', 'redo', 'undo']);
  });

  it('of the method asks where it is written; the choice made by keyboard is one edit there, Escape none', async () => {
    await fake.close();
    fake = await openFake({ scenario: { source: 'method' } });
    await fake.drawn();
    await select(fake);
    assert.match(await value(fake, 'from'), /from the method/);
    const move = async (): Promise<void> => {
      await handle(fake, 'from').focus();
      await fake.page.keyboard.press('ArrowRight');
      await fake.page.keyboard.press('Enter');
      await fake.page.getByRole('dialog').waitFor();
    };
    await move();
    assert.match(await fake.page.getByRole('dialog').innerText(), /Change the method \(4 runs\)/);
    await fake.page.keyboard.press('Escape');
    assert.deepEqual(await edits(fake), []);
    await move();
    await fake.page.keyboard.press('Enter');
    await eventually(async () =>
      assert.deepEqual(
        (await edits(fake)).map((e) => e.into),
        ['gloss'],
      ),
    );
    await eventually(async () => assert.match(await value(fake, 'from'), /^621 °C/));
    await move();
    await fake.page.keyboard.press('Tab');
    await fake.page.keyboard.press('Enter');
    await eventually(async () =>
      assert.deepEqual(
        (await edits(fake)).map((e) => e.into),
        ['gloss', 'method'],
      ),
    );
  });

  it('is refused in words where the text cannot be edited', async () => {
    await fake.close();
    fake = await openFake({ scenario: { editable: false } });
    await fake.drawn();
    await select(fake);
    await handle(fake, 'from').focus();
    await fake.page.keyboard.press('ArrowRight');
    await fake.page.keyboard.press('Enter');
    const at = (await handle(fake, 'from').boundingBox())!;
    await fake.page.mouse.move(at.x + 5, at.y + 60);
    await fake.page.mouse.down();
    await fake.page.mouse.move(at.x - 40, at.y + 60, { steps: 4 });
    await fake.page.mouse.up();
    assert.match(await fake.page.locator('.notices').innerText(), /cannot be edited/);
    assert.equal(await handle(fake, 'from').getAttribute('aria-readonly'), 'true');
    assert.deepEqual([...(await edits(fake)), ...(await fake.posted('edgePreview'))], []);
  });

  it('of an edge under way carries the picture it began on, also when a newer one came meanwhile', async () => {
    const at = (await handle(fake, 'from').boundingBox())!;
    await fake.page.mouse.move(at.x + 5, at.y + 60);
    await fake.page.mouse.down();
    await fake.page.mouse.move(at.x - 20, at.y + 60, { steps: 4 });
    await fake.update({});
    await fake.update({});
    await fake.page.mouse.move(at.x - 30, at.y + 60, { steps: 2 });
    await fake.page.mouse.up();
    await eventually(async () =>
      assert.deepEqual(
        (await edits(fake)).map((e) => e.generation.revision),
        [1],
      ),
    );
  });
});
