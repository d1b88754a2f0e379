import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { delimiter } from 'node:path';

export interface Install {
  readonly folder: string;
  readonly arguments: readonly string[];
  /** Folder of the Node.js to build for: its `bin` stands first on the path, its headers are used. */
  readonly node?: string;
}

/** Runs `npm install` in a folder. Fails with the end of what npm wrote. */
export function npmInstall(install: Install): Promise<void> {
  const wanted = ['install', '--engine-strict=false', '--no-audit', '--no-fund', ...install.arguments];
  return new Promise((done, failed) => {
    const npm = spawn('npm', wanted, {
      cwd: install.folder,
      env: npmEnvironment(install.node),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let written = '';
    const keep = (text: Buffer): void => {
      written = (written + text.toString()).slice(-6000);
    };
    npm.stdout.on('data', keep);
    npm.stderr.on('data', keep);
    npm.on('error', failed);
    npm.on('close', (code) => {
      if (code === 0) done();
      else failed(new Error(`npm ${wanted.join(' ')} ended with ${code} in ${install.folder}:\n${written}`));
    });
  });
}

/** A script that npm started passes the settings of this project on: they are not those of the editor. */
function npmEnvironment(node: string | undefined): NodeJS.ProcessEnv {
  const ours =
    /^npm_(?:package_|lifecycle_|config_(?:engine_strict|local_prefix|prefix|omit|include|ignore_scripts)$)/i;
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !ours.test(name)));
  // Native parts are compiled on all cores.
  env.JOBS = String(availableParallelism());
  if (node !== undefined) {
    env.PATH = [`${node}/bin`, process.env.PATH ?? ''].join(delimiter);
    env.npm_config_nodedir = node;
  }
  return env;
}
