import { spawn, type ChildProcess } from 'node:child_process';
import { gitProgram } from './gitProgram';

// The git program with its plumbing commands alone, which run no filter, hook, pager or helper of the repository: what lies
// in a workspace executes nothing. Nothing is fetched: no protocol is allowed.
const safe = ['-c', 'core.fsmonitor=false', '-c', 'core.hooksPath=/dev/null', '-c', 'core.quotePath=false'];
const quiet = {
  GIT_OPTIONAL_LOCKS: '0',
  GIT_NO_LAZY_FETCH: '1',
  GIT_ALLOW_PROTOCOL: '',
  GIT_TERMINAL_PROMPT: '0',
  GIT_PAGER: 'cat',
  LC_ALL: 'C',
  // Windows looks for a program in the current folder first, unless this is set.
  NoDefaultCurrentDirectoryInExePath: '1',
};

/** What a hook is started with: it would stand for the repository of the folder that is asked about. */
const ofAnother = [
  'GIT_DIR',
  'GIT_WORK_TREE',
  'GIT_PREFIX',
  'GIT_INDEX_FILE',
  'GIT_COMMON_DIR',
  'GIT_OBJECT_DIRECTORY',
];

function environment(): NodeJS.ProcessEnv {
  const own = Object.entries(process.env).filter(([name]) => !ofAnother.includes(name.toUpperCase()));
  return { ...Object.fromEntries(own), ...quiet };
}

export type GitProcess = ChildProcess;

export type GitAnswer =
  | { readonly ok: true; readonly out: Buffer }
  | { readonly ok: false; readonly missing: boolean; readonly message: string };

/** Runs one git command in a folder. `missing`: there is no git program. */
export function git(folder: string, words: readonly string[], input: string | null = null): Promise<GitAnswer> {
  return new Promise((done) => {
    const child = startGit(folder, words, input !== null);
    const out: Buffer[] = [];
    const errors: Buffer[] = [];
    child.stdout!.on('data', (piece: Buffer) => out.push(piece));
    child.stderr!.on('data', (piece: Buffer) => errors.push(piece));
    child.on('error', (error: NodeJS.ErrnoException) =>
      done({ ok: false, missing: error.code === 'ENOENT', message: error.message }),
    );
    child.on('close', (code) => {
      if (code === 0) done({ ok: true, out: Buffer.concat(out) });
      else done({ ok: false, missing: false, message: Buffer.concat(errors).toString('utf8').trim() });
    });
    if (input !== null) {
      child.stdin!.on('error', () => undefined);
      child.stdin!.end(input);
    }
  });
}

/** The process of one git command, spoken to over its standard streams. */
export function startGit(folder: string, words: readonly string[], isToldMore: boolean): GitProcess {
  return spawn(gitProgram(process.env, process.platform), [...safe, ...words], {
    cwd: folder,
    env: environment(),
    stdio: [isToldMore ? 'pipe' : 'ignore', 'pipe', 'pipe'],
    windowsHide: true,
  });
}

/** Whether this program waits for the process at its own end. */
export function keepRunning(child: GitProcess, isWaitedFor: boolean): void {
  // The streams to a process are sockets, which their types do not say.
  for (const one of [child, child.stdin, child.stdout, child.stderr] as Pick<GitProcess, 'ref' | 'unref'>[]) {
    if (isWaitedFor) one.ref();
    else one.unref();
  }
}

/** `user.name` as it is set for a folder; null: there is none, or no git program. */
export async function userName(folder: string): Promise<string | null> {
  const answer = await git(folder, ['config', '--get', 'user.name']);
  const name = answer.ok ? answer.out.toString('utf8').trim() : '';
  return name === '' ? null : name;
}
