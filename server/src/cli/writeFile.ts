import { realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Trouble } from './exitCodes';

/** Writes a file whole or not at all: an interrupted call leaves the old one. A link is followed, the mode is kept. */
export function writeWhole(path: string, text: string): void {
  const target = real(path);
  const beside = besideOf(target);
  try {
    writeFileSync(beside, text, { mode: modeOf(target) });
    renameSync(beside, target);
  } catch (problem) {
    rmSync(beside, { force: true });
    throw new Trouble(`${path} cannot be written (${codeOf(problem)})`);
  }
}

/** Writes a new file whole; `false` where one is there already, which stays as it is. */
export function writeNew(path: string, text: string): boolean {
  try {
    // `wx` decides and creates in one step: no second program can slip in between.
    writeFileSync(path, text, { flag: 'wx' });
    return true;
  } catch (problem) {
    if (codeOf(problem) === 'EEXIST') return false;
    throw new Trouble(`${path} cannot be written (${codeOf(problem)})`);
  }
}

function besideOf(path: string): string {
  return join(dirname(path), `.${basename(path)}.${process.pid}.new`);
}

function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function modeOf(path: string): number {
  try {
    return statSync(path).mode & 0o777;
  } catch {
    return 0o666;
  }
}

function codeOf(problem: unknown): string {
  return (problem as NodeJS.ErrnoException).code ?? 'unknown';
}
