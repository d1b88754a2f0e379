import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sameStatements } from '../../server/src/approval/inputs';
import { LastAuthors } from '../../server/src/host/lastAuthor';
import { folderWith } from '../cli/fakeTerminal';

const line = 'approved by "M. Ruiz" on 2026-10-02 digest 3f2a91c07be45d6618f0a2c49d7e5b13\n';
const one = 'run "b.csv"\nstep First 380..620 °C\n';
const two = one.replace('380', '385');

describe('the author of the last change to the statements', () => {
  const folder = folderWith({ 'sub/a.txt': 'x' });
  const path = join(folder.path, 'sub', ':(top)b.gloss');
  const git = (...words: string[]): string => execFileSync('git', words, { cwd: folder.path, encoding: 'utf8' });
  const commit = (author: string, text: string): void => {
    writeFileSync(path, text);
    git('add', '-A');
    git(
      '-c',
      'user.name=Committer',
      '-c',
      'user.email=c@x.invalid',
      'commit',
      '-qm',
      'x',
      `--author=${author} <a@x.invalid>`,
    );
  };
  const author = (text: string): Promise<string | null> => new LastAuthors().of(path, text, sameStatements);
  after(() => folder.remove());

  it('is nobody where there is no repository, and none before the first commit', async () => {
    assert.equal(await author(one), null);
    git('init', '-q');
    assert.equal(await author(one), null);
  });

  it('is who committed it, in whatever way the file is checked out', async () => {
    commit('A. Berg', one);
    assert.equal(await author(one), 'A. Berg');
    assert.equal(await author(`\uFEFF${one.replaceAll('\n', '\r\n')}`), 'A. Berg');
  });

  it('is not who only laid the text out, commented on it or approved it', async () => {
    commit('C. Lund', `# Looked at.\n${one}`);
    commit('M. Ruiz', `# Looked at.\n${one}${line}`);
    assert.equal(await author(`# Looked at.\n${one}${line}`), 'A. Berg');
  });

  it('is who changed a statement, also where the approval came with it', async () => {
    commit('M. Ruiz', `${two}${line}`);
    commit('C. Lund', `# Late.\n${two}${line}`);
    assert.equal(await author(`# Late.\n${two}${line}`), 'M. Ruiz');
  });

  it('is nobody while a change is not committed', async () => {
    assert.equal(await author(one), null);
  });

  it('is the one who brought it back, where the text returns to what it was before', async () => {
    commit('D. Moss', one);
    assert.equal(await author(one), 'D. Moss');
  });

  it('is nobody where the history was cut before it', async () => {
    writeFileSync(join(folder.path, 'sub', 'a.txt'), 'y');
    git('commit', '-qam', 'y', '--author=E. Vale <e@x.invalid>');
    const short = folderWith({});
    git('clone', '-q', '--depth=1', `file://${folder.path}`, join(short.path, 'c'));
    assert.equal(await new LastAuthors().of(join(short.path, 'c', 'sub', ':(top)b.gloss'), one, sameStatements), null);
    assert.equal(await author(one), 'D. Moss');
    short.remove();
  });

  it('is asked of git again only when files have changed', async () => {
    const authors = new LastAuthors();
    const asked = (): Promise<string | null> => authors.of(path, two, sameStatements);
    assert.equal(await asked(), null);
    commit('F. Hale', two);
    assert.equal(await asked(), null);
    authors.forget();
    assert.equal(await asked(), 'F. Hale');
  });

  it('is nobody for a file that is not in the repository', async () => {
    rmSync(path);
    writeFileSync(`${path}2`, one);
    assert.equal(await new LastAuthors().of(`${path}2`, one, sameStatements), null);
  });
});
