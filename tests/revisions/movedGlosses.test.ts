import assert from 'node:assert/strict';
import { say } from '../cli/fakeTerminal';
import { TemporaryRepository } from './support/repository';
import { smallGloss, smallRun } from './support/small';

describe('diff of a gloss that moved', () => {
  const made: TemporaryRepository[] = [];
  after(() => made.forEach((m) => m.remove()));
  const repositoryWith = (files: Readonly<Record<string, string>>): TemporaryRepository => {
    const repository = TemporaryRepository.make();
    made.push(repository);
    repository.commit('start', files);
    return repository;
  };
  /** Path, path before and status of every gloss, with the results that moved. */
  const diff = async (repository: TemporaryRepository, ...words: readonly string[]): Promise<unknown[]> => {
    const said = await say(['diff', ...words, '--format', 'json'], { cwd: repository.path });
    assert.ok(said.code < 2, said.error);
    const { glosses } = JSON.parse(said.out) as {
      glosses: { gloss: string; was: string | null; status: string; moved: boolean }[];
    };
    return glosses.map((g) => [g.gloss, g.was, g.status, g.moved]);
  };
  const start = { 'a.gloss': smallGloss(), 'a.csv': smallRun() };

  it('renamed and edited in one commit is compared with where it was, as git sees it', async () => {
    const repository = repositoryWith(start);
    repository.commit('moved', { 'a.gloss': null, 'b.gloss': smallGloss({ to: 300 }) });
    assert.match(repository.git('diff', '--name-status', '-M', 'start', 'moved'), /^R\d+\ta\.gloss\tb\.gloss$/);
    assert.deepEqual(await diff(repository, 'start', 'moved'), [['b.gloss', 'a.gloss', 'both', true]]);
    assert.deepEqual(await diff(repository, 'moved', 'start'), [['a.gloss', 'b.gloss', 'both', true]]);
  });

  it('where git sees no rename, the run that both evaluate tells it', async () => {
    const repository = repositoryWith(start);
    const other = `run "a.csv"\n  mass 20.000 ± 0.010 mg\nstep First 140..460 °C\n`;
    repository.commit('moved', { 'a.gloss': null, 'b.gloss': other });
    assert.doesNotMatch(repository.git('diff', '--name-status', '-M', 'start', 'moved'), /^R/m);
    assert.deepEqual(
      (await diff(repository, 'start', 'moved')).map((g) => (g as unknown[]).slice(0, 3)),
      [['b.gloss', 'a.gloss', 'both']],
    );
  });

  it('moved with its data to another folder it is known by the content of the run', async () => {
    const repository = repositoryWith(start);
    repository.commit('moved', {
      'a.gloss': null,
      'a.csv': null,
      'sub/c.gloss': `run "c.csv"\n  mass 20.000 ± 0.010 mg\nstep First 150..450 °C\n`,
      'sub/c.csv': smallRun(),
    });
    assert.deepEqual(
      (await diff(repository, 'start', 'moved')).map((g) => (g as unknown[]).slice(0, 3)),
      [['sub/c.gloss', 'a.gloss', 'both']],
    );
  });

  it('is known in the working copy and in the index, though git has not been told of it', async () => {
    const repository = repositoryWith(start);
    repository.git('mv', 'a.gloss', 'b.gloss');
    repository.write({ 'b.gloss': smallGloss({ to: 300 }) });
    assert.deepEqual(await diff(repository), [['b.gloss', 'a.gloss', 'both', true]]);
    repository.git('add', '-A');
    assert.deepEqual(await diff(repository, 'HEAD', 'index'), [['b.gloss', 'a.gloss', 'both', true]]);
  });

  it('two that moved are told apart by their runs', async () => {
    const repository = repositoryWith({ ...start, 'b.gloss': smallGloss({ run: 'b.csv' }), 'b.csv': smallRun(12) });
    repository.commit('moved', {
      'a.gloss': null,
      'b.gloss': null,
      'c.gloss': smallGloss({ run: 'b.csv', to: 440 }),
      'd.gloss': smallGloss({ to: 440 }),
    });
    assert.deepEqual(
      (await diff(repository, 'start', 'moved')).map((g) => (g as unknown[]).slice(0, 2)),
      [
        ['c.gloss', 'b.gloss'],
        ['d.gloss', 'a.gloss'],
      ],
    );
  });

  it('a gloss of another run is no renamed one, however alike the texts: the first run is still there', async () => {
    const repository = repositoryWith({ ...start, 'b.csv': smallRun(12) });
    repository.commit('other', { 'a.gloss': null, 'b.gloss': smallGloss({ run: 'b.csv' }) });
    // Git, which reads lines alone, takes it for one.
    assert.match(repository.git('diff', '--name-status', '-M', 'start', 'other'), /^R\d+\ta\.gloss\tb\.gloss$/);
    assert.deepEqual(await diff(repository, 'start', 'other'), [
      ['a.gloss', null, 'removed', true],
      ['b.gloss', null, 'added', true],
    ]);
  });

  it('a method that was renamed and edited is no gloss with numbers, and its users follow it', async () => {
    const method = (to: number): string => `method "Invented"\n\nstep First 150..${to} °C\n`;
    const using = (file: string): string => `run "a.csv"\n  mass 20.000 ± 0.010 mg\n\nmethod "${file}"\n`;
    const repository = repositoryWith({ 'a.csv': smallRun(), 'a.gloss': using('m.gloss'), 'm.gloss': method(450) });
    repository.commit('moved', { 'm.gloss': null, 'n.gloss': method(300), 'a.gloss': using('n.gloss') });
    assert.deepEqual(await diff(repository, 'start', 'moved'), [['a.gloss', null, 'both', true]]);
  });
});
