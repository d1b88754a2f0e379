import assert from 'node:assert/strict';
import { spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { TemporaryRepository } from '../revisions/support/repository';
import { smallGloss, smallRun } from './smallRun';

// Ends a program that opens a connection or asks for the address of a host.
const noNetwork = `
const stop = () => process.exit(99);
require('node:net').Socket.prototype.connect = stop;
require('node:dns').lookup = stop;
require('node:dns').promises.lookup = stop;
`;

describe('the hook before a commit, in a fresh clone and without a network', () => {
  const names = ['Proben Ä/Lauf 1.gloss', 'plain.gloss', "it's (2) & more.gloss"];
  let origin: TemporaryRepository;
  let clone: TemporaryRepository;
  before(() => {
    origin = TemporaryRepository.make();
    origin.commit('start', { 'b.csv': smallRun, 'Proben Ä/b.csv': smallRun });
    clone = TemporaryRepository.cloned(origin.path);
    const [, entry] = /entry: thermogloss (check)$/m.exec(readFileSync('.pre-commit-hooks.yaml', 'utf8'))!;
    writeFileSync(join(clone.path, '.git', 'block.cjs'), noNetwork);
    const program = `"${process.execPath}" -r ./.git/block.cjs "${resolve('dist', 'thermogloss.js')}"`;
    const hook = join(clone.path, '.git', 'hooks', 'pre-commit');
    // As a runner of hooks calls it: from the top, with the paths that are committed as its last words.
    writeFileSync(
      hook,
      `#!/bin/sh\ngit diff --cached --name-only -z --diff-filter=ACM -- '*.gloss' | xargs -0 ${program} ${entry}\n`,
    );
    chmodSync(hook, 0o755);
  });
  after(() => [origin, clone].forEach((r) => r.remove()));

  const commit = (): SpawnSyncReturns<string> => {
    const id = ['-c', 'user.name=A. Fictitious', '-c', 'user.email=a@example.org'];
    return spawnSync('git', [...id, 'commit', '-q', '-m', 'next'], { cwd: clone.path, encoding: 'utf8' });
  };

  it('lets glosses through against which nothing stands, whatever their names', () => {
    clone.write(Object.fromEntries(names.map((name) => [name, smallGloss])));
    clone.git('add', '-A');
    const { status, stderr } = commit();
    assert.equal(status, 0, stderr);
    assert.equal(clone.git('-c', 'core.quotePath=false', 'diff', '--name-only', 'HEAD~1').split('\n').length, 3);
  });

  it('keeps out the one that misses a requirement, and names it', () => {
    const before = clone.git('rev-parse', 'HEAD');
    clone.write({ [names[0]]: smallGloss.replace('in 14..16 %', 'in 1..2 %') });
    clone.git('add', '-A');
    const { status, stdout, stderr } = commit();
    assert.notEqual(status, 0);
    assert.ok(`${stdout}${stderr}`.includes(names[0]), stderr);
    assert.equal(clone.git('rev-parse', 'HEAD'), before);
  });

  it('would have noticed a connection', () => {
    const words = ['-r', join(clone.path, '.git', 'block.cjs'), '-e', "require('node:net').connect(1)"];
    assert.equal(spawnSync(process.execPath, words).status, 99);
  });

  it('is built when the repository is installed from its source', () => {
    const { scripts, bin } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      scripts: Record<string, string>;
      bin: Record<string, string>;
    };
    // npm runs `prepack` before it packs what it took from a repository, where nothing is built.
    assert.match(scripts.prepack, /^npm run (?:--silent )?build$/);
    assert.equal(bin.thermogloss, 'dist/thermogloss.js');
  });
});
