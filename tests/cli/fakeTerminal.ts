import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Clock } from '../../server/src/cli/clock';
import { run } from '../../server/src/cli/run';
import type { Terminal } from '../../server/src/cli/terminal';
import type { Workspaces } from '../../server/src/cli/workspaces';

export interface Said {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

export interface Surroundings {
  readonly cwd?: string;
  readonly environment?: Readonly<Record<string, string>>;
  readonly input?: string | Uint8Array;
  readonly isTerminal?: boolean;
  readonly workspaces?: Workspaces;
  readonly clock?: Clock;
}

/** One call of the command line in this process, with everything it said. */
export async function say(words: readonly string[], around: Surroundings = {}): Promise<Said> {
  let out = '';
  let error = '';
  const terminal: Terminal = {
    cwd: around.cwd ?? process.cwd(),
    environment: around.environment ?? {},
    outIsTerminal: around.isTerminal ?? false,
    errorIsTerminal: around.isTerminal ?? false,
    columns: around.isTerminal === true ? 100 : null,
    out: (text) => (out += text),
    error: (text) => (error += text),
    input: () =>
      Promise.resolve(
        typeof around.input === 'string' ? Buffer.from(around.input) : (around.input ?? new Uint8Array()),
      ),
  };
  const code = await run(words, terminal, around.workspaces, around.clock);
  return { code, out, error };
}

/** A folder with these files, taken away by `remove`. */
export function folderWith(files: Readonly<Record<string, string>>): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'thermogloss-'));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), text);
  }
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
