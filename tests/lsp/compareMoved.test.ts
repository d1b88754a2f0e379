import assert from 'node:assert/strict';
import { rmSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { method } from '../../server/src/protocol/messages';
import type { ComparedWith } from '../../server/src/protocol/compare';
import { defaultChoices } from '../../server/src/protocol/view';
import { say } from '../cli/fakeTerminal';
import { CompareDesk, gloss, narrower, only, rowOf } from './support/compareDesk';
import { gatheredViews } from './support/gatheredViews';
import { lossRun } from './support/lossRun';

describe('results of glosses that came, went or moved', () => {
  const desk = CompareDesk.inSuite();

  it('of a renamed and edited gloss are compared with where its run was evaluated before', async () => {
    unlinkSync(join(desk.repository.path, 'a.gloss'));
    desk.repository.write({ 'renamed.gloss': narrower });
    const uri = desk.client.open(`${desk.root}/renamed.gloss`, narrower);
    const rows = only(await desk.compared(uri));
    assert.ok(rows.remarks.includes('it was a.gloss'), rows.remarks.join('; '));
    const loss = rowOf(rows, 'First.loss');
    assert.equal(loss.status, 'changed');
    assert.equal(loss.place?.uri, uri);
    assert.equal(await desk.old(loss.place!.old), gloss);
  });

  it('of a new gloss are new, and its old text is not there', async () => {
    const text = gloss.replace('a.csv', 'b.csv');
    desk.repository.write({ 'b.csv': lossRun(340), 'b.gloss': text });
    const rows = only(await desk.compared(desk.client.open(`${desk.root}/b.gloss`, text)));
    assert.equal(rows.status, 'added');
    assert.equal(rowOf(rows, 'First.loss').status, 'added');
    assert.equal(rowOf(rows, 'First.loss').place?.old, null);
    assert.equal(rows.over, null);
  });

  it('of a method are those of every gloss that names it, also of one that is gone', async () => {
    const shared = 'method "Invented"\n\nstep First 200..450 °C\n';
    const user = (file: string): string => `run "${file}"\n  hazard "none: invented"\n\nmethod "m.gloss"\n`;
    desk.repository.commit('method', {
      'a.gloss': null,
      'm.gloss': shared,
      'b.gloss': user('a.csv'),
      'c.gloss': user('c.csv'),
      'c.csv': lossRun(320),
    });
    for (const name of ['c.gloss', 'c.csv']) rmSync(join(desk.repository.path, name));
    const text = shared.replace('200..450', '200..335');
    const uri = desk.client.open(`${desk.root}/m.gloss`, text);
    const comparison = await desk.compared(uri);
    assert.deepEqual(
      comparison.glosses.map((g) => [g.title, g.status]),
      [
        ['b.gloss', 'both'],
        ['c.gloss', 'removed'],
      ],
    );
    const loss = rowOf(comparison.glosses[0], 'First.loss');
    assert.match(loss.cause, /method changed: step First 200\.\.450 °C → step First 200\.\.335 °C$/);
    assert.equal(loss.place?.uri, uri, 'the changed line is in the method');
    assert.deepEqual(loss.place?.range?.start, { line: 2, character: 0 });
    assert.equal(await desk.old(loss.place!.old), shared);
    assert.equal(comparison.glosses[1].uri, null);
    const gone = rowOf(comparison.glosses[1], 'First.loss');
    assert.equal(gone.status, 'removed');
    assert.equal(gone.place?.uri, null);
    assert.equal(await desk.old(gone.place!.old), user('c.csv'));
  });

  it('of a method are compared with saved results of the same gloss alone, were they of one gloss only', async () => {
    const user = (file: string): string => `run "${file}"\n  hazard "none: invented"\n\nmethod "m.gloss"\n`;
    const shared = 'method "Invented"\n\nstep First 200..450 °C\n';
    desk.repository.write({
      'm.gloss': shared,
      'b.gloss': user('b.csv'),
      'b.csv': lossRun(340),
      'c.gloss': user('a.csv'),
    });
    const saved = await say(['results', 'c.gloss', '--format', 'json'], { cwd: desk.repository.path });
    desk.repository.write({ 'saved.json': saved.out });
    const by: ComparedWith = { kind: 'file', uri: `${desk.root}/saved.json` };
    const { glosses } = await desk.compared(desk.client.open(`${desk.root}/m.gloss`, shared), by);
    assert.deepEqual(
      glosses.map((g) => [g.title, g.status, g.rows.length > 0]),
      [
        ['b.gloss', 'added', true],
        ['c.gloss', 'both', false],
      ],
    );
    // One gloss that was chosen itself is compared with the one that was saved, whatever it is called.
    const one = only(await desk.compared(desk.client.open(`${desk.root}/b.gloss`, user('b.csv')), by));
    assert.equal(one.status, 'both');
    assert.ok(one.rows.some((r) => r.status === 'changed'));
  });

  it('of a run whose data are gone cannot be computed, and the curves say why nothing is laid over them', async () => {
    unlinkSync(join(desk.repository.path, 'a.csv'));
    const uri = desk.client.open(`${desk.root}/a.gloss`, gloss);
    const rows = only(await desk.compared(uri));
    assert.ok(
      rows.remarks.some((r) => /^cannot compute now: .*a\.csv/.test(r)),
      rows.remarks.join('; '),
    );
    assert.ok(rows.rows.length > 0 && rows.rows.every((r) => r.status === 'failed'));
    assert.equal(await desk.old(rows.rows[0].place!.old), gloss);
    const { next } = gatheredViews(desk.client);
    const choices = { ...defaultChoices, against: 'HEAD' };
    await desk.client.connection.sendRequest(method.watch, { id: 'p', uri, choices, editable: true });
    const state = await next((s) => s.overlays.length > 0);
    assert.deepEqual(state.overlays, [{ uri: '', name: 'HEAD', reason: 'its run or the run now cannot be read' }]);
  });

  it('can be laid over the curves under the former name of a renamed gloss, and say why where there is none', async () => {
    unlinkSync(join(desk.repository.path, 'a.gloss'));
    desk.repository.write({
      'renamed.gloss': narrower,
      'b.csv': lossRun(340),
      'b.gloss': gloss.replace('a.csv', 'b.csv'),
    });
    const { next } = gatheredViews(desk.client);
    const watch = (uri: string, against: string): Promise<unknown> =>
      desk.client.connection.sendRequest(method.watch, {
        id: uri,
        uri,
        choices: { ...defaultChoices, against },
        editable: true,
      });
    const renamed = desk.client.open(`${desk.root}/renamed.gloss`, narrower);
    await watch(renamed, 'main...');
    const drawn = await next((s) => s.generation.uri === renamed && s.lanes.some((l) => l.id === 'difference:mass'));
    const names = drawn.lanes.flatMap((l) => l.curves).filter((c) => c.of === 'against' && c.name !== '');
    assert.ok(names.length > 0 && names.every((c) => c.name === 'merge base of main and HEAD'));
    assert.ok(drawn.ledger.columns.some((c) => c.title === 'Since merge base of main and HEAD'));

    const added = desk.client.open(`${desk.root}/b.gloss`, gloss.replace('a.csv', 'b.csv'));
    await watch(added, 'HEAD');
    const lacking = await next((s) => s.generation.uri === added && s.overlays.length > 0);
    assert.deepEqual(lacking.overlays, [{ uri: '', name: 'HEAD', reason: 'this gloss was not there' }]);

    await watch(added, 'no-such-branch');
    const unknown = await next((s) => s.generation.uri === added && s.overlays[0]?.name === 'no-such-branch');
    assert.equal(unknown.overlays[0].reason, 'there is no such revision here');
  });
});
