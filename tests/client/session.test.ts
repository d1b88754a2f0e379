import assert from 'node:assert/strict';
import type { FromView } from '../../server/src/protocol/messages';
import { desk, state, turn, type Desk } from './support/sessionWorld';

function types(of: Desk): string[] {
  return of.posted.map((m) => m.type);
}

function watched(of: Desk): Desk['told'] {
  return of.told.filter((t) => t.name === 'thermogloss/watch');
}

async function ready(): Promise<Desk> {
  const made = desk();
  await made.session.take({ type: 'ready' });
  return made;
}

describe('a curves view', () => {
  it('is told its settings, what was kept of it and whether it follows, before it is drawn', async () => {
    const made = await ready();
    assert.deepEqual(types(made), ['preferences', 'kept', 'pinned']);
    assert.deepEqual(made.posted[0], { type: 'preferences', exportTheme: 'print' });
    const [watch] = watched(made);
    assert.equal(watch?.params['uri'], 'file:///a.gloss');
    assert.equal(watch?.params['editable'], true);
    assert.equal((watch?.params['choices'] as { abscissa: string }).abscissa, 'time');
  });

  it('passes states on as they are, and only those of what it watches', async () => {
    const made = await ready();
    const id = String(watched(made)[0]!.params['id']);
    const shown = state('file:///a.gloss', 4);
    made.session.serverState({ id, state: shown });
    made.session.serverState({ id: 'view2.1', state: state('file:///a.gloss', 5) });
    const states = made.posted.filter((m) => m.type === 'state');
    assert.deepEqual(states, [{ type: 'state', state: shown }]);
    assert.equal(made.session.revision, 4);
  });

  it('is drawn at once as it was when its tab comes back, and then as it is now', async () => {
    const made = await ready();
    const id = String(watched(made)[0]!.params['id']);
    made.session.serverState({ id, state: state('file:///a.gloss', 4) });
    made.session.hidden();
    assert.equal(made.told.at(-1)!.name, 'thermogloss/unwatch');
    made.posted.length = 0;
    await made.session.take({ type: 'ready' });
    assert.deepEqual(types(made), ['preferences', 'kept', 'pinned', 'state']);
    assert.notEqual(watched(made).at(-1)!.params['id'], id);
  });

  it('is sent nothing and watches nothing while its tab is hidden', async () => {
    const made = await ready();
    made.session.hidden();
    made.posted.length = 0;
    const before = watched(made).length;
    made.session.caret('step First');
    made.session.preferencesChanged();
    made.session.connection(true, '');
    made.session.show('file:///b.gloss');
    await turn();
    assert.deepEqual(made.posted, []);
    assert.equal(watched(made).length, before);
  });

  it('drops a state of the gloss it has left', async () => {
    const made = await ready();
    const id = String(watched(made)[0]!.params['id']);
    made.session.show('file:///b.gloss');
    await turn();
    made.session.serverState({ id, state: state('file:///a.gloss', 4) });
    assert.ok(!types(made).includes('state'));
  });

  it('finds each gloss as it was left', async () => {
    const made = await ready();
    const zoomed = { ...made.session.keeping, visible: { from: 620, to: 850 } };
    await made.session.take({ type: 'kept', kept: zoomed });
    made.session.show('file:///b.gloss');
    assert.equal(made.session.keeping.visible, null);
    // Sent by the page before it heard of the other gloss.
    await made.session.take({ type: 'kept', kept: { ...zoomed, scroll: 40 } });
    assert.equal(made.session.keeping.uri, 'file:///b.gloss');
    made.session.show('file:///a.gloss');
    assert.deepEqual(made.session.keeping.visible, { from: 620, to: 850 });
    assert.equal(made.session.keeping.scroll, 40);
  });

  it('stays kept on its gloss whatever the page had stored', async () => {
    const made = await ready();
    made.session.setPinned(true);
    await made.session.take({ type: 'kept', kept: { ...made.session.keeping, pinned: false } });
    assert.equal(made.session.pinned, true);
  });

  it('watches anew when another server is there, under a name that the old one did not know', async () => {
    const made = await ready();
    made.session.connection(false, 'lost');
    made.session.connection(true, '');
    await turn();
    const [first, second] = watched(made);
    assert.notEqual(first!.params['id'], second!.params['id']);
    assert.deepEqual(made.posted.slice(3), [
      { type: 'connection', up: false, text: 'lost' },
      { type: 'connection', up: true, text: '' },
    ]);
  });

  it('has its pictures counted on from the highest it was sent, by any server and of any gloss', async () => {
    const made = await ready();
    made.session.serverState({ id: String(watched(made)[0]!.params['id']), state: state('file:///a.gloss', 41) });
    made.session.connection(false, 'lost');
    made.session.connection(true, '');
    await turn();
    made.session.show('file:///b.gloss');
    await turn();
    assert.deepEqual(
      watched(made).map((w) => w.params['after']),
      [0, 41, 41],
    );
  });

  it('tells the server of other choices, and that its text has become read-only', async () => {
    const made = await ready();
    const choices = { ...made.session.keeping.choices, abscissa: 'temperature' as const };
    await made.session.take({ type: 'choices', choices });
    made.editable = false;
    await made.session.lookAgain();
    const [, second, third] = watched(made);
    assert.deepEqual(second!.params['choices'], choices);
    assert.equal(third!.params['editable'], false);
    assert.equal(third!.params['id'], watched(made)[0]!.params['id']);
  });

  for (const type of ['samples', 'cursor', 'edgePreview', 'edgeEdit'] as const) {
    it(`gets the answer to each of its questions under the question's number (${type})`, async () => {
      const made = await ready();
      made.answer = { anything: [1, 2] };
      await made.session.take({ type, call: 17, request: { curves: [] } } as unknown as FromView);
      assert.deepEqual(made.posted.at(-1), { type, call: 17, answer: { anything: [1, 2] } });
      if (type !== 'edgeEdit')
        assert.deepEqual(made.told.at(-1), { name: `thermogloss/${type}`, params: { curves: [] } });
    });
  }

  it('that asks for a place says whether its picture is the one drawn now', async () => {
    const made = await ready();
    const id = String(watched(made)[0]!.params['id']);
    made.session.serverState({ id, state: state('file:///a.gloss', 4) });
    const reveal = { type: 'reveal', statement: 'step First', uri: 'file:///a.gloss', range: null } as const;
    await made.session.take({ ...reveal, revision: 4 });
    await made.session.take({ ...reveal, revision: 3 });
    assert.deepEqual(
      made.revealed.map((r) => r.old),
      [false, true],
    );
  });

  it('hears of what was saved and copied, and why not', async () => {
    const made = await ready();
    await made.session.take({ type: 'save', call: 1, name: 'b.svg', mime: 'image/svg+xml', base64: '' });
    await made.session.take({ type: 'save', call: 2, name: 'full.svg', mime: 'image/svg+xml', base64: '' });
    await made.session.take({ type: 'copyText', call: 3, text: 'cells' });
    assert.deepEqual(made.posted.slice(-3), [
      { type: 'saved', call: 1, ok: true, reason: '' },
      { type: 'saved', call: 2, ok: false, reason: 'The disk is full.' },
      { type: 'saved', call: 3, ok: true, reason: '' },
    ]);
  });

  it('has its undo, redo, pin, offers and faults carried out by the editor', async () => {
    const made = await ready();
    made.did.length = 0;
    await made.session.take({ type: 'undo' });
    await made.session.take({ type: 'redo' });
    await made.session.take({ type: 'pin', pinned: true });
    await made.session.take({ type: 'command', command: 'thermogloss.draft', argument: 'file:///b.csv' });
    await made.session.take({ type: 'fault', message: 'oh' });
    assert.deepEqual(made.did, ['undo', 'redo', 'keep', 'thermogloss.draft file:///b.csv', 'fault oh']);
  });

  it('leaves nothing watched when it is closed', async () => {
    const made = await ready();
    made.session.dispose();
    assert.deepEqual(made.told.at(-1), { name: 'thermogloss/unwatch', params: { id: 'view1.1' } });
  });
});
