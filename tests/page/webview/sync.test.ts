import assert from 'node:assert/strict';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';

async function reveals(fake: FakePage): Promise<(string | null)[]> {
  return (await fake.posted('reveal')).flatMap((m) => (m.type === 'reveal' ? [m.statement] : []));
}
const selected = (fake: FakePage): Promise<string[]> =>
  fake.page
    .locator('.ledger tbody tr[aria-selected="true"]')
    .evaluateAll((rows) => [...new Set(rows.map((r) => (r as HTMLElement).dataset.statement ?? ''))]);

describe('caret and curves', function () {
  this.timeout(180_000);
  let fake: FakePage;
  beforeEach(async () => {
    fake = await openFake();
    await fake.drawn();
  });
  afterEach(() => fake.close());
  after(closeBrowser);

  it('follow each other 200 times without an echo: a caret is never answered, a click is told once', async () => {
    const statements = ['step Moisture', 'step First', 'step Second', 'peak FirstHeat'];
    for (let k = 0; k < 100; k++) {
      await fake.send({ type: 'caret', statement: statements[k % 4] });
      await fake.page
        .locator('.tab', { hasText: ['Moisture', 'First', 'Second', 'FirstHeat'][(k + 1) % 4] })
        .first()
        .dispatchEvent('click');
    }
    await fake.page.waitForTimeout(300);
    const told = await reveals(fake);
    assert.equal(told.length, 100);
    assert.deepEqual(told.slice(0, 4), ['step First', 'step Second', 'peak FirstHeat', 'step Moisture']);
    assert.equal((await fake.posted()).filter((m) => m.type === 'choices' || m.type === 'pin').length, 0);
  });

  it('show the caret’s statement on band and rows, take no focus and do not pan while it is in view', async () => {
    const before = await fake.page.evaluate(() => document.activeElement?.className);
    await fake.send({ type: 'caret', statement: 'step First' });
    await eventually(async () => assert.deepEqual(await selected(fake), ['step First']));
    assert.equal(await fake.page.locator('.tab.is-selected').count(), 1);
    assert.equal(await fake.page.evaluate(() => document.activeElement?.className), before);
    assert.ok((await fake.page.locator('.mark').count()) >= 4, 'its construction is named');
    await fake.send({ type: 'caret', statement: null });
    await eventually(async () => assert.deepEqual(await selected(fake), []));
    assert.equal(await fake.page.locator('.mark').count(), 0);
    assert.deepEqual(await reveals(fake), []);
  });

  it('pan only where the band is out of view', async () => {
    const visible = (): Promise<{ from: number; to: number } | null> =>
      fake.page.evaluate(
        () =>
          (JSON.parse(sessionStorage.getItem('kept') ?? 'null') as { visible: { from: number; to: number } | null })
            .visible,
      );
    await fake.page.locator('.surface').focus();
    for (let k = 0; k < 8; k++) await fake.page.keyboard.press('+');
    await eventually(async () => assert.notEqual(await visible(), null));
    for (let k = 0; k < 3; k++) await fake.page.keyboard.press('Shift+ArrowLeft');
    const before = await eventually(async () => {
      const now = (await visible())!;
      assert.ok(now.to < 620 && now.from > 210);
      return now;
    });
    await fake.send({ type: 'caret', statement: 'step Moisture' });
    const after = await eventually(async () => {
      const now = (await visible())!;
      assert.ok(now.from < 210);
      return now;
    });
    assert.ok(Math.abs(after.to - after.from - (before.to - before.from)) < 1e-6, 'it is not zoomed');
    await fake.send({ type: 'caret', statement: 'step Moisture' });
    await fake.page.waitForTimeout(200);
    assert.deepEqual(await visible(), after);
  });

  it('a click on a band, Enter on its tab, a mark or a row each go to the statement once', async () => {
    const canvas = (await fake.page.locator('.lane[data-lane="heatflow"] canvas.curve').boundingBox())!;
    // About 700 °C.
    await fake.page.mouse.click(canvas.x + (canvas.width * (700 - 15.5)) / 999, canvas.y + 80);
    await eventually(async () => assert.deepEqual(await reveals(fake), ['peak FirstHeat']));
    await fake.page.locator('.tab', { hasText: 'Moisture' }).focus();
    await fake.page.keyboard.press('Enter');
    await fake.page.locator('.tab', { hasText: 'First' }).first().focus();
    await fake.page.keyboard.press('Enter');
    await fake.page.locator('.mark', { hasText: 'midpoint' }).focus();
    await fake.page.keyboard.press('Enter');
    await fake.page.locator('.ledger tbody tr').nth(3).focus();
    await fake.page.keyboard.press('Enter');
    await fake.page.locator('.ledger tbody tr').nth(0).locator('td').nth(1).click();
    await eventually(async () =>
      assert.deepEqual(await reveals(fake), [
        'peak FirstHeat',
        'step Moisture',
        'step First',
        'step First',
        'step Second',
        'step Moisture',
      ]),
    );
    const all = await fake.posted('reveal');
    assert.ok(all.every((m) => m.type === 'reveal' && m.revision === 1));
  });

  it('a double click shows all data and goes to the band at most once', async () => {
    const canvas = (await fake.page.locator('.lane[data-lane="heatflow"] canvas.curve').boundingBox())!;
    await fake.page.mouse.dblclick(canvas.x + (canvas.width * (700 - 15.5)) / 999, canvas.y + 80);
    await fake.page.waitForTimeout(200);
    assert.ok((await reveals(fake)).length <= 1);
  });

  it('a finding goes to its own line', async () => {
    await fake.page.getByRole('button', { name: /warning, line 12/ }).click();
    const [told] = await fake.posted('reveal');
    assert.ok(told.type === 'reveal' && told.range?.start.line === 11 && told.statement === 'step First');
  });

  it('pin and follow are one message each', async () => {
    const pin = fake.page.getByRole('button', { name: 'following' });
    await pin.click();
    await fake.page.getByRole('button', { name: 'pinned' }).click();
    const pins = (await fake.posted('pin')).map((m) => m.type === 'pin' && m.pinned);
    assert.deepEqual(pins, [true, false]);
    await fake.send({ type: 'pinned', pinned: true });
    await fake.page.getByRole('button', { name: 'pinned' }).waitFor();
    assert.equal((await fake.posted('pin')).length, 2, 'being told is not answered');
  });
});
