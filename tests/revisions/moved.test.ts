import assert from 'node:assert/strict';
import { unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { say } from '../cli/fakeTerminal';
import { lossRun } from '../lsp/support/lossRun';
import { TemporaryRepository } from './support/repository';

// Invented data, computed from a formula; no laboratory measured this.

interface Json {
  readonly glosses: readonly { readonly gloss: string; readonly was: string | null; readonly status: string }[];
}

describe('a gloss at another path', () => {
  let repository: TemporaryRepository;
  beforeEach(() => (repository = TemporaryRepository.make()));
  afterEach(() => repository.remove());

  const gloss = (file: string, to = 450): string =>
    `run "${file}"\n  hazard "none: invented"\n\nstep First 200..${to} °C\n`;
  const pairs = async (): Promise<(string | null)[][]> => {
    const { out } = await say(['diff', 'HEAD', '--format', 'json'], { cwd: repository.path });
    return (JSON.parse(out) as Json).glosses.map((g) => [g.gloss, g.was, g.status]);
  };
  const take = (...names: string[]): void => names.forEach((name) => unlinkSync(join(repository.path, name)));

  it('is the one that was there before, edited or not, where it evaluates the same run under another name too', async () => {
    repository.commit('start', {
      'a.csv': lossRun(),
      'a.gloss': gloss('a.csv'),
      'k.csv': lossRun(300),
      'k.gloss': gloss('k.csv'),
    });
    take('a.csv', 'a.gloss');
    repository.write({ 'moved/b.csv': lossRun(), 'moved/b.gloss': gloss('b.csv', 440) });
    assert.deepEqual(await pairs(), [
      ['k.gloss', null, 'both'],
      ['moved/b.gloss', 'a.gloss', 'both'],
    ]);
  });

  it('is a new one where it evaluates another run, however alike the texts are', async () => {
    repository.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss('a.csv') });
    take('a.csv', 'a.gloss');
    repository.write({ 'b.csv': lossRun(331), 'b.gloss': gloss('b.csv') });
    assert.deepEqual(await pairs(), [
      ['a.gloss', null, 'removed'],
      ['b.gloss', null, 'added'],
    ]);
  });

  it('is a new one where two that are gone evaluated its run', async () => {
    repository.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss('a.csv'), 'a2.gloss': gloss('a.csv', 445) });
    take('a.gloss', 'a2.gloss');
    repository.write({ 'b.gloss': gloss('a.csv', 440) });
    assert.deepEqual(await pairs(), [
      ['a.gloss', null, 'removed'],
      ['a2.gloss', null, 'removed'],
      ['b.gloss', null, 'added'],
    ]);
  });

  it('is a copy where the first is still there', async () => {
    repository.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss('a.csv') });
    repository.write({ 'b.gloss': gloss('a.csv') });
    assert.deepEqual(await pairs(), [
      ['a.gloss', null, 'both'],
      ['b.gloss', null, 'added'],
    ]);
  });
});
