import type { SignalName } from '../../language/model';
import type { HeaderCell } from './headerCell';
import { headerMeaning } from './headerWords';
import type { UnitKind, UnitWord } from './unitWords';

/** What the header says about one column. */
export interface ColumnMeaning {
  /** The signal it names; null: none, or left out on purpose. */
  readonly signal: SignalName | null;
  /** Known and not a signal: a rate, an error, numbering, another temperature. Never a candidate. */
  readonly leftOut: boolean;
  /** Fits the signal; null: none written, or not one that is known for it. */
  readonly unit: UnitWord | null;
}

/** Ion currents and absorbances in arbitrary units are plain numbers. */
export const plainNumber: UnitWord = {
  kind: 'mass',
  stored: '1',
  times: 1,
  over: 1,
  minus: 0,
  written: '1',
};

/** Joins name and unit of a header. A name and a unit that contradict each other give the signal without a unit. */
export function columnMeaning(cell: HeaderCell): ColumnMeaning {
  const { unit } = cell;
  const named = symbolMeaning(cell) ?? headerMeaning(cell.name);
  if (named === 'left out' || unit?.kind === 'derived') return { signal: null, leftOut: true, unit };
  if (named !== null) return { signal: named, leftOut: false, unit: fittingUnit(named, cell) };
  if (cell.name.trim() !== '' || unit === null) return { signal: null, leftOut: false, unit };
  // Nothing but a unit: it decides where it can mean one thing only.
  const alone = ({ time: 'time', temperature: 'temperature', heatflow: 'heatflow' } as const)[unit.kind as 'time'];
  const signal = alone ?? (unit.stored === 'mg' ? 'mass' : null);
  return { signal, leftOut: false, unit };
}

/** `t`, `w` and `W` mean different things; the unit says which. */
function symbolMeaning(cell: HeaderCell): SignalName | null {
  const symbol = cell.name.trim();
  if (symbol === 't' && cell.unit?.kind === 'time') return 'time';
  if (symbol === 't' && cell.unit?.kind === 'temperature') return 'temperature';
  if (/^w$/i.test(symbol) && cell.unit?.kind === 'mass') return 'mass';
  return null;
}

function fittingUnit(signal: SignalName, cell: HeaderCell): UnitWord | null {
  const { unit } = cell;
  if (signal.startsWith('ion(')) return unit?.kind === 'current' ? unit : plainNumber;
  if (signal.startsWith('absorbance(')) return plainNumber;
  return unit !== null && unitFits(signal, unit.kind) ? unit : null;
}

/** Whether a column of this signal may be written in a unit of this kind. */
export function unitFits(signal: SignalName, kind: UnitKind): boolean {
  if (signal === 'time' || signal === 'temperature' || signal === 'mass' || signal === 'heatflow')
    return signal === kind;
  return signal.startsWith('ion(') ? kind === 'current' || kind === 'mass' : kind === 'mass';
}
