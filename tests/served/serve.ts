import { spawn, type ChildProcess } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { atTheEnd } from './ending';
import { quietSettings, type Settings } from './settings';
import type { ServedEditor } from './servedEditor';
import { temporaryFolder } from './temporaryFolder';

export interface Serving {
  /** Host and port. */
  readonly authority: string;
  /** Address of the workbench on a folder or a workspace file. `payload` are pairs that its environment is given. */
  address(opened: string, payload?: readonly (readonly [string, string])[]): string;
  /** Writes the person's settings anew: the quiet ones and these. Workbenches opened from then on have them. */
  settings(values: Settings): void;
  stop(): void;
}

export interface ServeOptions {
  /** Puts an extension where installed ones are; it is given the folder to make. */
  readonly install?: (folder: string) => void;
  /** Lets the workbench take test paths from its address. */
  readonly tests?: boolean;
  /** Folders are trusted only when a person says so, as in a desktop editor. Without it all are. */
  readonly trust?: boolean;
  readonly settings?: Settings;
  /** Every line that the server writes. */
  readonly log?: (line: string) => void;
}

/** Serves the editor on a free port of this machine, with data, settings and extensions of its own. */
export async function serve(editor: ServedEditor, options: ServeOptions = {}): Promise<Serving> {
  const { folder, remove } = temporaryFolder('editor');
  const data = join(folder, 'data');
  const extensions = join(folder, 'extensions');
  const user = join(data, 'data', 'User');
  mkdirSync(user, { recursive: true });
  mkdirSync(extensions);
  const settings = (values: Settings): void =>
    writeFileSync(join(user, 'settings.json'), JSON.stringify({ ...quietSettings, ...values }));
  settings(options.settings ?? {});
  options.install?.(join(extensions, 'thermogloss.thermogloss-0.0.0'));

  const server = spawn(
    editor.node,
    [
      editor.server,
      ...['--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms'],
      ...['--server-data-dir', data, '--extensions-dir', extensions],
      ...['--telemetry-level', 'off', ...(options.trust === true ? [] : ['--disable-workspace-trust'])],
      ...(options.tests === true ? ['--enable-smoke-test-driver'] : []),
    ],
    // Its own group: it starts extension hosts, which must end with it.
    { env: serverEnvironment(), stdio: ['ignore', 'pipe', 'pipe'], detached: true },
  );
  const stop = atTheEnd(() => {
    if (server.pid !== undefined && server.exitCode === null) {
      try {
        process.kill(-server.pid, 'SIGKILL');
      } catch {
        // It is gone already.
      }
    }
    remove();
  });
  try {
    const port = await listening(server, options.log ?? (() => undefined));
    const authority = `127.0.0.1:${port}`;
    const address = (opened: string, payload: readonly (readonly [string, string])[] = []): string => {
      const query = payload.length === 0 ? '' : `&payload=${encodeURIComponent(JSON.stringify(payload))}`;
      const kind = opened.endsWith('.code-workspace') ? 'workspace' : 'folder';
      return `http://${authority}/?${kind}=${encodeURIComponent(opened)}${query}`;
    };
    return { authority, address, settings, stop };
  } catch (error) {
    stop();
    throw error;
  }
}

/** The gallery of extensions is not asked; an editor around this process passes nothing on. */
function serverEnvironment(): NodeJS.ProcessEnv {
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(?:VSCODE_|ELECTRON_)/.test(name)));
  return { ...env, EXTENSIONS_GALLERY: '{}' };
}

function listening(server: ChildProcess, log: (line: string) => void): Promise<number> {
  return new Promise((done, failed) => {
    let written = '';
    const take = (text: Buffer): void => {
      for (const line of text
        .toString()
        .split('\n')
        .filter((l) => l.trim() !== ''))
        log(line);
      if (written.length > 20_000) return;
      written += text.toString();
      const port = /Extension host agent listening on (\d+)/.exec(written)?.[1];
      if (port !== undefined) done(Number(port));
    };
    server.stdout?.on('data', take);
    server.stderr?.on('data', take);
    server.on('error', failed);
    server.on('exit', (code) => failed(new Error(`The served editor ended with ${code}:\n${written}`)));
  });
}
