import assert from 'node:assert/strict';
import { rmSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { NodeOutside } from '../../server/src/lsp/nodeOutside';
import { nothingMoved } from '../../server/src/presentation/diff/shownRows';
import {
  compareMethod,
  type CompareAnswer,
  type ComparedGlossRows,
  type ComparedRow,
  type ComparedWith,
  type Comparison,
  type OldTextParams,
  type RevisionNames,
} from '../../server/src/protocol/compare';
import { method } from '../../server/src/protocol/messages';
import { defaultChoices } from '../../server/src/protocol/view';
import { say } from '../cli/fakeTerminal';
import { TemporaryRepository } from '../revisions/support/repository';
import { startClient, type TestClient } from './support/client';
import { gatheredViews } from './support/gatheredViews';
import { lossRun } from './support/lossRun';
import { MemoryOutside } from './support/memoryOutside';

// Invented data, computed from a formula; no laboratory measured this.

const gloss = 'run "a.csv"\n  hazard "none: invented"\n\nstep First 200..450 °C\n\nresidue Rest at 600 °C\n';
/** The loss is centred on 330 °C: a window that ends in it loses a part. */
const narrower = gloss.replace('200..450', '200..335');
const head: ComparedWith = { kind: 'revision', name: 'HEAD' };

describe('results compared over the protocol', () => {
  let repository: TemporaryRepository;
  let client: TestClient;
  let root: string;
  let outside: NodeOutside;

  beforeEach(async () => {
    repository = TemporaryRepository.make();
    repository.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss });
    root = pathToFileURL(repository.path).href;
    outside = new NodeOutside();
    client = await startClient(outside, {}, [root]);
  });

  afterEach(() => {
    assert.deepEqual(client.logged, []);
    client.close();
    repository.remove();
  });

  const ask = (uri: string, by: ComparedWith): Promise<CompareAnswer> =>
    client.connection.sendRequest(compareMethod.compare, { uri, with: by });
  const compared = async (uri: string, by: ComparedWith = head): Promise<Comparison> => {
    const answer = await ask(uri, by);
    assert.ok(answer.ok, answer.ok ? '' : answer.message);
    return answer.comparison;
  };
  const only = ({ glosses }: Comparison): ComparedGlossRows => {
    assert.equal(glosses.length, 1);
    return glosses[0];
  };
  const row = (rows: ComparedGlossRows, id: string): ComparedRow => {
    const found = [...rows.rows, ...rows.further].find((r) => r.id === id);
    assert.ok(found, `${id} among ${rows.rows.map((r) => r.id).join(' ')}`);
    return found;
  };
  const old = (params: OldTextParams): Promise<{ text: string } | null> =>
    client.connection.sendRequest(compareMethod.oldText, params);

  it('take the text in the editor, not the file: an unsaved window moves its results and names its line', async () => {
    const uri = client.open(`${root}/a.gloss`, narrower);
    const comparison = await compared(uri);
    assert.equal(comparison.from, 'HEAD');
    assert.equal(comparison.to, 'working copy with unsaved texts');
    const rows = only(comparison);
    const loss = row(rows, 'First.loss');
    assert.equal(loss.status, 'changed');
    assert.match(loss.cause, /decision changed: step First 200\.\.450 °C → step First 200\.\.335 °C$/);
    assert.ok(!rows.rows.some((r) => r.id.startsWith('Rest')), 'the residue did not move');
    assert.ok(rows.quiet > 0, 'and is counted among what is not shown');
    assert.deepEqual(loss.place?.range?.start, { line: 3, character: 0 });
    assert.equal(loss.place?.uri, uri);
    assert.equal((await old(loss.place!.old!))?.text, gloss);
    assert.deepEqual(loss.place?.oldRange?.start, { line: 3, character: 0 });
  });

  it('have the words and numbers of `thermogloss diff` once the text is saved', async () => {
    repository.write({ 'a.gloss': narrower });
    const comparison = await compared(client.open(`${root}/a.gloss`, narrower));
    assert.equal(comparison.to, 'working copy');
    const { out } = await say(['diff', 'HEAD', '--format', 'markdown'], { cwd: repository.path });
    assert.ok(out.includes(comparison.summary), out);
    const { rows } = only(comparison);
    assert.ok(rows.length > 0);
    for (const r of rows) {
      for (const text of [r.result, r.old, r.new, r.difference]) assert.ok(out.includes(text), `${text} in ${out}`);
    }
  });

  it('that did not move read as in every other format', async () => {
    const uri = client.open(`${root}/a.gloss`, `# A remark.\n${gloss}`);
    const comparison = await compared(uri);
    assert.equal(comparison.summary, nothingMoved);
    const { rows, further, quiet } = only(comparison);
    assert.deepEqual([rows, further], [[], []]);
    assert.ok(quiet > 0);
  });

  it('are compared with the index, a tag, a branch and the last common commit, each with its label', async () => {
    repository.git('checkout', '-q', '-b', 'other');
    repository.commit('on-other', { 'a.gloss': gloss.replace('600 °C', '330 °C') });
    repository.git('checkout', '-q', 'main');
    repository.commit('on-main', { 'a.gloss': gloss.replace('600 °C', '340 °C') });
    repository.write({ 'a.gloss': narrower });
    repository.git('add', '-A');
    const uri = client.open(`${root}/a.gloss`, narrower);

    const names: RevisionNames = await client.connection.sendRequest(compareMethod.revisions, { uri });
    assert.deepEqual([...names.branches].sort(), ['main', 'other']);
    assert.ok(names.tags.includes('start'));

    const seen: Record<string, string | undefined> = {};
    for (const name of ['index', 'start', 'other', 'HEAD', 'other...']) {
      const { from, glosses } = await compared(uri, { kind: 'revision', name });
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
    const saved = await say(['results', 'a.gloss', '--format', 'json'], { cwd: repository.path });
    repository.write({ 'saved.json': saved.out, 'other.gloss': gloss, 'broken.json': '{' });
    const uri = client.open(`${root}/a.gloss`, narrower);
    const file = (name: string): ComparedWith => ({ kind: 'file', uri: `${root}/${name}` });

    const numbers = only(await compared(uri, file('saved.json')));
    assert.equal(row(numbers, 'First.loss').status, 'changed');
    assert.equal(row(numbers, 'First.loss').place?.old, null);
    assert.equal(numbers.over, null);

    const glosses = only(await compared(uri, file('other.gloss')));
    assert.equal(row(glosses, 'First.loss').difference, row(numbers, 'First.loss').difference);
    assert.deepEqual(glosses.over, { kind: 'overlay', uri: `${root}/other.gloss` });
    assert.equal((await old(row(glosses, 'First.loss').place!.old!))?.text, gloss);

    const broken = await ask(uri, file('broken.json'));
    assert.ok(!broken.ok && /broken\.json is no file of saved results: line 1 is no JSON/.test(broken.message));
  });

  it('of a renamed and edited gloss are compared with where its run was evaluated before', async () => {
    unlinkSync(join(repository.path, 'a.gloss'));
    repository.write({ 'renamed.gloss': narrower });
    const uri = client.open(`${root}/renamed.gloss`, narrower);
    const rows = only(await compared(uri));
    assert.ok(rows.remarks.includes('it was a.gloss'), rows.remarks.join('; '));
    const loss = row(rows, 'First.loss');
    assert.equal(loss.status, 'changed');
    assert.equal(loss.place?.uri, uri);
    assert.equal((await old(loss.place!.old!))?.text, gloss);
  });

  it('of a new gloss are new, and its old text is not there', async () => {
    const text = gloss.replace('a.csv', 'b.csv');
    repository.write({ 'b.csv': lossRun(340), 'b.gloss': text });
    const rows = only(await compared(client.open(`${root}/b.gloss`, text)));
    assert.equal(rows.status, 'added');
    assert.equal(row(rows, 'First.loss').status, 'added');
    assert.equal(row(rows, 'First.loss').place?.old, null);
    assert.equal(rows.over, null);
  });

  it('of a method are those of every gloss that names it, also of one that is gone', async () => {
    const shared = 'method "Invented"\n\nstep First 200..450 °C\n';
    const user = (file: string): string => `run "${file}"\n  hazard "none: invented"\n\nmethod "m.gloss"\n`;
    repository.commit('method', {
      'a.gloss': null,
      'm.gloss': shared,
      'b.gloss': user('a.csv'),
      'c.gloss': user('c.csv'),
      'c.csv': lossRun(320),
    });
    for (const name of ['c.gloss', 'c.csv']) rmSync(join(repository.path, name));
    const text = shared.replace('200..450', '200..335');
    const uri = client.open(`${root}/m.gloss`, text);
    const comparison = await compared(uri);
    assert.deepEqual(
      comparison.glosses.map((g) => [g.title, g.status]),
      [
        ['b.gloss', 'both'],
        ['c.gloss', 'removed'],
      ],
    );
    const loss = row(comparison.glosses[0], 'First.loss');
    assert.match(loss.cause, /method changed: step First 200\.\.450 °C → step First 200\.\.335 °C$/);
    assert.equal(loss.place?.uri, uri, 'the changed line is in the method');
    assert.deepEqual(loss.place?.range?.start, { line: 2, character: 0 });
    assert.equal((await old(loss.place!.old!))?.text, shared);
    assert.equal(comparison.glosses[1].uri, null);
    const gone = row(comparison.glosses[1], 'First.loss');
    assert.equal(gone.status, 'removed');
    assert.equal(gone.place?.uri, null);
    assert.equal((await old(gone.place!.old!))?.text, user('c.csv'));
  });

  it('of a run whose data are gone cannot be computed, and the curves say why nothing is laid over them', async () => {
    unlinkSync(join(repository.path, 'a.csv'));
    const uri = client.open(`${root}/a.gloss`, gloss);
    const rows = only(await compared(uri));
    assert.ok(
      rows.remarks.some((r) => /^cannot compute now: .*a\.csv/.test(r)),
      rows.remarks.join('; '),
    );
    assert.ok(rows.rows.length > 0 && rows.rows.every((r) => r.status === 'failed'));
    assert.equal((await old(rows.rows[0].place!.old!))?.text, gloss);
    const { next } = gatheredViews(client);
    const choices = { ...defaultChoices, against: 'HEAD' };
    await client.connection.sendRequest(method.watch, { id: 'p', uri, choices, editable: true });
    const state = await next((s) => s.overlays.length > 0);
    assert.deepEqual(state.overlays, [{ uri: '', name: 'HEAD', reason: 'its run or the run now cannot be read' }]);
  });

  it('answer with the reason where there is nothing to compare with', async () => {
    const uri = client.open(`${root}/a.gloss`, gloss);
    const missing = await ask(uri, { kind: 'revision', name: 'no-such-branch' });
    assert.deepEqual(missing, { ok: false, message: 'no-such-branch names no revision of this repository.' });
    const none = await ask(uri, { kind: 'file', uri: `${root}/none.json` });
    assert.ok(!none.ok && /there is no file none\.json/.test(none.message), JSON.stringify(none));
  });

  it('of a hundred results after one changed line are had from two evaluations, with no cause tried alone', async () => {
    const steps = (to: number): string =>
      Array.from({ length: 25 }, (_, i) => `step S${i} ${200 + (i % 10)}..${i === 7 ? to : 450} °C\n`).join('');
    const text = (to: number): string => `run "a.csv"\n  hazard "none: invented"\n\n${steps(to)}`;
    repository.commit('hundred', { 'a.gloss': text(450) });
    const uri = client.open(`${root}/a.gloss`, text(335));
    const place = await outside.revisions.open(repository.path);
    const { counters } = place!.engine.engine;
    const { glosses } = await compared(uri);
    assert.ok(glosses[0].rows.every((r) => r.id.startsWith('S7.')));
    assert.ok(glosses[0].rows.length > 0 && glosses[0].rows.length + glosses[0].quiet >= 100);
    // The old side has 25 statements of five results that count each; of the new side one is another, the others are remembered by content.
    assert.equal(counters.of('evaluations'), 26);
    assert.equal(counters.of('reads'), 1, 'the data are the same on both sides');
    const again = await compared(uri);
    assert.deepEqual(again.glosses, glosses);
    assert.equal(counters.of('evaluations'), 26);
    assert.equal(counters.of('reads'), 1);
  });

  it('can be laid over the curves under the former name of a renamed gloss, and say why where there is none', async () => {
    unlinkSync(join(repository.path, 'a.gloss'));
    repository.write({ 'renamed.gloss': narrower, 'b.csv': lossRun(340), 'b.gloss': gloss.replace('a.csv', 'b.csv') });
    const { next } = gatheredViews(client);
    const watch = (uri: string, against: string): Promise<unknown> =>
      client.connection.sendRequest(method.watch, {
        id: uri,
        uri,
        choices: { ...defaultChoices, against },
        editable: true,
      });
    const renamed = client.open(`${root}/renamed.gloss`, narrower);
    await watch(renamed, 'main...');
    const drawn = await next((s) => s.generation.uri === renamed && s.lanes.some((l) => l.id === 'difference:mass'));
    const names = drawn.lanes.flatMap((l) => l.curves).filter((c) => c.of === 'against' && c.name !== '');
    assert.ok(names.length > 0 && names.every((c) => c.name === 'merge base of main and HEAD'));
    assert.ok(drawn.ledger.columns.some((c) => c.title === 'Since merge base of main and HEAD'));

    const added = client.open(`${root}/b.gloss`, gloss.replace('a.csv', 'b.csv'));
    await watch(added, 'HEAD');
    const lacking = await next((s) => s.generation.uri === added && s.overlays.length > 0);
    assert.deepEqual(lacking.overlays, [{ uri: '', name: 'HEAD', reason: 'this gloss was not there' }]);

    await watch(added, 'no-such-branch');
    const unknown = await next((s) => s.generation.uri === added && s.overlays[0]?.name === 'no-such-branch');
    assert.equal(unknown.overlays[0].reason, 'there is no such revision here');
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
