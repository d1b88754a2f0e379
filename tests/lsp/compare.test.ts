import assert from 'node:assert/strict';
import { nothingMoved } from '../../server/src/presentation/diff/shownRows';
import {
  compareMethod,
  type CompareAnswer,
  type ComparedWith,
  type RevisionNames,
} from '../../server/src/protocol/compare';
import { say } from '../cli/fakeTerminal';
import { startClient } from './support/client';
import { CompareDesk, gloss, head, narrower, only, rowOf } from './support/compareDesk';
import { lossRun } from './support/lossRun';
import { MemoryOutside } from './support/memoryOutside';

describe('results compared over the protocol', () => {
  const desk = CompareDesk.inSuite();

  it('take the text in the editor, not the file: an unsaved window moves its results and names its line', async () => {
    const uri = desk.client.open(`${desk.root}/a.gloss`, narrower);
    const comparison = await desk.compared(uri);
    assert.equal(comparison.from, 'HEAD');
    assert.equal(comparison.to, 'working copy with unsaved texts');
    const rows = only(comparison);
    const loss = rowOf(rows, 'First.loss');
    assert.equal(loss.status, 'changed');
    assert.match(loss.cause, /decision changed: step First 200\.\.450 °C → step First 200\.\.335 °C$/);
    assert.ok(!rows.rows.some((r) => r.id.startsWith('Rest')), 'the residue did not move');
    assert.ok(rows.quiet > 0, 'and is counted among what is not shown');
    assert.deepEqual(loss.place?.range?.start, { line: 3, character: 0 });
    assert.equal(loss.place?.uri, uri);
    assert.equal(await desk.old(loss.place!.old), gloss);
    assert.deepEqual(loss.place?.oldRange?.start, { line: 3, character: 0 });
  });

  it('have the words and numbers of `thermogloss diff` once the text is saved', async () => {
    desk.repository.write({ 'a.gloss': narrower });
    const comparison = await desk.compared(desk.client.open(`${desk.root}/a.gloss`, narrower));
    assert.equal(comparison.to, 'working copy');
    const { out } = await say(['diff', 'HEAD', '--format', 'markdown'], { cwd: desk.repository.path });
    assert.ok(out.includes(comparison.summary), out);
    const { rows } = only(comparison);
    assert.ok(rows.length > 0);
    for (const r of rows) {
      for (const text of [r.result, r.old, r.new, r.difference]) assert.ok(out.includes(text), `${text} in ${out}`);
    }
  });

  it('are those of the text as it stands also while files around it change', async () => {
    desk.repository.write({ 'other.gloss': gloss });
    const uri = desk.client.open(`${desk.root}/a.gloss`, gloss);
    const other: ComparedWith = { kind: 'file', uri: `${desk.root}/other.gloss` };
    assert.equal((await desk.compared(uri, other)).summary, nothingMoved);
    desk.client.change(uri, 2, narrower);
    const asked = desk.ask(uri, other);
    let isAnswered = false;
    void asked.then(() => (isAnswered = true));
    // Each calls off what is being computed.
    for (let k = 0; k < 8 && !isAnswered; k++) {
      void desk.client.connection.sendNotification('workspace/didChangeWatchedFiles', {
        changes: [{ uri: `${desk.root}/none.csv`, type: 1 }],
      });
      await new Promise((done) => setTimeout(done, 30));
    }
    const answer = await asked;
    assert.ok(answer.ok);
    assert.equal(rowOf(only(answer.comparison), 'First.loss').status, 'changed');
  });

  it('that did not move read as in every other format', async () => {
    const uri = desk.client.open(`${desk.root}/a.gloss`, `# A remark.\n${gloss}`);
    const comparison = await desk.compared(uri);
    assert.equal(comparison.summary, nothingMoved);
    const { rows, further, quiet } = only(comparison);
    assert.deepEqual([rows, further], [[], []]);
    assert.ok(quiet > 0);
  });

  it('are compared with the index, a tag, a branch and the last common commit, each with its label', async () => {
    desk.repository.git('checkout', '-q', '-b', 'other');
    desk.repository.commit('on-other', { 'a.gloss': gloss.replace('600 °C', '330 °C') });
    desk.repository.git('checkout', '-q', 'main');
    desk.repository.commit('on-main', { 'a.gloss': gloss.replace('600 °C', '340 °C') });
    desk.repository.write({ 'a.gloss': narrower });
    desk.repository.git('add', '-A');
    const uri = desk.client.open(`${desk.root}/a.gloss`, narrower);

    const names: RevisionNames = await desk.client.connection.sendRequest(compareMethod.revisions, { uri });
    assert.deepEqual([...names.branches].sort(), ['main', 'other']);
    assert.ok(names.tags.includes('start'));

    const seen: Record<string, string | undefined> = {};
    for (const name of ['index', 'start', 'other', 'HEAD', 'other...']) {
      const { from, glosses } = await desk.compared(uri, { kind: 'revision', name });
      const rest = glosses[0].rows.find((r) => r.result === 'Rest.remaining');
      seen[from] = glosses[0].rows.length === 0 ? 'nothing' : rest?.cause.replace(/^.*; /, '');
    }
    assert.deepEqual(seen, {
      index: 'nothing',
      start: undefined,
      other: 'decision changed: residue Rest at 330 °C → residue Rest at 600 °C',
      HEAD: 'decision changed: residue Rest at 340 °C → residue Rest at 600 °C',
      'merge base of other and HEAD': undefined,
    });
  });

  it('are compared with saved results and with another gloss, the old text being the other gloss', async () => {
    const saved = await say(['results', 'a.gloss', '--format', 'json'], { cwd: desk.repository.path });
    desk.repository.write({ 'saved.json': saved.out, 'other.gloss': gloss, 'broken.json': '{' });
    const uri = desk.client.open(`${desk.root}/a.gloss`, narrower);
    const file = (name: string): ComparedWith => ({ kind: 'file', uri: `${desk.root}/${name}` });

    const numbers = only(await desk.compared(uri, file('saved.json')));
    assert.equal(rowOf(numbers, 'First.loss').status, 'changed');
    assert.equal(rowOf(numbers, 'First.loss').place?.old, null);
    assert.equal(numbers.over, null);

    const glosses = only(await desk.compared(uri, file('other.gloss')));
    assert.equal(rowOf(glosses, 'First.loss').difference, rowOf(numbers, 'First.loss').difference);
    assert.deepEqual(glosses.over, { kind: 'overlay', uri: `${desk.root}/other.gloss` });
    assert.equal(await desk.old(rowOf(glosses, 'First.loss').place!.old), gloss);

    const broken = await desk.ask(uri, file('broken.json'));
    assert.ok(!broken.ok && /broken\.json is no file of saved results: line 1 is no JSON/.test(broken.message));
  });

  it('answer with the reason where there is nothing to compare with', async () => {
    const uri = desk.client.open(`${desk.root}/a.gloss`, gloss);
    const missing = await desk.ask(uri, { kind: 'revision', name: 'no-such-branch' });
    assert.deepEqual(missing, { ok: false, message: 'no-such-branch names no revision of this repository.' });
    const none = await desk.ask(uri, { kind: 'file', uri: `${desk.root}/none.json` });
    assert.ok(!none.ok && /there is no file none\.json/.test(none.message), JSON.stringify(none));
  });

  it('of a hundred results after one changed line are had from two evaluations, with no cause tried alone', async () => {
    const steps = (to: number): string =>
      Array.from({ length: 25 }, (_, i) => `step S${i} ${200 + (i % 10)}..${i === 7 ? to : 450} °C\n`).join('');
    const text = (to: number): string => `run "a.csv"\n  hazard "none: invented"\n\n${steps(to)}`;
    desk.repository.commit('hundred', { 'a.gloss': text(450) });
    const uri = desk.client.open(`${desk.root}/a.gloss`, text(335));
    const place = await desk.outside.revisions.open(desk.repository.path);
    const { counters } = place!.engine.engine;
    const { glosses } = await desk.compared(uri);
    assert.ok(glosses[0].rows.every((r) => r.id.startsWith('S7.')));
    assert.ok(glosses[0].rows.length > 0 && glosses[0].rows.length + glosses[0].quiet >= 100);
    // The old side has 25 statements of five results that count each; of the new side one is another, the others are remembered by content.
    assert.equal(counters.of('evaluations'), 26);
    assert.equal(counters.of('reads'), 1, 'the data are the same on both sides');
    const again = await desk.compared(uri);
    assert.deepEqual(again.glosses, glosses);
    assert.equal(counters.of('evaluations'), 26);
    assert.equal(counters.of('reads'), 1);
  });
});

describe('results compared outside a repository', () => {
  it('are not: the answer says that there is no git program to ask, and a saved file is read nevertheless', async () => {
    const saved = { schema: 'thermogloss-results/1', gloss: 'a.gloss', results: [], requirements: [] };
    const client = await startClient(
      new MemoryOutside({ '/lab/a.csv': lossRun(), '/lab/a.gloss': gloss, '/lab/old.json': JSON.stringify(saved) }),
    );
    const uri = client.open('a.gloss', gloss);
    assert.equal(await client.connection.sendRequest(compareMethod.revisions, { uri }), null);
    const none: CompareAnswer = await client.connection.sendRequest(compareMethod.compare, { uri, with: head });
    assert.ok(!none.ok && /no git program/.test(none.message));
    const by: ComparedWith = { kind: 'file', uri: 'file:///lab/old.json' };
    const answer: CompareAnswer = await client.connection.sendRequest(compareMethod.compare, { uri, with: by });
    assert.ok(answer.ok);
    assert.ok(answer.comparison.glosses[0].rows.some((r) => r.id === 'First.loss' && r.status === 'added'));
    assert.deepEqual(client.logged, []);
    client.close();
  });
});
