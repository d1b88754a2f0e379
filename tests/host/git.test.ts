import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { sameStatements } from '../../server/src/approval/inputs';
import { git } from '../../server/src/host/git';
import { candidates, gitProgram } from '../../server/src/host/gitProgram';
import { LastAuthors } from '../../server/src/host/lastAuthor';
import { folderWith } from '../cli/fakeTerminal';

/** Calls with other variables of the environment, which come back as they were. */
async function within<T>(variables: Readonly<Record<string, string>>, call: () => Promise<T>): Promise<T> {
  const before = Object.keys(variables).map((name) => [name, process.env[name]] as const);
  Object.assign(process.env, variables);
  try {
    return await call();
  } finally {
    for (const [name, value] of before) {
      if (value === undefined) Reflect.deleteProperty(process.env, name);
      else process.env[name] = value;
    }
  }
}

describe('the git program', () => {
  it('is looked for in the folders that PATH names absolutely, in their order', () => {
    assert.deepEqual(candidates('.::/usr/bin:bin:/bin', 'linux').all, ['/usr/bin/git', '/bin/git']);
    const path = ['.', '', 'C:\\Tools', 'bin', '"D:\\My Git\\cmd"', '\\bin', '\\\\server\\share', 'E:bin'].join(';');
    assert.deepEqual(candidates(path, 'win32').all, [
      'C:\\Tools\\git.exe',
      'D:\\My Git\\cmd\\git.exe',
      '\\\\server\\share\\git.exe',
    ]);
  });

  it('of a workspace is never the one that is run', async () => {
    const folder = folderWith({ git: '#!/bin/sh\necho from the workspace\n' });
    chmodSync(join(folder.path, 'git'), 0o755);
    const path = ['.', '', process.env['PATH'] ?? ''].join(delimiter);
    const answer = await within({ PATH: path }, () => git(folder.path, ['--version']));
    assert.ok(answer.ok);
    assert.match(answer.out.toString('utf8'), /^git version /);
    folder.remove();
  });

  it('that is not there is said to be missing', async () => {
    const folder = folderWith({ 'a.txt': 'x' });
    for (const path of [folder.path, 'bin']) {
      assert.ok(!gitProgram({ PATH: path }, 'linux').startsWith('bin'));
      const answer = await within({ PATH: path }, () => git(folder.path, ['--version']));
      assert.ok(!answer.ok && answer.missing);
    }
    folder.remove();
  });

  it('is told nothing of the repository whose hook started this program', async () => {
    const folder = folderWith({ 'main/sub/b.gloss': 'run "b.csv"\n' });
    const main = join(folder.path, 'main');
    const run = (...words: string[]): string => execFileSync('git', words, { cwd: main, encoding: 'utf8' });
    run('init', '-q');
    run('add', '-A');
    run('-c', 'user.name=A. Berg', '-c', 'user.email=a@x.invalid', 'commit', '-qm', 'x');
    run('worktree', 'add', '-q', '../other');
    mkdirSync(join(folder.path, 'elsewhere'));
    writeFileSync(join(folder.path, 'elsewhere', 'index'), '');
    const path = join(folder.path, 'other', 'sub', 'b.gloss');
    // As git sets them for a hook of a worktree (githooks(5)).
    const hook = {
      GIT_DIR: join(main, '.git', 'worktrees', 'other'),
      GIT_PREFIX: '',
      GIT_INDEX_FILE: join(folder.path, 'elsewhere', 'index'),
    };
    const author = await within(hook, () => new LastAuthors().of(path, 'run "b.csv"\n', sameStatements));
    assert.equal(author, 'A. Berg');
    folder.remove();
  });
});
