import { failed, success, type Outcome } from '../../base/outcome';
import type { SignalName } from '../../language/model';
import type { ReadingProblem } from '../run';
import type { ColumnDecision, ReadingChoices } from './choices';
import { columnMeaning, plainNumber, unitFits, type ColumnMeaning } from './columnMeaning';
import type { Dialect } from './dialect';
import type { HeaderCell } from './headerCell';
import type { Header } from './headerRows';
import { proposeColumns, type Proposal } from './proposeColumns';
import { sideBySide } from './sideBySide';
import { unitWord, type UnitWord } from './unitWords';

/** One column that is read. */
export interface ColumnAssignment {
  readonly signal: SignalName;
  /** From 1. */
  readonly number: number;
  readonly header: string;
  readonly unit: UnitWord;
}

/** The names and meanings of all columns, for the report, and those that are read. */
export interface Assignment {
  readonly cells: readonly HeaderCell[];
  readonly read: readonly ColumnAssignment[];
}

/**
 * Decides which column is which signal: what a person wrote first, then the header. Nothing is guessed: two candidates,
 * a missing unit, no header or no temperature give a problem that holds the statement which settles it.
 */
export function assignColumns(
  dialect: Dialect,
  header: Header,
  choices: ReadingChoices,
): Outcome<Assignment, ReadingProblem> {
  const { width } = dialect;
  const { cells } = header;
  const meanings = Array.from({ length: width }, (_, k) =>
    k < cells.length ? columnMeaning(cells[k]) : { signal: null, leftOut: false, unit: null },
  );
  const blocks = sideBySide(meanings.map(({ signal }) => signal));
  const block = chosenBlock(blocks, choices);
  if (!block.ok) return block;
  const within = (k: number): boolean => block.value === null || block.value.includes(k);

  const read: ColumnAssignment[] = [];
  for (const decision of choices.columns) {
    const column = decidedColumn(decision, cells, width, within);
    if (!column.ok) return column;
    const assigned = decided(decision, column.value, meanings[column.value], cells[column.value]?.text ?? '', choices);
    if (!assigned.ok) return assigned;
    read.push(assigned.value);
  }

  const taken = new Set(read.map(({ number }) => number - 1));
  const settled = new Set(read.map(({ signal }) => signal));
  const unclear: string[] = [];
  const unclearSignals = new Set<SignalName | null>();
  const candidates = new Map<SignalName, number[]>();
  meanings.forEach(({ signal }, k) => {
    if (signal === null || taken.has(k) || settled.has(signal) || !within(k)) return;
    candidates.set(signal, [...(candidates.get(signal) ?? []), k]);
  });
  for (const [signal, at] of candidates) {
    const { unit } = meanings[at[0]];
    if (at.length > 1) {
      unclear.push(`${at.map((k) => named(cells, k)).join(' and ')} can both be the ${signal}`);
      unclearSignals.add(signal);
    } else if (unit === null) {
      const { unitText } = cells[at[0]];
      const why = unitText === '' ? 'has no unit' : `has the unit "${unitText}", which is not known for ${signal}`;
      unclear.push(`${named(cells, at[0])} ${why}`);
      unclearSignals.add(signal);
    } else read.push({ signal, number: at[0] + 1, header: cells[at[0]].text, unit });
  }

  const has = (signal: SignalName): boolean => read.some((column) => column.signal === signal);
  const lacksTemperature = choices.purpose === 'run' && !has('temperature') && !unclearSignals.has('temperature');
  const lacksMeasured =
    ![...unclearSignals].some((signal) => signal !== 'time' && signal !== 'temperature') &&
    !read.some(({ signal }) => signal !== 'time' && signal !== 'temperature');
  if (lacksTemperature || lacksMeasured) {
    unclear.push(missingText(header, cells, lacksTemperature, lacksMeasured));
    unclearSignals.add(lacksTemperature && lacksMeasured ? null : lacksTemperature ? 'temperature' : null);
  }
  if (unclear.length === 0) {
    return success({ cells, read: read.sort((a, b) => a.number - b.number) });
  }
  const proposals = proposeColumns(dialect, cells, inBlock(meanings, within)).filter(({ signal }) => !has(signal));
  const written = choices.columns.map((decision) => writtenAgain(decision, read));
  return failed({
    problem: 'column-unclear',
    signal: unclearSignals.size === 1 ? [...unclearSignals][0] : null,
    message: unclear.join('; '),
    write: writeColumns([...written, ...proposals], choices.of),
  });
}

/** Columns of the other runs side by side are no candidates. */
function inBlock(meanings: readonly ColumnMeaning[], within: (k: number) => boolean): ColumnMeaning[] {
  return meanings.map((meaning, k) => (within(k) ? meaning : { signal: null, leftOut: true, unit: null }));
}

/** The column indices of the chosen run; null: all columns are of one run. */
function chosenBlock(
  blocks: readonly (readonly number[])[] | null,
  choices: ReadingChoices,
): Outcome<readonly number[] | null, ReadingProblem> {
  if (choices.block === null && choices.columns.some(({ column }) => 'number' in column)) return success(null);
  if (blocks === null) {
    if (choices.block === null || choices.block === 1) return success(null);
    const message = `there is no block ${choices.block}: the header shows one run only`;
    return failed({ problem: 'column-unclear', signal: null, message, write: null });
  }
  const of = choices.of === null ? '' : ` of "${choices.of}"`;
  const write = `reading${of}\n  block 1`;
  if (choices.block === null) {
    const message = `the file holds ${blocks.length} runs side by side`;
    return failed({ problem: 'column-unclear', signal: null, message, write });
  }
  const block = blocks[choices.block - 1] as readonly number[] | undefined;
  if (block !== undefined) return success(block);
  const message = `there is no block ${choices.block}: the file holds ${blocks.length} runs side by side`;
  return failed({ problem: 'column-unclear', signal: null, message, write });
}

function decidedColumn(
  { signal, column }: ColumnDecision,
  cells: readonly HeaderCell[],
  width: number,
  within: (k: number) => boolean,
): Outcome<number, ReadingProblem> {
  const unclear = (message: string): Outcome<number, ReadingProblem> =>
    failed({ problem: 'column-unclear', signal, message, write: null });
  if ('number' in column) {
    if (column.number >= 1 && column.number <= width) return success(column.number - 1);
    return unclear(`there is no column ${column.number}: the file has ${width}`);
  }
  const wanted = column.header.trim().replace(/\s+/g, ' ');
  const matches = (text: string): boolean => text === wanted;
  const all = cells.flatMap((cell, k) => (matches(cell.text) || (cell.text !== '' && matches(cell.name)) ? [k] : []));
  const own = all.filter(within);
  const found = own.length > 0 ? own : all;
  if (found.length === 1) return success(found[0]);
  const known = cells.flatMap(({ text }) => (text === '' ? [] : [`"${text}"`])).join(', ');
  if (found.length > 1) return unclear(`${found.length} columns are called "${wanted}": name the column by its number`);
  return unclear(
    `no column is called "${wanted}"${known === '' ? ': the file has no header' : `; there are ${known}`}`,
  );
}

function decided(
  decision: ColumnDecision,
  k: number,
  meaning: ColumnMeaning,
  header: string,
  choices: ReadingChoices,
): Outcome<ColumnAssignment, ReadingProblem> {
  const { signal } = decision;
  const measured = signal !== 'time' && signal !== 'temperature' && signal !== 'mass' && signal !== 'heatflow';
  const unit = decision.unit === null ? (meaning.unit ?? (measured ? plainNumber : null)) : unitWord(decision.unit);
  if (unit !== null && unitFits(signal, unit.kind)) return success({ signal, number: k + 1, header, unit });
  const proposal: Proposal = { signal, number: k + 1, unit: unitsOf(signal)[0] };
  const message =
    decision.unit === null && meaning.unit === null
      ? `column ${k + 1} has no unit in the file`
      : `${signal} cannot be in ${decision.unit ?? meaning.unit?.written ?? ''}; known are ${unitsOf(signal).join(', ')}`;
  return failed({ problem: 'column-unclear', signal, message, write: writeColumns([proposal], choices.of) });
}

function unitsOf(signal: SignalName): readonly string[] {
  if (signal === 'time') return ['s', 'min', 'h'];
  if (signal === 'temperature') return ['°C', 'K'];
  if (signal === 'mass') return ['mg', 'g', 'µg', '%', '1'];
  if (signal === 'heatflow') return ['mW', 'W/g', 'mW/mg', 'µV', 'µV/mg'];
  return signal.startsWith('ion(') ? ['A', 'nA', '1'] : ['1'];
}

function missingText(header: Header, cells: readonly HeaderCell[], temperature: boolean, measured: boolean): string {
  if (header.misfit) return 'the header does not have as many names as the table has columns';
  if (cells.length === 0) return 'the columns have no header';
  const lacking = [...(temperature ? ['temperature'] : []), ...(measured ? ['mass or heat flow'] : [])].join(
    ' and no ',
  );
  const known = cells.flatMap(({ text }) => (text === '' ? [] : [`"${text}"`])).join(', ');
  return `no ${lacking} is found among the columns ${known}`;
}

function named(cells: readonly HeaderCell[], k: number): string {
  return `column ${k + 1} "${cells[k].text}"`;
}

function writtenAgain({ signal }: ColumnDecision, read: readonly ColumnAssignment[]): Proposal {
  const column = read.find((assigned) => assigned.signal === signal)!;
  return { signal, number: column.number, unit: column.unit.written };
}

/** The statement as it would stand in a gloss. */
function writeColumns(proposals: readonly Proposal[], of: string | null): string | null {
  if (proposals.length === 0) return null;
  const head = of === null ? 'columns' : `columns of "${of}"`;
  return [head, ...proposals.map(({ signal, number, unit }) => `  ${signal} column ${number} in ${unit}`)].join('\n');
}
