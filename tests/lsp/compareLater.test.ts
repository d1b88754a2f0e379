import assert from 'node:assert/strict';
import { method } from '../../server/src/protocol/messages';
import { defaultChoices } from '../../server/src/protocol/view';
import { CompareDesk, gloss, narrower, only, rowOf } from './support/compareDesk';
import { gatheredViews } from './support/gatheredViews';

describe('changes of a comparison that are opened later', () => {
  const desk = CompareDesk.inSuite();

  it('open the text that they were compared with, also once HEAD has moved', async () => {
    const uri = desk.client.open(`${desk.root}/a.gloss`, narrower);
    const rows = only(await desk.compared(uri));
    const { place } = rowOf(rows, 'First.loss');
    desk.repository.commit('later', { 'a.gloss': gloss.replace('600 °C', '340 °C') });
    assert.equal(await desk.old(place!.old), gloss);
    // The curves are of that commit too, under its abbreviated name.
    assert.ok(rows.over?.kind === 'against');
    const choices = { ...defaultChoices, against: rows.over.name };
    const { next } = gatheredViews(desk.client);
    await desk.client.connection.sendRequest(method.watch, { id: 'p', uri, choices, editable: true });
    const drawn = await next((s) => s.lanes.some((l) => l.id === 'difference:mass'));
    const start = desk.repository.git('rev-parse', 'start').slice(0, 7);
    const names = drawn.lanes.flatMap((l) => l.curves).filter((c) => c.of === 'against' && c.name !== '');
    assert.deepEqual([...new Set(names.map((c) => c.name))], [start]);
    assert.equal(drawn.ledger.rows.find((r) => r.id === 'Rest.remaining')?.sinceMoved, false);
  });

  it('of the index are not shown with another index: its text is not there any more', async () => {
    const staged = gloss.replace('200..450', '200..340');
    desk.repository.write({ 'a.gloss': staged });
    desk.repository.git('add', '-A');
    const uri = desk.client.open(`${desk.root}/a.gloss`, narrower);
    const rows = only(await desk.compared(uri, { kind: 'revision', name: 'index' }));
    const { place } = rowOf(rows, 'First.loss');
    assert.equal(await desk.old(place!.old), staged);
    desk.repository.write({ 'a.gloss': gloss });
    desk.repository.git('add', '-A');
    desk.outside.revisions.forget();
    assert.equal(await desk.old(place!.old), null);
    assert.ok(rows.over?.kind === 'against');
    const choices = { ...defaultChoices, against: rows.over.name };
    const { next } = gatheredViews(desk.client);
    await desk.client.connection.sendRequest(method.watch, { id: 'p', uri, choices, editable: true });
    const { overlays } = await next((s) => s.overlays.length > 0);
    assert.deepEqual(overlays, [{ uri: '', name: 'index', reason: 'there is no such revision here' }]);
  });
});
