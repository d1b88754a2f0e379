import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { folderWith } from '../cli/fakeTerminal';
import { historyJson, historySaid } from './support/historySaid';
import { TemporaryRepository } from './support/repository';
import { smallGloss, smallRun } from './support/small';

describe('the history of a result', () => {
  const made: { remove(): void }[] = [];
  after(() => made.forEach((m) => m.remove()));
  const repositoryWith = (files: Readonly<Record<string, string>>): TemporaryRepository => {
    const repository = TemporaryRepository.make();
    made.push(repository);
    repository.commit('start', files);
    return repository;
  };
  const start = { 'a.gloss': smallGloss(), 'a.csv': smallRun() };

  it('needs a repository, and says so', async () => {
    const folder = folderWith(start);
    made.push(folder);
    const said = await historySaid(folder.path, 'First.loss', 'a.gloss');
    assert.equal(said.code, 2);
    assert.match(said.error, /there is no git repository here/);
  });

  it('has the working copy as its newest row only where it says something else than HEAD', async () => {
    const repository = repositoryWith(start);
    const still = await historyJson(repository.path, 'First.loss');
    assert.deepEqual(
      still.rows.map((r) => r.revision === null),
      [false],
    );
    // Line ends and a byte order mark are what git or an editor may change in the folder.
    repository.write({ 'a.gloss': `\uFEFF${smallGloss().replaceAll('\n', '\r\n')}` });
    assert.equal((await historyJson(repository.path, 'First.loss')).rows.length, 1);
    repository.write({ 'a.gloss': smallGloss({ to: 300 }) });
    const { rows } = await historyJson(repository.path, 'First.loss');
    assert.deepEqual(
      rows.map((r) => [r.revision === null, r.status]),
      [
        [true, 'changed'],
        [false, 'first'],
      ],
    );
    assert.deepEqual(rows[0].causes, [{ change: 'step First', effect: rows[0].difference }]);
    const text = await historySaid(repository.path, 'First.loss');
    assert.match(text.out, /^working copy /m);
    repository.write({ 'a.gloss': smallGloss(), 'a.csv': smallRun(12) });
    assert.deepEqual((await historyJson(repository.path, 'First.loss')).rows[0].causes[0].change, 'data');
    assert.deepEqual((await historyJson(repository.path, 'First.loss', '--limit', '1')).rows.length, 1);
    const sinceHead = await historyJson(repository.path, 'First.loss', '--since', 'HEAD');
    assert.deepEqual(
      sinceHead.rows.map((r) => r.status),
      ['changed'],
    );
  });

  it('is one row for a gloss that is not committed, also where nothing is', async () => {
    const repository = repositoryWith({ 'other.csv': smallRun() });
    repository.write(start);
    const bare = TemporaryRepository.make();
    made.push(bare);
    bare.write(start);
    for (const { path } of [repository, bare]) {
      const model = await historyJson(path, 'First.loss');
      assert.equal(model.end, 'uncommitted');
      assert.deepEqual(
        model.rows.map((r) => [r.revision, r.status]),
        [[null, 'first']],
      );
      assert.match((await historySaid(path, 'First.loss')).out, /^The gloss is not committed\.$/m);
    }
  });

  it('says where a shallow clone ends, with the command that fetches the rest', async () => {
    const repository = repositoryWith(start);
    repository.commit('moved', { 'a.gloss': smallGloss({ to: 440 }) });
    repository.commit('again', { 'a.gloss': smallGloss({ to: 430 }) });
    const clone = TemporaryRepository.cloned(pathToFileURL(repository.path).href, '--depth', '2');
    made.push(clone);
    const model = await historyJson(clone.path, 'First.loss');
    assert.deepEqual([model.rows.length, model.end], [2, 'shallow']);
    assert.equal(model.rows.at(-1)!.status, 'oldest here');
    const said = await historySaid(clone.path, 'First.loss');
    assert.match(said.out, /This clone is shallow: what came before [0-9a-f]+ is not here/);
    clone.git('fetch', '-q', ...(/`git fetch (--unshallow)` fetches it/.exec(said.out) ?? []).slice(1));
    const whole = await historyJson(clone.path, 'First.loss');
    assert.deepEqual([whole.rows.length, whole.end], [3, 'begins']);
  });

  it('has a blank row with the reason where the result is not there or cannot be computed', async () => {
    const repository = repositoryWith({ 'a.gloss': smallGloss({ run: 'b.csv' }), 'a.csv': smallRun() });
    const text = smallGloss({ more: ['let twice = 2 * First.loss'] });
    repository.commit('found', { 'a.gloss': smallGloss() });
    repository.commit('with', { 'a.gloss': text });
    repository.commit('without', { 'a.gloss': smallGloss() });
    repository.commit('broken', { 'a.gloss': smallGloss({ more: ['let twice = 3 * First.less'] }) });
    const { rows } = await historyJson(repository.path, 'twice');
    assert.deepEqual(
      rows.map((r) => [r.status, r.result?.value !== undefined && r.result.value !== null]),
      [
        ['cannot compute', false],
        ['removed', false],
        ['added', true],
        ['absent', false],
        ['cannot compute', false],
      ],
    );
    assert.deepEqual([rows[1].reason, rows[3].reason], ['there is no twice', 'there is no twice']);
    assert.match(rows[4].reason!, /b\.csv/);
    const loss = await historyJson(repository.path, 'First.loss');
    assert.deepEqual([loss.rows[3].status, loss.rows[3].moved, loss.rows[3].difference], ['changed', true, null]);
    assert.match(loss.rows[3].remark!, /^could not be computed before: .*b\.csv/);
    const { out } = await historySaid(repository.path, 'twice');
    assert.match(out, /there is no twice; decision changed: let twice = 2 \* First\.loss removed$/m);
    assert.match(out, /decision changed: let twice = 2 \* First\.loss added$/m);
    assert.match(out, /cannot compute .*b\.csv/);
  });

  it('goes on over the gap where a gloss was deleted and restored, also where the working copy alone restored it', async () => {
    const repository = repositoryWith(start);
    repository.commit('gone', { 'a.gloss': null });
    repository.commit('aside', { 'other.txt': 'other' });
    repository.write({ 'a.gloss': smallGloss() });
    const uncommitted = await historyJson(repository.path, 'First.loss', 'a.gloss');
    repository.commit('restored', {});
    const { rows, end } = await historyJson(repository.path, 'First.loss', 'a.gloss');
    // What git lists for the path is the reference.
    const listed = repository.git('log', '--format=%H', '--', 'a.gloss').split('\n');
    assert.deepEqual(
      rows.map((r) => r.revision!.commit),
      listed,
    );
    const expected = [
      ['added', null, true],
      ['removed', 'the gloss is gone', true],
      ['first', null, false],
    ];
    assert.deepEqual(
      rows.map((r) => [r.status, r.reason, r.moved]),
      expected,
    );
    assert.deepEqual(
      uncommitted.rows.map((r) => [r.status, r.reason, r.moved]),
      expected,
    );
    assert.deepEqual([end, uncommitted.end], ['begins', 'begins']);
    const one = await historyJson(repository.path, 'First.loss', '--limit', '1');
    assert.deepEqual([one.rows, one.end], [rows.slice(0, 1), 'limit']);
    const since = await historyJson(repository.path, 'First.loss', '--since', 'aside');
    assert.deepEqual([since.rows, since.end], [rows.slice(0, 1), 'since']);
  });

  it('has no difference over a change of unit, and says so', async () => {
    const of = (quantity: string): string => smallGloss({ more: [`let x = First.${quantity}`] });
    const repository = repositoryWith({ 'a.gloss': of('loss'), 'a.csv': smallRun() });
    repository.commit('unit', { 'a.gloss': of('mass_end') });
    const { rows } = await historyJson(repository.path, 'x');
    assert.deepEqual(
      [rows[0].status, rows[0].moved, rows[0].difference, rows[0].remark],
      ['changed', true, null, 'unit changed from % to mg'],
    );
  });

  it('follows a gloss that was renamed and edited in one commit, or since the last commit', async () => {
    const repository = repositoryWith(start);
    repository.commit('moved', { 'a.gloss': null, 'sub/b.gloss': smallGloss({ run: '../a.csv', to: 430 }) });
    const model = await historyJson(repository.path, 'First.loss');
    assert.deepEqual(
      model.rows.map((r) => [r.gloss, r.was]),
      [
        ['sub/b.gloss', 'a.gloss'],
        ['a.gloss', null],
      ],
    );
    repository.git('mv', 'sub/b.gloss', 'c.gloss');
    repository.write({ 'c.gloss': smallGloss({ to: 420 }) });
    const { rows } = await historyJson(repository.path, 'First.loss');
    assert.deepEqual(
      rows.map((r) => [r.revision === null, r.gloss, r.was]),
      [
        [true, 'c.gloss', 'sub/b.gloss'],
        [false, 'sub/b.gloss', 'a.gloss'],
        [false, 'a.gloss', null],
      ],
    );
  });

  it('follows the side of a merge that it took, and makes a row of a merge of two changes', async () => {
    const repository = repositoryWith({ ...start, 'z.csv': smallRun(5) });
    repository.git('checkout', '-q', '-b', 'side');
    repository.commit('on-side', { 'a.csv': smallRun(11) });
    repository.git('checkout', '-q', 'main');
    repository.commit('elsewhere', { 'z.csv': smallRun(6) });
    repository.git('merge', '-q', '-m', 'taken', 'side');
    const names = async (): Promise<string[]> => {
      const { rows } = await historyJson(repository.path, 'First.loss');
      return rows.map((r) => repository.git('log', '-1', '--format=%s', r.revision!.commit));
    };
    assert.deepEqual(await names(), ['on-side', 'start']);
    repository.git('checkout', '-q', '-b', 'other');
    repository.commit('on-other', { 'a.csv': smallRun(12) });
    repository.git('checkout', '-q', 'main');
    repository.commit('on-main', { 'a.gloss': smallGloss({ to: 440 }) });
    repository.git('merge', '-q', '-m', 'both', 'other');
    assert.deepEqual(await names(), ['both', 'on-main', 'on-side', 'start']);
    const { rows } = await historyJson(repository.path, 'First.loss');
    assert.deepEqual(
      rows[0].causes.map((c) => c.change),
      ['data'],
    );
    // Git itself says which of them have two parents.
    assert.deepEqual(
      rows.map((r) => r.merge),
      rows.map((r) => repository.git('log', '-1', '--format=%P', r.revision!.commit).split(' ').length > 1),
    );
    assert.deepEqual(
      rows.map((r) => r.merge),
      [true, false, false, false],
    );
    const { out } = await historySaid(repository.path, 'First.loss');
    assert.equal(out.match(/merge: also what the other side changed/g)?.length, 1);
  });

  it('takes paths and names with blanks and letters of any alphabet', async () => {
    const run = 'Lauf 1 é.csv';
    const repository = repositoryWith({
      'Proben Ä/Öl 1.gloss': smallGloss({ run }),
      [`Proben Ä/${run}`]: smallRun(),
    });
    repository.commit('data', { [`Proben Ä/${run}`]: smallRun(12) });
    const { rows, gloss } = await historyJson(repository.path, 'First.loss', 'Proben Ä/Öl 1.gloss');
    assert.equal(gloss, 'Proben Ä/Öl 1.gloss');
    // From inside the folder, where it is the only gloss.
    const inside = await historyJson(`${repository.path}/Proben Ä`, 'First.loss');
    assert.deepEqual(inside.rows, rows);
    assert.deepEqual(
      rows.map((r) => r.status),
      ['changed', 'first'],
    );
  });

  it('goes on with the name asked for where the name before it is not there, and says so in that row alone', async () => {
    const other = ['step Early 150..260 °C'];
    const repository = repositoryWith({
      'a.gloss': smallGloss({ more: ['let a = 2 * First.loss'] }),
      'a.csv': smallRun(),
    });
    repository.commit('neither', { 'a.gloss': smallGloss() });
    repository.commit('b', { 'a.gloss': smallGloss({ more: [...other, 'let b = 3 * First.loss'] }) });
    repository.commit('renamed', { 'a.gloss': smallGloss({ more: [...other, 'let a = 3 * First.loss'] }) });
    const { rows } = await historyJson(repository.path, 'a');
    assert.deepEqual(
      rows.map((r) => [r.id, r.wasId, r.again, r.result !== null]),
      [
        ['a', 'b', null, true],
        ['b', null, null, true],
        ['b', null, null, false],
        ['a', null, 'b', true],
      ],
    );
    const { out } = await historySaid(repository.path, 'a');
    assert.equal(out.match(/there is no b here; a is followed again/g)?.length, 1);
  });

  it('asks which gloss is meant where several have the result', async () => {
    const repository = repositoryWith({ ...start, 'b.gloss': smallGloss() });
    const said = await historySaid(repository.path, 'First.loss');
    assert.equal(said.code, 2);
    assert.match(said.error, /several glosses have First: a\.gloss, b\.gloss; name one/);
  });
});
