import type { Host } from '../../base/host';
import type { SignalName } from '../../language/model';
import type { ReadingChoices } from './choices';
import { columnMeaning } from './columnMeaning';
import { findDialect } from './dialect';
import { findHeader } from './headerRows';
import { headLines } from './readRun';

/** One column of a data file as its header names it. */
export interface FileColumn {
  /** From 1. */
  readonly number: number;
  /** Empty where the file has no header. */
  readonly header: string;
  readonly unitText: string;
  /** What the header says it is; null: nothing that is known. */
  readonly signal: SignalName | null;
}

/**
 * The columns of a data file from its first lines alone, whether or not it is settled which signal each is. Empty where
 * the file cannot be opened or shows no table.
 */
export async function readColumns(host: Host, path: string, choices: ReadingChoices): Promise<readonly FileColumn[]> {
  const file = await host.read(path, choices.encoding ?? undefined);
  if (!file.ok) return [];
  const { delimiter, decimal } = choices;
  const dialect = findDialect(await headLines(host, file), {
    delimiter: delimiter === null ? undefined : /^ +$/.test(delimiter) ? null : delimiter,
    decimal: decimal === '.' || decimal === ',' ? decimal : null,
    from: (choices.skip ?? 0) + (choices.header ?? 0) + 1,
  });
  if (dialect === null) return [];
  const { cells } = findHeader(dialect, choices.header);
  return Array.from({ length: dialect.width }, (_, k) => ({
    number: k + 1,
    header: cells[k]?.text ?? '',
    unitText: cells[k]?.unitText ?? '',
    signal: cells[k] === undefined ? null : columnMeaning(cells[k]).signal,
  }));
}
