import assert from 'node:assert/strict';
import fc from 'fast-check';
import { PanelRegistry, type CurvesPanelLike } from '../../client/src/curves/panelRegistry';

class Panel implements CurvesPanelLike {
  constructor(
    public uri: string,
    public pinned = false,
  ) {}

  show(uri: string): void {
    this.uri = uri;
  }

  setPinned(pinned: boolean): void {
    this.pinned = pinned;
  }
}

function registry(...panels: Panel[]): PanelRegistry<Panel> {
  const made = new PanelRegistry<Panel>();
  panels.forEach((p) => made.add(p));
  return made;
}

describe('curves views', () => {
  it('follow the active text, unless they are kept on their gloss', () => {
    const [kept, follower] = [new Panel('a', true), new Panel('a')];
    registry(kept, follower).follow('b');
    assert.deepEqual([kept.uri, follower.uri], ['a', 'b']);
  });

  it('show two glosses at once when the first is kept', () => {
    const first = new Panel('a');
    const all = registry(first);
    all.pin(first, true);
    assert.equal(all.forGloss('b'), null, 'a view of its own is to be opened');
    const second = new Panel('b');
    all.add(second);
    assert.deepEqual([first.uri, second.uri], ['a', 'b']);
    assert.equal(all.forGloss('a'), first);
    assert.equal(all.forGloss('b'), second);
  });

  it('are used again for another gloss when they follow', () => {
    const follower = new Panel('a');
    assert.equal(registry(follower).forGloss('b'), follower);
    assert.equal(follower.uri, 'b');
  });

  it('of which one is let go leave only that one following', () => {
    const [first, second] = [new Panel('a', true), new Panel('b')];
    registry(first, second).pin(first, false);
    assert.deepEqual([first.pinned, second.pinned], [false, true]);
  });

  it('that come back after a reload do not follow both', () => {
    const [first, second] = [new Panel('a'), new Panel('b')];
    registry(first, second);
    assert.deepEqual([first.pinned, second.pinned], [false, true]);
  });

  it('never follow two at a time, and show what was asked for, whatever is done with them', () => {
    const step = fc.record({ what: fc.constantFrom('show', 'pin', 'free', 'follow', 'close'), which: fc.nat(5) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const all = registry();
        for (const { what, which } of steps) {
          const panel = all.all[which % Math.max(1, all.all.length)];
          const uri = `gloss ${which}`;
          if (what === 'show') {
            const shown = all.forGloss(uri);
            if (shown === null) all.add(new Panel(uri));
            assert.ok(all.all.some((p) => p.uri === uri));
          } else if (what === 'follow') all.follow(uri);
          else if (panel !== undefined && what === 'close') all.remove(panel);
          else if (panel !== undefined) all.pin(panel, what === 'pin');
          assert.ok(all.all.filter((p) => !p.pinned).length <= 1);
        }
      }),
    );
  });
});
