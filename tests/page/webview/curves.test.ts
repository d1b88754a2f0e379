import assert from 'node:assert/strict';
import type { Range } from '../../../server/src/protocol/view';
import { closeBrowser, openFake, type FakePage } from './fakePage';
import { eventually } from './eventually';
import { fakeRun } from './fake/signals';
import { inkOf, laneColumns, rowOf } from './pixels';

const [heating, , cooling] = fakeRun(1, 11);
const inside = (xs: Float64Array, { from, to }: Range): number => xs.filter((x) => x >= from && x <= to).length;

/** Zooms by the keyboard until the view is narrower than wanted, about a temperature. */
async function zoomTo(fake: FakePage, width: number): Promise<Range> {
  await fake.page.locator('.surface').focus();
  for (let k = 0; k < 80; k++) {
    const now = await view(fake);
    if (now.to - now.from <= width) break;
    await fake.page.keyboard.press('+');
    // What is seen is kept after a pause.
    await eventually(async () => assert.notDeepEqual(await view(fake), now));
  }
  await fake.drawn();
  return view(fake);
}

async function view(fake: FakePage): Promise<Range> {
  const kept = await fake.page.evaluate(
    () =>
      JSON.parse(sessionStorage.getItem('kept') ?? 'null') as { visible: { from: number; to: number } | null } | null,
  );
  return kept?.visible ?? { from: 30 - 0.015 * 970, to: 1000 + 0.015 * 970 };
}

describe('the curves in a browser', function () {
  // A page is drawn by software and shares the machine with other tests.
  this.timeout(180_000);
  let fake: FakePage;
  beforeEach(async () => {
    fake = await openFake();
    await fake.drawn();
  });
  afterEach(() => fake.close());
  after(closeBrowser);

  it('are drawn whole at every zoom, heating and cooling: the branch that descends is in every column it has data in', async () => {
    const extent = (await fake.page.evaluate(() => window.fake.state.lanes[0].extent)) as Range;
    for (const width of [1000, 300, 60, 8, 1, 0.2]) {
      const range = await zoomTo(fake, width);
      const { inked, height } = await laneColumns(fake.page, 'mass');
      // All of cooling stands at the residue, about 55 %; heating is there above 980 °C only.
      const residue = rowOf(55.1, extent, height);
      const columns = inked.map((rows, i) => ({
        rows,
        x: range.from + ((i + 0.5) / inked.length) * (range.to - range.from),
      }));
      const expected = columns.filter(({ x }) => x > 101 && x < 980);
      const drawn = expected.filter(({ rows }) => rows.some((row) => Math.abs(row - residue) <= 3));
      assert.ok(expected.length > 0.5 * columns.length, 'the view is over the cooling branch');
      assert.ok(drawn.length >= expected.length - 2, `${drawn.length} of ${expected.length} columns at ${width} K`);
      const above = expected.filter(({ rows, x }) => x < 880 && rows.some((row) => row < residue - 6));
      const heated = expected.filter(({ x }) => x < 880);
      assert.ok(
        above.length >= heated.length - 2,
        `heating: ${above.length} of ${heated.length} columns at ${width} K`,
      );
    }
  });

  it('are every sample of the file where there is room for them, and no other', async () => {
    const range = await zoomTo(fake, 20);
    await fake.page.locator('.drawn summary').click();
    await eventually(async () => {
      const rows = await fake.page.locator('.drawn tbody tr').allInnerTexts();
      const row = (part: string): string => rows.find((r) => r.startsWith('mass') && r.includes(part)) ?? '';
      assert.match(row('heating 1'), new RegExp(`\\b${inside(heating.temperature, range)}, every sample`));
      assert.match(row('cooling 1'), new RegExp(`\\b${inside(cooling.temperature, range)}, every sample`));
    });
    assert.ok(inside(heating.temperature, range) > 50);
  });

  it('return to the data with 0, and with a double click', async () => {
    const whole = await inkOf(fake.page, 'rate');
    await zoomTo(fake, 50);
    await fake.page.keyboard.press('0');
    await fake.drawn();
    assert.equal((await fake.posted('kept')).length > 0, true);
    assert.equal(await inkOf(fake.page, 'rate'), whole);
    await zoomTo(fake, 50);
    const box = (await fake.page.locator('.surface').boundingBox())!;
    await fake.page.mouse.dblclick(box.x + 300, box.y + 190);
    await fake.drawn();
    assert.equal(await inkOf(fake.page, 'rate'), whole);
  });

  it('zoom by every key and turn of the wheel, also of those that come faster than pictures', async () => {
    const first = await view(fake);
    await fake.page.evaluate(() => {
      const surface = document.querySelector<HTMLElement>('.surface')!;
      for (let k = 0; k < 8; k++) surface.dispatchEvent(new KeyboardEvent('keydown', { key: '+', bubbles: true }));
    });
    await eventually(async () => {
      const now = await view(fake);
      const share = (now.to - now.from) / (first.to - first.from);
      assert.ok(Math.abs(share - 0.8 ** 8) < 0.01 * share, `${share} of the data in view`);
    });
    const turns = async (count: number): Promise<number> => {
      const before = await view(fake);
      await fake.page.evaluate((times) => {
        const surface = document.querySelector<HTMLElement>('.surface')!;
        const { left, top } = surface.getBoundingClientRect();
        const at = { clientX: left + 500, clientY: top + 120, deltaY: -120, bubbles: true, cancelable: true };
        for (let k = 0; k < times; k++) surface.dispatchEvent(new WheelEvent('wheel', at));
      }, count);
      await eventually(async () => assert.notDeepEqual(await view(fake), before));
      const now = await view(fake);
      return (now.to - now.from) / (before.to - before.from);
    };
    const one = await turns(1);
    const four = await turns(4);
    assert.ok(Math.abs(four - one ** 4) < 1e-6, `${four} for four turns, ${one} for one`);
  });

  it('zoom by the wheel about the pointer, by a drag on the axis, and pan by a drag', async () => {
    const box = (await fake.page.locator('.surface').boundingBox())!;
    const first = await view(fake);
    await fake.page.mouse.move(box.x + 500, box.y + 120);
    await fake.page.mouse.wheel(0, -240);
    const closer = await eventually(async () => {
      const now = await view(fake);
      assert.ok(now.to - now.from < 0.7 * (first.to - first.from));
      return now;
    });
    await fake.page.mouse.down();
    await fake.page.mouse.move(box.x + 400, box.y + 122, { steps: 4 });
    await fake.page.mouse.up();
    await fake.drawn();
    const moved = await eventually(async () => {
      const now = await view(fake);
      assert.ok(now.from > closer.from && Math.abs(now.to - now.from - (closer.to - closer.from)) < 1e-6);
      return now;
    });
    await fake.page.mouse.move(box.x + 300, box.y + box.height - 15);
    await fake.page.mouse.down();
    await fake.page.mouse.move(box.x + 500, box.y + box.height - 15, { steps: 4 });
    await fake.page.mouse.up();
    await fake.drawn();
    await eventually(async () => {
      const dragged = await view(fake);
      assert.ok(dragged.to - dragged.from < 0.3 * (moved.to - moved.from));
    });
  });

  it('zoom one ordinate on its own axis, and give it back to the data', async () => {
    const lane = (await fake.page.locator('.lane[data-lane="rate"] canvas.curve').boundingBox())!;
    const [rate, mass] = [await inkOf(fake.page, 'rate'), await inkOf(fake.page, 'mass')];
    await fake.page.mouse.move(lane.x - 20, lane.y + lane.height - 5);
    await fake.page.mouse.wheel(0, -480);
    await eventually(async () => assert.notEqual(await inkOf(fake.page, 'rate'), rate));
    assert.equal(await inkOf(fake.page, 'mass'), mass);
    await fake.page.mouse.dblclick(lane.x - 20, lane.y + 40);
    await fake.drawn();
    assert.equal(await inkOf(fake.page, 'rate'), rate);
  });

  it('can be moved, made higher and hidden, by hand and by key', async () => {
    const order = (): Promise<string[]> =>
      fake.page.locator('.lane').evaluateAll((all) => all.map((l) => (l as HTMLElement).dataset.lane ?? ''));
    assert.deepEqual(await order(), ['mass', 'rate', 'heatflow', 'ion(44)']);
    await fake.page.locator('.lane[data-lane="mass"] .lane-grip').focus();
    await fake.page.keyboard.press('ArrowDown');
    await fake.drawn();
    assert.deepEqual(await order(), ['rate', 'mass', 'heatflow', 'ion(44)']);
    const height = async (): Promise<number> =>
      (await fake.page.locator('.lane[data-lane="rate"] canvas.curve').boundingBox())!.height;
    const before = await height();
    await fake.page.locator('.lane[data-lane="rate"] .lane-bar').focus();
    await fake.page.keyboard.press('ArrowDown');
    await fake.drawn();
    assert.equal(Math.round((await height()) - before), 10);
    const bar = (await fake.page.locator('.lane[data-lane="rate"] .lane-bar').boundingBox())!;
    await fake.page.mouse.move(bar.x + 90, bar.y + 3);
    await fake.page.mouse.down();
    await fake.page.mouse.move(bar.x + 90, bar.y + 43, { steps: 4 });
    await fake.page.mouse.up();
    await fake.drawn();
    assert.equal(Math.round((await height()) - before), 50);
    await fake.page.locator('.lane[data-lane="ion(44)"] .lane-menu').click();
    await fake.page.getByRole('menuitem', { name: 'Hide lane' }).click();
    await fake.drawn();
    assert.deepEqual(await order(), ['rate', 'mass', 'heatflow']);
    const grip = (await fake.page.locator('.lane[data-lane="heatflow"] .lane-grip').boundingBox())!;
    await fake.page.mouse.move(grip.x + 8, grip.y + 8);
    await fake.page.mouse.down();
    await fake.page.mouse.move(grip.x + 8, box(await fake.page.locator('.lane[data-lane="rate"]').boundingBox()) + 20, {
      steps: 12,
    });
    await fake.page.mouse.up();
    await fake.drawn();
    assert.equal((await order()).indexOf('heatflow') < 2, true);
  });

  it('are those of the newest state after any number of them, and end at the last size of the window', async () => {
    for (let k = 0; k < 30; k++) await fake.update({ freshness: { state: 'current', text: 'current', error: null } });
    await fake.drawn();
    assert.equal(await fake.page.locator('.sheet').getAttribute('data-revision'), '31');
    for (let k = 0; k < 30; k++) await fake.page.setViewportSize({ width: 700 + 13 * k, height: 800 });
    await fake.drawn();
    const canvas = (await fake.page.locator('.lane[data-lane="mass"] canvas.curve').boundingBox())!;
    const plot = (await fake.page.locator('.plot').boundingBox())!;
    assert.ok(plot.width > 1000 && plot.width - canvas.width < 80, `${canvas.width} of ${plot.width}`);
  });

  it('are drawn over time, in another unit, and without a part, as chosen', async () => {
    await fake.page.locator('.drawn summary').click();
    await fake.page.getByRole('button', { name: 'time', exact: true }).click();
    const caption = fake.page.locator('.drawn caption');
    await eventually(async () => assert.match((await caption.textContent()) ?? '', /t\/min/));
    await fake.page.getByRole('combobox', { name: 'Unit of mass' }).selectOption('mg');
    const label = fake.page.locator('.lane[data-lane="mass"] .lane-label');
    await eventually(async () => assert.equal(await label.textContent(), 'm/mg'));
    await fake.drawn();
    const before = await inkOf(fake.page, 'ion(44)');
    await fake.page.getByRole('button', { name: 'cooling 1' }).click();
    await eventually(async () => assert.notEqual(await inkOf(fake.page, 'ion(44)'), before));
    const choices = await fake.posted('choices');
    assert.equal(choices.length, 3, 'one message a choice');
  });

  it('leave room for the values of the results beside them, however long a requirement or a reason is', async () => {
    await fake.page.setViewportSize({ width: 620, height: 900 });
    const { ledger } = await fake.page.evaluate(() => window.fake.state);
    const long = 'First.loss * M(MgO) / M(CO2) - Second.loss * M(CaO) / M(CO2) + Oxides.remaining';
    const rows = ledger.rows.map((row, i) => ({
      ...row,
      quantity: i === 2 ? long : row.quantity,
      state: 'apparent: window-edge-not-level (First), two-rate-maxima (First), calibration-not-stated (First)',
    }));
    await fake.update({ ledger: { ...ledger, rows } });
    await fake.drawn();
    await eventually(async () => {
      const out = await fake.page.evaluate(() => {
        const room = document.querySelector('.results .table-wrap')!.getBoundingClientRect().right;
        const cells = [...document.querySelectorAll<HTMLElement>('.ledger td.column-value')];
        return { count: cells.length, out: cells.filter((c) => c.getBoundingClientRect().right > room + 1).length };
      });
      assert.ok(out.count > 5);
      assert.equal(out.out, 0);
    });
  });

  it('of up to ten other runs lie below, dashed, each with a name and a mark in the legend', async () => {
    await fake.close();
    fake = await openFake({ scenario: { companions: 12, interval: 6 } });
    await fake.drawn();
    await fake.page.getByRole('button', { name: 'lay over' }).click();
    const items = fake.page.getByRole('menuitemcheckbox');
    const names = await items.allInnerTexts();
    // Forced: past the tenth an entry is switched off, and a click on it must do nothing.
    for (const [i, name] of names.entries()) if (name.includes('vq217')) await items.nth(i).click({ force: true });
    assert.equal(names.filter((name) => name.includes('vq217')).length, 12);
    await fake.page.keyboard.press('Escape');
    await fake.drawn();
    const last = (await fake.posted('choices')).at(-1);
    assert.ok(last?.type === 'choices' && last.choices.overlays.length === 10);
    const samples = await fake.page
      .locator('.legend li')
      .evaluateAll((all) =>
        all.map((li) =>
          [
            li.textContent,
            ...[...li.querySelectorAll('path')].map((p) => p.getAttribute('stroke-dasharray') ?? p.getAttribute('d')),
          ].join('|'),
        ),
      );
    assert.equal(samples.length, 11);
    assert.equal(
      new Set(samples.map((s) => s.split('|').slice(1).join('|'))).size,
      11,
      'each line and mark is its own',
    );
  });

  it('stand on a grid whose numbers, bands and hatching follow a zoom, with the elements there were', async () => {
    const under = fake.page.locator('svg.under');
    const numbers = async (): Promise<number[]> =>
      (await under.locator('text[text-anchor="middle"]').allTextContents()).map(Number);
    await fake.page.locator('.surface').focus();
    await fake.page.keyboard.press('0');
    await eventually(async () => assert.ok(Math.max(...(await numbers())) > 900));
    await under.evaluate((svg) => svg.firstElementChild!.setAttribute('data-first', 'yes'));
    for (let k = 0; k < 3; k++) await fake.page.keyboard.press('+');
    const zoomed = await eventually(async () => {
      const now = await numbers();
      assert.ok(now.length > 3 && Math.max(...now) - Math.min(...now) < 500, now.join(' '));
      return now;
    });
    assert.ok(zoomed.every((value, i) => i === 0 || value > zoomed[i - 1]));
    assert.equal(await under.locator('[data-first]').count(), 1);
    // Every line of the picture is within it.
    const [width, height] = [Number(await under.getAttribute('width')), Number(await under.getAttribute('height'))];
    const data = (
      await under.locator('path').evaluateAll((paths) => paths.map((path) => path.getAttribute('d')!))
    ).join('');
    const ends = [...data.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    assert.ok(ends.length > 100);
    assert.ok(ends.every(([x, y]) => x >= 0 && x <= width && y >= 0 && y <= height));
    await fake.page.keyboard.press('0');
  });
});

function box(found: { y: number } | null): number {
  return found?.y ?? 0;
}
