import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { editorFolder, editorPackage } from './cacheFolder';
import { npmInstall } from './npmInstall';

/** A prepared editor: the Node.js it is built for, and the script that serves it. */
export interface ServedEditor {
  readonly node: string;
  readonly server: string;
}

/**
 * The editor that is served to a browser, prepared once and kept in the user's cache. It is built beside its place and
 * moved there when it is complete: a build that was stopped leaves nothing that looks finished.
 */
export async function servedEditor(say: (line: string) => void): Promise<ServedEditor> {
  const folder = editorFolder();
  if (!existsSync(join(folder, complete))) await prepare(folder, say);
  const vscode = join(folder, 'node_modules', editorPackage.name, 'lib', 'vscode');
  return { node: join(nodeFolder(folder), 'bin', 'node'), server: join(vscode, 'out', 'server-main.js') };
}

const complete = 'complete.json';

function nodePackage(): string {
  return `node-linux-${process.arch}`;
}

function nodeFolder(folder: string): string {
  return join(folder, 'node_modules', nodePackage());
}

async function prepare(folder: string, say: (line: string) => void): Promise<void> {
  if (process.platform !== 'linux') throw new Error('The served editor is prepared on Linux only.');
  const building = `${folder}.building-${process.pid}`;
  removeAbandoned(folder);
  rmSync(building, { recursive: true, force: true });
  mkdirSync(building, { recursive: true });
  try {
    say(`Preparing the served editor in ${folder} (once, some minutes)`);
    writeFileSync(join(building, 'package.json'), '{ "private": true }\n');
    const packages = [`${editorPackage.name}@${editorPackage.version}`, `${nodePackage()}@${editorPackage.node}`];
    // Its own script refuses to run under another Node.js; what it would do follows here.
    await npmInstall({ folder: building, arguments: ['--ignore-scripts', ...packages] });
    const vscode = join(building, 'node_modules', editorPackage.name, 'lib', 'vscode');
    const node = nodeFolder(building);
    say('Building the native parts of its server');
    await npmInstall({ folder: vscode, arguments: ['--omit=dev'], node });
    await npmInstall({ folder: join(vscode, 'extensions'), arguments: ['--omit=dev'], node });
    writeFileSync(join(building, complete), JSON.stringify({ packages }));
    rmSync(folder, { recursive: true, force: true });
    renameSync(building, folder);
    say('The served editor is ready');
  } catch (error) {
    rmSync(building, { recursive: true, force: true });
    // Another run may have been faster.
    if (existsSync(join(folder, complete))) return;
    throw new Error(`The served editor could not be prepared. ${hint}\n${String(error)}`, { cause: error });
  }
}

const hint = 'It needs the npm registry and the Debian packages that .ci/run names.';

/** Builds whose process is gone. */
function removeAbandoned(folder: string): void {
  const parent = dirname(folder);
  if (!existsSync(parent)) return;
  for (const name of readdirSync(parent)) {
    const pid = /\.building-(\d+)$/.exec(name)?.[1];
    if (pid === undefined || !name.startsWith(basename(folder)) || alive(Number(pid))) continue;
    rmSync(join(parent, name), { recursive: true, force: true });
  }
}

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
