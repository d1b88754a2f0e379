import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { KeptView } from '../../server/src/protocol/messages';
import { defaultChoices } from '../../server/src/protocol/view';
import { kept, nothingKept } from '../../webview/src/state/kept';
import { restored } from '../../webview/src/state/restore';
import { reconciled, sameChoices } from '../../webview/src/state/choiceSync';

const busy: KeptView = {
  uri: 'file:///a.gloss',
  pinned: true,
  choices: { ...defaultChoices, hiddenParts: ['cooling 1'], units: { mass: 'mg' }, overlays: ['file:///b.gloss'] },
  visible: { from: 100, to: 200 },
  ordinates: { mass: { from: 1, to: 2 }, rate: { from: 0, to: 3 } },
  laneOrder: ['rate', 'mass'],
  laneHeights: { mass: 120 },
  hiddenLanes: ['ion(44)'],
  selected: 'step First',
  sort: { column: 'value', down: true },
  openRows: ['First.loss'],
  scroll: 240,
  allRows: true,
};

describe('what is kept', () => {
  it('comes back from JSON as it was', () => {
    assert.deepEqual(restored(JSON.parse(JSON.stringify(busy))), busy);
  });

  it('is read from any JSON without failing, and belongs to a gloss or is nothing', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const found = restored(value);
        assert.ok(found === null || found.uri !== '');
      }),
    );
    const mixed = restored({
      uri: 'file:///a.gloss',
      visible: { from: 5, to: 1 },
      laneHeights: { a: 'x', b: 50 },
      choices: { overlays: 'all', abscissa: 'time' },
    });
    assert.deepEqual(mixed?.visible, null);
    assert.deepEqual(mixed?.laneHeights, { b: 50 });
    assert.deepEqual(mixed?.choices, { ...defaultChoices, abscissa: 'time' });
  });

  it('keeps where one looks through a choice of parts, and lets it go with the abscissa', () => {
    assert.deepEqual(kept(busy, { do: 'choose', choices: { hiddenParts: [] } }).visible, busy.visible);
    assert.equal(kept(busy, { do: 'choose', choices: { abscissa: 'time' } }).visible, null);
  });

  it('lets an ordinate go with the unit it was chosen in, and only that', () => {
    const next = kept(busy, { do: 'choose', choices: { units: { mass: '%' } } });
    assert.deepEqual(next.ordinates, { rate: { from: 0, to: 3 } });
  });

  it('turns to another gloss with the lanes as they were and nothing selected', () => {
    const next = kept(busy, { do: 'turnTo', uri: 'file:///c.gloss', choices: defaultChoices });
    assert.deepEqual([next.visible, next.selected, next.openRows, next.scroll], [null, null, [], 0]);
    assert.deepEqual(
      [next.laneOrder, next.laneHeights, next.hiddenLanes, next.pinned],
      [busy.laneOrder, busy.laneHeights, busy.hiddenLanes, true],
    );
    assert.deepEqual(kept(busy, { do: 'turnTo', uri: busy.uri, choices: busy.choices }), busy);
  });

  it('sorts up, down, and as written again', () => {
    let now = nothingKept;
    const seen = [1, 2, 3].map(() => (now = kept(now, { do: 'sort', column: 'value' })).sort);
    assert.deepEqual(seen, [{ column: 'value', down: false }, { column: 'value', down: true }, null]);
    assert.deepEqual(kept(busy, { do: 'sort', column: 'name' }).sort, { column: 'name', down: false });
  });

  it('opens and closes rows and lanes once, however often it is told', () => {
    const open = kept(kept(nothingKept, { do: 'open', row: 'a', open: true }), { do: 'open', row: 'a', open: true });
    assert.deepEqual(open.openRows, ['a']);
    assert.deepEqual(kept(open, { do: 'open', row: 'a', open: false }).openRows, []);
    assert.deepEqual(kept(busy, { do: 'showLane', lane: 'ion(44)', shown: true }).hiddenLanes, []);
  });

  it('is the same object where nothing changes, so that nothing is sent', () => {
    assert.equal(kept(busy, { do: 'select', statement: 'step First' }), busy);
    assert.equal(kept(busy, { do: 'scroll', top: 240 }), busy);
  });

  it('gives an ordinate back to the data', () => {
    assert.deepEqual(kept(busy, { do: 'ordinate', lane: 'mass', range: null }).ordinates, { rate: { from: 0, to: 3 } });
  });
});

describe('choices on their way', () => {
  const own = { ...defaultChoices, hiddenParts: ['cooling 1'] };

  it('stay while states of before them still come in, and are settled by the state that has them', () => {
    const waiting = { choices: own, awaiting: true };
    assert.equal(reconciled(waiting, defaultChoices), waiting);
    assert.deepEqual(reconciled(waiting, { ...own }), { choices: own, awaiting: false });
  });

  it('are the server’s where none is on its way', () => {
    assert.deepEqual(reconciled({ choices: own, awaiting: false }, defaultChoices).choices, defaultChoices);
  });

  it('are the same in any order of their lists', () => {
    const a = { ...defaultChoices, overlays: ['x', 'y'], units: { mass: 'mg' } };
    assert.ok(sameChoices(a, { ...a, overlays: ['y', 'x'] }));
    assert.ok(!sameChoices(a, { ...a, units: {} }));
    assert.ok(!sameChoices(a, { ...a, overlays: ['x'] }));
  });
});
