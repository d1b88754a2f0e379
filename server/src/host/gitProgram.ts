import { accessSync, constants } from 'node:fs';
import { posix, win32 } from 'node:path';
import { kindOf } from './root';

const found = new Map<string, string>();

/**
 * The git program as an absolute path, by the folders that PATH names absolutely: of a relative one, or of none, a workspace
 * would decide what is run. Looked for once a PATH. Where there is none, a path at which nothing stands: starting it fails
 * as that of a missing program does.
 */
export function gitProgram(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): string {
  const path = pathOf(environment, platform);
  const known = found.get(path);
  if (known !== undefined) return known;
  const { name, all } = candidates(path, platform);
  const program = all.find(canRun);
  if (program === undefined) return all[0] ?? (platform === 'win32' ? `C:\\none\\${name}` : `/none/${name}`);
  found.set(path, program);
  return program;
}

/** Where a program of that name may stand, in the order of PATH. */
export function candidates(path: string, platform: NodeJS.Platform): { readonly name: string; readonly all: string[] } {
  const { delimiter, isAbsolute, join } = platform === 'win32' ? win32 : posix;
  const name = platform === 'win32' ? 'git.exe' : 'git';
  // `\\bin` is absolute to Windows, but lies on the drive of the current folder.
  const whole = (folder: string): boolean =>
    isAbsolute(folder) && (platform !== 'win32' || /^([a-z]:|\\\\)/i.test(folder));
  const folders = path
    .split(delimiter)
    .map((folder) => (platform === 'win32' ? folder.replace(/^"(.*)"$/, '$1') : folder));
  return { name, all: folders.filter(whole).map((folder) => join(folder, name)) };
}

/** Windows names it `Path`, in whatever case. */
function pathOf(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): string {
  if (platform !== 'win32') return environment['PATH'] ?? '/usr/local/bin:/usr/bin:/bin';
  const name = Object.keys(environment).find((key) => key.toUpperCase() === 'PATH');
  return (name === undefined ? undefined : environment[name]) ?? '';
}

function canRun(program: string): boolean {
  if (kindOf(program) !== 'file') return false;
  try {
    accessSync(program, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
