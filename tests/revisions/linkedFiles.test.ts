import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, unlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Repository } from '../../server/src/host/repository';
import { say } from '../cli/fakeTerminal';
import { lossRun } from '../lsp/support/lossRun';
import { TemporaryRepository } from './support/repository';

// Invented data, computed from a formula; no laboratory measured this.
const gloss = 'run "a.csv"\n  hazard "none: invented"\n\nstep First 200..450 °C\n';

describe('files that git tracks as links', () => {
  let made: TemporaryRepository;
  beforeEach(() => (made = TemporaryRepository.make()));
  afterEach(() => made.remove());
  const link = (target: string, name: string): void => symlinkSync(target, join(made.path, name));
  const diff = (...words: string[]): Promise<{ code: number; out: string; error: string }> =>
    say(['diff', ...words], { cwd: made.path });

  it('are read on the old side as in the folder: a changed window is the only cause', async () => {
    link('data/first/a.csv', 'a.csv');
    made.commit('start', { 'data/first/a.csv': lossRun(), 'a.gloss': gloss });
    made.write({ 'a.gloss': gloss.replace('450', '335') });
    const { code, out } = await diff('HEAD');
    assert.equal(code, 1, out);
    assert.match(out, /First\.loss .*decision changed: step First 200\.\.450 °C → step First 200\.\.335 °C/s);
    assert.doesNotMatch(out, /cannot compute/);
  });

  it('are followed over linked folders and from link to link', async () => {
    mkdirSync(join(made.path, 'data'));
    link('data/current', 'now');
    link('first', 'data/current');
    link('now/a.csv', 'a.csv');
    made.commit('start', { 'data/first/a.csv': lossRun(), 'a.gloss': gloss });
    made.write({ 'data/first/a.csv': lossRun(340) });
    const { code, out } = await diff('HEAD');
    assert.equal(code, 1, out);
    assert.match(out, /data changed: /);
    assert.doesNotMatch(out, /cannot compute/);
  });

  it('that lead out of the repository, in a circle or nowhere are not there, with the reason', async () => {
    made.commit('start', { 'a.gloss': gloss });
    const reason = async (target: string): Promise<string> => {
      made.git('rm', '-q', '--cached', '--ignore-unmatch', 'a.csv');
      rmSync(join(made.path, 'a.csv'), { force: true });
      link(target, 'a.csv');
      made.git('add', '-A');
      const repository = (await Repository.open(made.path))!;
      const file = await (await repository.source('index', 'index')).read(`${made.path}/a.csv`);
      repository.rest();
      assert.ok(!file.ok && file.reason === 'missing');
      return file.message;
    };
    const outside = 'a.csv in index is a link to a place outside the repository';
    assert.equal(await reason('../elsewhere/a.csv'), outside);
    assert.equal(await reason('/lab/a.csv'), outside);
    assert.equal(await reason('a.csv'), 'a.csv in index is a link that leads to no file');
    assert.equal(await reason('data/none.csv'), 'there is no file a.csv in index');
  });

  it('are part of the history: the commit that changed what the link leads to moved the result', async () => {
    link('data/a.csv', 'a.csv');
    made.commit('start', { 'data/a.csv': lossRun(), 'a.gloss': gloss });
    made.commit('unrelated', { 'notes.txt': 'nothing of this run' });
    made.commit('data', { 'data/a.csv': lossRun(340) });
    unlinkSync(join(made.path, 'a.csv'));
    link('data/b.csv', 'a.csv');
    made.commit('target', { 'data/b.csv': lossRun(350) });
    const { out } = await say(['history', 'First.start', 'a.gloss', '--format', 'json'], { cwd: made.path });
    const commits = ['target', 'data', 'start'].map((tag) => made.git('rev-parse', tag));
    const seen = commits.map((commit) => out.indexOf(commit));
    assert.ok(seen.every((at) => at >= 0) && seen[0] < seen[1] && seen[1] < seen[2], out);
    assert.ok(!out.includes(made.git('rev-parse', 'unrelated')));
    assert.doesNotMatch(out, /"state":"failed"/);
  });
});

describe('a repository whose settings put its files elsewhere', () => {
  it('is none: nothing outside the folder with `.git` is read', async () => {
    const around = realpathSync(mkdtempSync(join(tmpdir(), 'thermogloss-around-')));
    const made = TemporaryRepository.make();
    try {
      made.commit('start', { 'a.csv': lossRun(), 'lab/a.gloss': gloss.replace('a.csv', '../a.csv') });
      assert.equal((await Repository.open(join(made.path, 'lab')))?.top, made.path);
      for (const elsewhere of ['../..', around]) {
        made.git('config', 'core.worktree', elsewhere);
        assert.equal(await Repository.open(made.path), null, elsewhere);
        assert.equal(await Repository.open(join(made.path, 'lab')), null, elsewhere);
      }
      const { code, error: err } = await say(['history', 'First.loss', 'lab/a.gloss'], { cwd: made.path });
      assert.notEqual(code, 0);
      assert.match(err, /there is no git repository here/);
    } finally {
      made.remove();
      rmSync(around, { recursive: true, force: true });
    }
  });

  it('is one where the settings name its own folder, as those of submodules and worktrees do', async () => {
    const made = TemporaryRepository.make();
    const beside = join(realpathSync(mkdtempSync(join(tmpdir(), 'thermogloss-beside-'))), 'tree');
    try {
      made.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss });
      made.git('config', 'core.worktree', '..');
      assert.equal((await Repository.open(made.path))?.top, made.path);
      made.git('config', '--unset', 'core.worktree');
      made.git('worktree', 'add', '-q', beside, '-b', 'beside');
      assert.equal((await Repository.open(beside))?.top, beside);
    } finally {
      made.remove();
      rmSync(join(beside, '..'), { recursive: true, force: true });
    }
  });
});
