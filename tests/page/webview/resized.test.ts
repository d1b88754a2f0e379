import assert from 'node:assert/strict';
import { eventually } from './eventually';
import { closeBrowser, openFake, type FakePage } from './fakePage';

describe('the curves in a pane that is resized', function () {
  this.timeout(180_000);
  let fake: FakePage;
  afterEach(() => fake.close());
  after(closeBrowser);

  it('120 sizes one a frame: the last is drawn, and nothing is computed anew but samples for another width', async () => {
    fake = await openFake({ viewport: { width: 1300, height: 900 } });
    await fake.drawn();
    const before = (await fake.posted()).length;
    const width = await fake.page.evaluate(async () => {
      const frame = (): Promise<number> => new Promise(requestAnimationFrame);
      let last = 0;
      for (let k = 0; k < 120; k++) {
        // There and back again, ending on a size of its own.
        last = 620 + 5 * Math.abs(60 - k) + (k === 119 ? 37 : 0);
        document.body.style.width = `${last}px`;
        await frame();
      }
      return last;
    });
    await fake.drawn();
    await eventually(async () => {
      const sizes = await fake.page.evaluate(() =>
        [...document.querySelectorAll<HTMLCanvasElement>('canvas.curve')].map((c) => ({
          // What is drawn on, and what is seen of it.
          drawn: c.width / devicePixelRatio,
          shown: c.getBoundingClientRect().width,
          room: c.closest('.plot')!.getBoundingClientRect().width,
        })),
      );
      assert.equal(sizes.length, 4);
      for (const { drawn, shown, room } of sizes) {
        assert.ok(Math.abs(drawn - shown) <= 1, `${drawn} px drawn, ${shown} shown`);
        assert.ok(room <= width && width - room < 80 && room - shown < 80, `${shown} of ${room} of ${width}`);
      }
    });
    const posted = (await fake.posted()).slice(before);
    const other = posted.filter((m) => m.type !== 'samples');
    assert.deepEqual(other, [], 'neither state nor choices');
    assert.ok(posted.length < 30, `${posted.length} questions for samples`);
    // At most the whole range at another width: no question differs in what is computed from the text.
    const revisions = posted.flatMap((m) => (m.type === 'samples' ? [m.request.generation.revision] : []));
    assert.ok(revisions.every((r) => r === 1));
  });
});
