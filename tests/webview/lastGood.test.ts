import assert from 'node:assert/strict';
import { drawsAlike, lastGood } from '../../webview/src/state/lastGood';
import { stateOf } from './state';

const bare = (revision: number, state: 'stale' | 'empty' | 'current', uri = 'file:///a.gloss') =>
  stateOf(revision, {
    generation: { uri, version: revision, revision },
    lanes: [],
    bands: [],
    freshness: { state, text: `revision ${revision}: line 1 has an error`, error: null },
  });

describe('the last good picture', () => {
  it('stays under the words of a text that has none', () => {
    for (const state of ['stale', 'empty'] as const) {
      const shown = lastGood(stateOf(1), bare(2, state));
      assert.equal(shown.lanes.length, 2);
      assert.match(shown.freshness.text, /revision 2/);
      assert.equal(shown.generation.revision, 2);
    }
  });

  it('goes where the new text is whole, and where it is another gloss', () => {
    assert.equal(lastGood(stateOf(1), bare(2, 'current')).lanes.length, 0);
    assert.equal(lastGood(stateOf(1), bare(2, 'stale', 'file:///b.gloss')).lanes.length, 0);
    assert.equal(lastGood(null, bare(2, 'empty')).lanes.length, 0);
  });
});

describe('curves of the picture before', () => {
  const other = (more: Parameters<typeof stateOf>[1]) => stateOf(2, more);

  it('stand in for the next of the same gloss, abscissa and units', () => {
    assert.ok(drawsAlike(stateOf(1), stateOf(2)));
    assert.ok(drawsAlike(null, stateOf(2)));
    assert.ok(drawsAlike(stateOf(1), other({ lanes: [stateOf(1).lanes[0]] })));
  });

  it('are not mixed with another abscissa, another unit or another gloss', () => {
    const { choices, lanes } = stateOf(1);
    assert.ok(!drawsAlike(stateOf(1), other({ choices: { ...choices, abscissa: 'time' } })));
    assert.ok(!drawsAlike(stateOf(1), other({ lanes: lanes.map((l) => ({ ...l, unit: 'mg' })) })));
    assert.ok(!drawsAlike(stateOf(1), other({ generation: { uri: 'file:///b.gloss', version: 1, revision: 2 } })));
  });
});
