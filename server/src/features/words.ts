import type { BasisRecord } from '../language/vocabulary/bases';
import { molarMassRecord, type FunctionRecord } from '../language/vocabulary/functions';
import type { QuantityRecord } from '../language/vocabulary/quantities';
import type { ClauseRecord, StatementRecord } from '../language/vocabulary/record';
import type { SignalRecord } from '../language/vocabulary/signals';
import { code, prose, rows, title, type Block } from './prose';

/** What the vocabulary says about its words, for hovers, completions and signatures: one text for all of them. */
export function statementBlocks(record: StatementRecord): readonly Block[] {
  return [title(record.form), prose(record.prose), code(record.example)];
}

export function clauseBlocks(clause: ClauseRecord): readonly Block[] {
  return [
    title(clause.form),
    prose(clause.prose),
    ...(clause.default === null ? [] : [prose(`Where it is not written: ${clause.default}.`)]),
    code(`  ${clause.example}`),
  ];
}

export function quantityBlocks(record: QuantityRecord): readonly Block[] {
  return [
    prose(record.definition),
    rows(['unit', record.unit === '1' ? 'a plain number' : record.unit], ['after', record.standard]),
  ];
}

/** null: `M( )`, which reads a formula and is no function. */
export function functionBlocks(record: FunctionRecord | null): readonly Block[] {
  const { form, prose: words, example } = record ?? molarMassRecord;
  return [title(form), prose(words), code(example)];
}

export function basisBlocks(record: BasisRecord): readonly Block[] {
  return [title(`per ${record.words}`), prose(record.prose), code(`  ${record.example}`)];
}

export function signalBlocks(record: SignalRecord): readonly Block[] {
  return [title(record.example), prose(record.prose)];
}
