import type { FindingCode } from './codes';
import type { Severity } from './finding';

export type Family = 'syntax' | 'names' | 'units' | 'data' | 'windows' | 'method' | 'results' | 'approval';

/** A number a finding is decided by, in the unit that stands beside it. */
export interface FindingLimit {
  readonly value: number;
  /** Unit in the spelling of the language; empty for a plain number. */
  readonly unit: string;
  readonly meaning: string;
}

/** A gloss that shows the finding (or its near miss), and what the run must hold where that decides. */
export interface FindingExample {
  readonly gloss: string;
  readonly data: string | null;
}

/** Everything there is to say about one code. Pages, messages' limits and severities come from here alone. */
export interface FindingRecord {
  readonly code: FindingCode;
  readonly family: Family;
  /** Severity where nothing else is said by the rule itself. */
  readonly severity: Severity;
  /** What becomes of the value: it fails, it becomes *apparent*, or it stands. */
  readonly effect: 'fails' | 'apparent' | null;
  readonly allowable: boolean;
  readonly title: string;
  /** What it means for the number and what to do. `{0}`, `{1}` … quote the limits below. */
  readonly explanation: string;
  /** The first is what `rule CODE Q because TEXT` sets; the others are fixed. */
  readonly limits: readonly FindingLimit[];
  /** Review rules it covers. */
  readonly rules: readonly string[];
  readonly fires: FindingExample;
  readonly silent: FindingExample;
}

export interface FamilyRecord extends Omit<FindingRecord, 'family' | 'allowable' | 'fires' | 'silent'> {
  readonly fires: string | readonly [gloss: string, data: string];
  readonly silent: string | readonly [gloss: string, data: string];
}

/** Records of one family in the short form the record files are written in. */
export function ofFamily(family: Family, allowable: boolean, records: readonly FamilyRecord[]): FindingRecord[] {
  return records.map((record) => ({
    ...record,
    family,
    allowable,
    fires: example(record.fires),
    silent: example(record.silent),
  }));
}

function example(short: FamilyRecord['fires']): FindingExample {
  return typeof short === 'string' ? { gloss: short, data: null } : { gloss: short[0], data: short[1] };
}
