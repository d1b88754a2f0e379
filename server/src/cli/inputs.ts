import { statSync } from 'node:fs';
import { isAbsolute, join, parse, relative, resolve, sep } from 'node:path';
import { BadUsage, Trouble } from './exitCodes';

/** Standard input among the inputs. */
export const standardInput = '-';

/** What a folder stands for, and what patterns pick. */
export interface Wanted {
  readonly extension: string | null;
  readonly standardInput: boolean;
}

export const glosses: Wanted = { extension: '.gloss', standardInput: true };
export const runs: Wanted = { extension: null, standardInput: false };

/**
 * Absolute paths of what was named, each once, in the order named; matches of one pattern in order of their path. A path
 * that exists is itself, whatever characters it holds; else it is read as a pattern. Nothing found is trouble, before any
 * work is done.
 */
export async function expandInputs(operands: readonly string[], cwd: string, wanted: Wanted): Promise<string[]> {
  const found = new Set<string>();
  for (const operand of operands) {
    for (const path of await expand(operand, cwd, wanted)) found.add(path);
  }
  return [...found];
}

async function expand(operand: string, cwd: string, wanted: Wanted): Promise<string[]> {
  if (operand === standardInput) {
    if (wanted.standardInput) return [standardInput];
    throw new BadUsage('a run is read from its file, not from standard input');
  }
  const path = resolve(cwd, operand);
  const kind = kindAt(path);
  if (kind === 'file') return [path];
  if (kind === 'folder') {
    if (wanted.extension === null) throw new Trouble(`${operand} is a folder`);
    const inside = await match('**/*', path, wanted);
    if (inside.length === 0) throw new Trouble(`the folder ${operand} holds no ${wanted.extension} file`);
    return inside;
  }
  if (!/[*?[\]{}()!]/.test(operand)) throw new Trouble(`there is no file ${operand}`);
  const { base, pattern } = splitPattern(operand, cwd);
  const matches = await match(pattern, base, wanted);
  if (matches.length === 0)
    throw new Trouble(`no ${wanted.extension ?? ''} file matches ${operand}`.replace('  ', ' '));
  return matches;
}

function kindAt(path: string): 'file' | 'folder' | null {
  try {
    return statSync(path).isDirectory() ? 'folder' : 'file';
  } catch {
    return null;
  }
}

/** An absolute or climbing pattern, as the folder that holds no pattern characters and the rest. */
function splitPattern(operand: string, cwd: string): { base: string; pattern: string } {
  const slashed = sep === '\\' ? operand.replaceAll('\\', '/') : operand;
  const parts = slashed.split('/');
  const first = parts.findIndex((part) => /[*?[\]{}()!]/.test(part));
  const fixed = parts.slice(0, first).join('/');
  const root = isAbsolute(operand) ? parse(operand).root : cwd;
  const base = isAbsolute(operand) ? join(root, relative(root, fixed === '' ? root : fixed)) : resolve(cwd, fixed);
  return { base, pattern: parts.slice(first).join('/') };
}

async function match(pattern: string, base: string, wanted: Wanted): Promise<string[]> {
  // Loaded only where there is a pattern: most calls name their files.
  const { glob } = await import('tinyglobby');
  const paths = await glob(pattern, {
    cwd: base,
    onlyFiles: true,
    followSymbolicLinks: false,
    expandDirectories: false,
    ignore: ['**/node_modules/**'],
  });
  return paths
    .filter((path) => wanted.extension === null || path.endsWith(wanted.extension))
    .sort((a, b) => (a < b ? -1 : 1))
    .map((path) => resolve(base, path));
}
