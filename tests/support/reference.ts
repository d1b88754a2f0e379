import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { skip } from './skip';

/**
 * The folder of exact curves and their answers, beside the open-data folder named by GLOSS_OPEN_DATA; null where the
 * variable is unset or the folder is not there. The curves are computed from closed forms with 40 digits by a script
 * of their own; a suite that uses them skips itself by name without them.
 */
export function referenceFolder(): string | null {
  const data = process.env.GLOSS_OPEN_DATA;
  if (data === undefined || data === '') return null;
  const folder = resolve(data, '..', 'reference', 'synthetic');
  return existsSync(join(folder, 'answers.json')) ? folder : null;
}

/** The open-data folder, or null. */
export function openDataFolder(): string | null {
  const data = process.env.GLOSS_OPEN_DATA;
  return data !== undefined && data !== '' && existsSync(data) ? resolve(data) : null;
}

/** Skips the running test, or from a `before` its suite, without the reference curves; else gives their folder. */
export function needReference(context: Mocha.Context): string {
  return (
    referenceFolder() ?? skip(context, 'the exact curves lie beside the open data, which GLOSS_OPEN_DATA does not name')
  );
}

/** Skips the running test, or from a `before` its suite, without the open data; else gives their folder. */
export function needOpenData(context: Mocha.Context): string {
  return openDataFolder() ?? skip(context, 'needs the open data, which GLOSS_OPEN_DATA does not name');
}

/** Named columns of a plain comma file with one header row. */
export function readColumns<Name extends string>(path: string, names: readonly Name[]): Record<Name, Float64Array> {
  const lines = readFileSync(path, 'utf8').split('\n');
  const header = lines[0].trim().split(',');
  const rows = lines.slice(1).filter((line) => line.trim() !== '');
  const columns = {} as Record<Name, Float64Array>;
  for (const name of names) {
    const at = header.indexOf(name);
    if (at < 0) throw new Error(`${path} has no column ${name}`);
    columns[name] = Float64Array.from(rows, (row) => Number(row.split(',')[at]));
  }
  return columns;
}

/** The exact answers that go with the curves, one record a case. */
export function readAnswers(folder: string): Record<string, unknown> {
  return JSON.parse(readFileSync(join(folder, 'answers.json'), 'utf8')) as Record<string, unknown>;
}
