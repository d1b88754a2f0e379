import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

const author = { name: 'A. Fictitious', email: 'a@example.org' };

/** A repository in a temporary folder that takes no setting from the machine and gives the same commits everywhere. */
export class TemporaryRepository {
  private hour = 0;

  private constructor(readonly path: string) {}

  static make(): TemporaryRepository {
    const made = new TemporaryRepository(temporaryFolder());
    made.git('init', '-q', '-b', 'main');
    made.git('config', 'core.autocrlf', 'false');
    return made;
  }

  /** Of a repository that stands at `url`. */
  static cloned(url: string, ...words: readonly string[]): TemporaryRepository {
    const made = new TemporaryRepository(temporaryFolder());
    made.git('clone', '-q', ...words, url, '.');
    return made;
  }

  git(...words: readonly string[]): string {
    return this.told(words, '');
  }

  /** A commit for each set of files, a day after the one before, on top of nothing; quicker than one call of git for each. */
  import(states: readonly Readonly<Record<string, string>>[]): void {
    const data = (text: string): string => `data ${Buffer.byteLength(text)}\n${text}\n`;
    const commits = states.map((files, k) => {
      const when = `${author.name} <${author.email}> ${1_772_323_200 + 86_400 * k} +0000`;
      const changed = Object.entries(files).map(([name, text]) => `M 100644 inline ${name}\n${data(text)}`);
      return `commit refs/heads/main\nauthor ${when}\ncommitter ${when}\n${data(`state ${k}`)}${changed.join('')}`;
    });
    this.told(['fast-import', '--quiet'], commits.join(''));
    this.git('reset', '-q', '--hard', 'main');
  }

  private told(words: readonly string[], input: string): string {
    const date = `2026-03-${String(1 + Math.floor(this.hour / 24)).padStart(2, '0')}T${String(this.hour % 24).padStart(2, '0')}:00:00Z`;
    const run = spawnSync('git', words, {
      cwd: this.path,
      encoding: 'utf8',
      input,
      env: {
        PATH: process.env.PATH,
        GIT_CONFIG_GLOBAL: '/dev/null',
        GIT_CONFIG_NOSYSTEM: '1',
        GIT_AUTHOR_NAME: author.name,
        GIT_AUTHOR_EMAIL: author.email,
        GIT_COMMITTER_NAME: author.name,
        GIT_COMMITTER_EMAIL: author.email,
        GIT_AUTHOR_DATE: date,
        GIT_COMMITTER_DATE: date,
      },
    });
    assert.equal(run.status, 0, `git ${words.join(' ')}: ${run.stderr}`);
    return run.stdout.trim();
  }

  write(files: Readonly<Record<string, string>>): void {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(this.path, name)), { recursive: true });
      writeFileSync(join(this.path, name), text);
    }
  }

  /** Commits these files (null: taken away) and tags the commit, a day after the one before. */
  commit(tag: string, files: Readonly<Record<string, string | null>>): void {
    this.hour += 24;
    for (const [name, text] of Object.entries(files)) {
      if (text === null) this.git('rm', '-q', name);
      else this.write({ [name]: text });
    }
    this.git('add', '-A');
    this.git('commit', '-q', '-m', tag);
    this.git('tag', tag);
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

function temporaryFolder(): string {
  return realpathSync(mkdtempSync(join(tmpdir(), 'thermogloss-history-')));
}
