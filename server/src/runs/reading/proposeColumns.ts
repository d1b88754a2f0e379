import type { SignalName } from '../../language/model';
import { cellText } from './cell';
import { unitFits, type ColumnMeaning } from './columnMeaning';
import type { Dialect } from './dialect';
import type { HeaderCell } from './headerCell';

/** A line of a proposed `columns` statement. */
export interface Proposal {
  readonly signal: SignalName;
  /** From 1. */
  readonly number: number;
  readonly unit: string;
}

interface Sketch {
  readonly number: number;
  readonly first: number;
  readonly last: number;
  readonly least: number;
  readonly most: number;
  readonly rising: boolean;
  readonly header: string;
}

/**
 * Proposes a signal and a unit for the columns of a table, from the words of the header where there are any and else from
 * the size of the numbers. It is only ever offered as text for a person to check, never used to read.
 */
export function proposeColumns(
  dialect: Dialect,
  cells: readonly HeaderCell[],
  meanings: readonly ColumnMeaning[],
): Proposal[] {
  const sketches = sketchColumns(dialect, cells).filter(({ number }) => !(meanings[number - 1]?.leftOut ?? false));
  const taken = new Set<number>();
  const proposals: Proposal[] = [];
  const propose = (signal: SignalName, sketch: Sketch | undefined, unit: (sketch: Sketch) => string): void => {
    if (sketch === undefined) return;
    taken.add(sketch.number);
    const known = meanings[sketch.number - 1]?.unit ?? null;
    const fits = known !== null && unitFits(signal, known.kind);
    proposals.push({ signal, number: sketch.number, unit: fits ? known.written : unit(sketch) });
  };
  const free = (): Sketch[] => sketches.filter(({ number }) => !taken.has(number));
  const meant = (signal: SignalName): Sketch | undefined =>
    free().find(({ number }) => meanings[number - 1]?.signal === signal);
  const unnamed = (): Sketch[] => free().filter(({ number }) => (meanings[number - 1]?.signal ?? null) === null);

  const candidate = unnamed()[0] as Sketch | undefined;
  const isTime = candidate?.rising && candidate.least >= 0 && (candidate.least === 0 || candidate.most > 400);
  const time = meant('time') ?? (isTime && sketches.length > 2 ? candidate : undefined);
  propose('time', time, () => 's');
  const temperature =
    meant('temperature') ??
    unnamed().find(({ least, most }) => most - least >= 2 && least >= -200 && most <= 2000) ??
    unnamed()[0];
  propose('temperature', temperature, ({ least }) => (least >= 200 ? 'K' : '°C'));
  if (time !== undefined && temperature !== undefined) fixTimeUnit(proposals, time, temperature);
  propose('mass', meant('mass'), massUnit);
  propose('heatflow', meant('heatflow'), ({ header }) => (/dta/i.test(header) ? 'µV' : 'mW'));
  if (!proposals.some(({ signal }) => signal === 'mass' || signal === 'heatflow')) {
    const next = unnamed()[0];
    if (next !== undefined && looksLikeMass(next, meanings[next.number - 1])) propose('mass', next, massUnit);
    else propose('heatflow', next, () => 'mW');
  }
  return proposals.sort((a, b) => a.number - b.number);
}

/** Seconds, unless a heating rate above 300 K/min would follow. */
function fixTimeUnit(proposals: Proposal[], time: Sketch, temperature: Sketch): void {
  const at = proposals.findIndex(({ signal }) => signal === 'time');
  const seconds = time.most - time.least;
  const tooFast = seconds > 0 && ((temperature.most - temperature.least) / seconds) * 60 > 300;
  if (tooFast && proposals[at].unit === 's') proposals[at] = { ...proposals[at], unit: 'min' };
}

function massUnit({ first, least, most }: Sketch): string {
  if (first > 0.8 && first < 1.2 && least > -0.2 && most < 1.3) return '1';
  return first > 95 && first < 102 && most < 110 ? '%' : 'mg';
}

function looksLikeMass(sketch: Sketch, meaning: ColumnMeaning | undefined): boolean {
  if (meaning?.unit) return meaning.unit.kind === 'mass';
  return (
    sketch.first > 0 &&
    sketch.last < sketch.first &&
    sketch.least >= -0.05 * sketch.first &&
    sketch.most < 1.2 * sketch.first
  );
}

function sketchColumns({ records, start, width, decimal }: Dialect, cells: readonly HeaderCell[]): Sketch[] {
  const sketches: Sketch[] = [];
  for (let k = 0; k < width; k++) {
    const values = records
      .slice(start)
      .map(({ fields }) => cellText(fields[k] ?? '', decimal))
      .filter((cell) => typeof cell === 'number');
    if (values.length === 0) continue;
    sketches.push({
      number: k + 1,
      first: values[0],
      last: values[values.length - 1],
      least: values.reduce((a, b) => Math.min(a, b)),
      most: values.reduce((a, b) => Math.max(a, b)),
      rising: values.every((value, i) => i === 0 || value >= values[i - 1]) && values[values.length - 1] > values[0],
      header: cells[k]?.text ?? '',
    });
  }
  return sketches;
}
