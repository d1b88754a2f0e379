import assert from 'node:assert/strict';
import fc from 'fast-check';
import { freshView, keptFrom, KeptViews } from '../../client/src/curves/keptView';
import type { KeptView } from '../../server/src/protocol/messages';

const fresh = freshView('file:///b.gloss', false, 'temperature');
const used: KeptView = {
  ...fresh,
  pinned: true,
  choices: { ...fresh.choices, abscissa: 'time', hiddenParts: ['cooling 1'], units: { mass: 'mg' }, against: 'HEAD' },
  visible: { from: 620, to: 850 },
  ordinates: { mass: { from: 80, to: 101 } },
  laneOrder: ['rate', 'mass'],
  selected: 'step First',
  sort: { column: 'value', down: true },
  openRows: ['First.loss'],
  scroll: 12,
  allRows: true,
};

describe('what is kept of a view over a reload', () => {
  it('comes back as it was', () => {
    assert.deepEqual(keptFrom(JSON.parse(JSON.stringify(used)), 'temperature'), used);
  });

  it('is small', () => {
    assert.ok(JSON.stringify(used).length < 1000);
  });

  it('that another version wrote is taken where it fits and is as new elsewhere', () => {
    const older = { ...used, scroll: 'far', laneOrder: {}, visible: 3, unknown: 1, sort: undefined };
    const kept = keptFrom(older, 'temperature');
    assert.deepEqual(kept, { ...used, scroll: 0, laneOrder: [], visible: null, sort: null });
  });

  it('without a gloss shows nothing', () => {
    for (const state of [undefined, null, 'x', 3, [], {}, { uri: '' }, { uri: 4 }]) {
      assert.equal(keptFrom(state, 'time'), null);
    }
  });

  it('may be anything: it gives a view with every part of its kind, or none', () => {
    const any = fc.anything({ maxDepth: 2 });
    const state = fc.record(Object.fromEntries(Object.keys(used).map((key) => [key, any])), { requiredKeys: [] });
    fc.assert(
      fc.property(state, fc.boolean(), (given, named) => {
        const kept = keptFrom(named ? { ...given, uri: 'file:///b.gloss' } : given, 'time');
        if (kept === null) return assert.equal(named, false);
        for (const [key, value] of Object.entries(freshView('u', false, 'time'))) {
          const other: unknown = (kept as unknown as Record<string, unknown>)[key];
          if (value === null) assert.ok(other === null || typeof other === 'object' || typeof other === 'string');
          else assert.equal(typeof other, typeof value);
          assert.equal(Array.isArray(other), Array.isArray(value));
        }
      }),
    );
  });
});

describe('views of glosses seen lately', () => {
  it('are as many as agreed, the ones seen last', () => {
    const views = new KeptViews(3);
    for (const name of ['a', 'b', 'c', 'a', 'd']) views.set({ ...fresh, uri: name });
    assert.deepEqual(
      ['a', 'b', 'c', 'd'].map((name) => views.get(name)?.uri ?? null),
      ['a', null, 'c', 'd'],
    );
  });
});
