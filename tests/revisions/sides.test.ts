import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { folderWith, say } from '../cli/fakeTerminal';
import { TemporaryRepository } from './support/repository';
import { smallGloss, smallRun } from './support/small';

interface Row {
  readonly id: string;
  readonly status: string;
  readonly difference: number | null;
}

/** One gloss of a comparison in JSON, its results by id. */
async function compared(cwd: string, ...words: readonly string[]): Promise<{ code: number; rows: Map<string, Row> }> {
  const said = await say(['diff', '--format', 'json', ...words], { cwd });
  assert.ok(said.code < 2, said.error);
  const { glosses } = JSON.parse(said.out) as { glosses: { results: Row[] }[] };
  return { code: said.code, rows: new Map(glosses.flatMap((g) => g.results.map((r) => [r.id, r]))) };
}

describe('the sides that diff compares', () => {
  const removed: { remove(): void }[] = [];
  after(() => removed.forEach((r) => r.remove()));

  describe('in a repository with HEAD, an index and a working copy that all differ', () => {
    let repository: TemporaryRepository;
    /** Loss at each of them, %: the run says so. */
    const losses = { 'HEAD~1': 8, HEAD: 10, index: 12, work: 14 };
    before(() => {
      repository = TemporaryRepository.make();
      removed.push(repository);
      repository.commit('one', { 'a.gloss': smallGloss(), 'a.csv': smallRun(losses['HEAD~1']) });
      repository.commit('two', { 'a.csv': smallRun(losses.HEAD) });
      repository.write({ 'a.csv': smallRun(losses.index) });
      repository.git('add', 'a.csv');
      repository.write({ 'a.csv': smallRun(losses.work) });
    });

    for (const [words, from, to] of [
      [[], 'HEAD', 'work'],
      [['index'], 'index', 'work'],
      [['HEAD', 'index'], 'HEAD', 'index'],
      [['HEAD~1'], 'HEAD~1', 'work'],
      [['one', 'main'], 'HEAD~1', 'HEAD'],
    ] as const) {
      it(`diff ${words.join(' ')} goes from ${from} to ${to}`, async () => {
        const { code, rows } = await compared(repository.path, ...words);
        assert.equal(code, 1);
        const { difference } = rows.get('First.loss')!;
        // The noise of 0.001 mg on 20 mg moves a loss by some thousandths of a percent.
        assert.ok(Math.abs(difference! - (losses[to] - losses[from])) < 0.02, String(difference));
      });
    }

    it('hides what is within tolerance and says how many, and shows it when asked', async () => {
      const shown = await say(['diff', 'HEAD', 'index'], { cwd: repository.path });
      const hidden = /^ {2}(\d+) results? within tolerance (?:is|are) not shown/m.exec(shown.out);
      const rows = (out: string): number => out.split('\n').filter((l) => /^ {2}First\.\w/.test(l)).length;
      const all = await say(['diff', 'HEAD', 'index', '--within'], { cwd: repository.path });
      assert.ok(hidden !== null, shown.out);
      assert.doesNotMatch(all.out, /within tolerance (?:is|are) not shown/);
      assert.equal(rows(all.out), rows(shown.out) + Number(hidden[1]));
    });
  });

  it('with --merge-base what the other branch did meanwhile is no difference', async () => {
    const repository = TemporaryRepository.make();
    removed.push(repository);
    repository.commit('start', { 'a.gloss': smallGloss(), 'a.csv': smallRun(10) });
    repository.git('checkout', '-q', '-b', 'side');
    repository.commit('here', { 'a.csv': smallRun(11) });
    repository.git('checkout', '-q', 'main');
    repository.commit('meanwhile', { 'a.csv': smallRun(15) });
    const loss = async (...words: string[]): Promise<number> =>
      (await compared(repository.path, ...words)).rows.get('First.loss')!.difference!;
    assert.ok(Math.abs((await loss('main', 'side', '--merge-base')) - 1) < 0.02);
    assert.ok(Math.abs((await loss('main', 'side')) + 4) < 0.02);
  });

  it('paths and names may hold blanks and letters of any alphabet', async () => {
    const repository = TemporaryRepository.make();
    removed.push(repository);
    const [gloss, run] = ['Proben Ä/Öl 1.gloss', 'Lauf 1 é.csv'];
    repository.commit('one', { [gloss]: smallGloss({ run }), [`Proben Ä/${run}`]: smallRun(10) });
    repository.commit('two', { [`Proben Ä/${run}`]: smallRun(12) });
    for (const words of [['one', 'two'], ['one'], ['one', '--', gloss], ['one', 'two', '--', 'Proben Ä']]) {
      const { rows } = await compared(repository.path, ...words);
      assert.ok(Math.abs(rows.get('First.loss')!.difference! - 2) < 0.02, words.join(' '));
    }
  });

  describe('without a repository', () => {
    const folder = folderWith({
      'a.gloss': smallGloss(),
      'b.gloss': smallGloss({ run: 'b.csv' }),
      'a.csv': smallRun(10),
      'b.csv': smallRun(13),
    });
    removed.push(folder);

    it('two glosses are compared, and the same one with itself has not moved', async () => {
      const { code, rows } = await compared(folder.path, 'a.gloss', 'b.gloss');
      assert.equal(code, 1);
      assert.ok(Math.abs(rows.get('First.loss')!.difference! - 3) < 0.02);
      assert.equal((await compared(folder.path, 'a.gloss', 'a.gloss')).code, 0);
    });

    it('two folders are compared by the paths in them', async () => {
      for (const [name, loss] of [
        ['old', 10],
        ['new', 12],
      ] as const) {
        mkdirSync(join(folder.path, name), { recursive: true });
        writeFileSync(join(folder.path, name, 'x y.gloss'), smallGloss());
        writeFileSync(join(folder.path, name, 'a.csv'), smallRun(loss));
      }
      const { rows } = await compared(folder.path, 'old', 'new');
      assert.ok(Math.abs(rows.get('First.loss')!.difference! - 2) < 0.02);
    });

    it('saved results hold full precision: read back they differ from the gloss by nothing at all', async () => {
      const saved = await say(['results', 'a.gloss', '--all', '--format', 'json', '-o', 'saved.json'], {
        cwd: folder.path,
      });
      assert.equal(saved.code, 0, saved.error);
      const { code, rows } = await compared(folder.path, 'saved.json', 'a.gloss');
      assert.equal(code, 0);
      const numbers = [...rows.values()].filter((r) => r.difference !== null);
      assert.ok(numbers.length > 8);
      for (const r of numbers) assert.deepEqual([r.status, r.difference], ['equal', 0], r.id);
    });

    it('a version of the program that is another is told apart from what was edited', async () => {
      const { out } = await say(['results', 'a.gloss', '--format', 'json'], { cwd: folder.path });
      const older = JSON.stringify({ ...(JSON.parse(out) as object), program: '0.0.1' });
      writeFileSync(join(folder.path, 'older.json'), older);
      const said = await say(['diff', 'older.json', 'a.gloss', '--within'], { cwd: folder.path });
      assert.equal(said.code, 0);
      assert.match(said.out, /computed by version 0\.0\.1 before, by \S+ now/);
      const same = await say(['diff', 'a.gloss', 'a.gloss', '--within'], { cwd: folder.path });
      assert.doesNotMatch(same.out, /computed by version/);
    });

    it('what is neither file nor revision ends with 2', async () => {
      const said = await say(['diff', 'a.gloss', 'none.gloss'], { cwd: folder.path });
      assert.equal(said.code, 2);
      assert.match(said.error, /there is no file none\.gloss/);
    });
  });
});
