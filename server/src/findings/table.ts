import { codes, type FindingCode } from './codes';
import type { Severity } from './finding';
import type { FindingLimit, FindingRecord } from './record';
import { approvalRecords, requirementRecords } from './records/approval';
import { blankRecords } from './records/blanks';
import { dataRecords } from './records/data';
import { glassResultRecords } from './records/glassResults';
import { peakResultRecords } from './records/heatResults';
import { massPlausibilityRecords } from './records/massPlausibility';
import { massResultRecords } from './records/massResults';
import { methodRecords } from './records/method';
import { nameRecords } from './records/names';
import { rawSignalRecords } from './records/rawSignal';
import { syntaxRecords } from './records/syntax';
import { unitRecords } from './records/units';
import { windowRecords } from './records/windows';

/** One record a code, in the order of `codes`. */
export const findingTable: ReadonlyMap<FindingCode, FindingRecord> = ordered([
  ...syntaxRecords,
  ...nameRecords,
  ...unitRecords,
  ...dataRecords,
  ...rawSignalRecords,
  ...windowRecords,
  ...methodRecords,
  ...blankRecords,
  ...massResultRecords,
  ...massPlausibilityRecords,
  ...peakResultRecords,
  ...glassResultRecords,
  ...requirementRecords,
  ...approvalRecords,
]);

export function isFindingCode(text: string): text is FindingCode {
  return (codes as readonly string[]).includes(text);
}

/** The record of a code. Every code has one (a test holds it). */
export function findingRecord(code: FindingCode): FindingRecord {
  const record = findingTable.get(code);
  if (record === undefined) throw new Error(`no record for ${code}`);
  return record;
}

export function defaultSeverity(code: FindingCode): Severity {
  return findingRecord(code).severity;
}

/** The limit that `rule CODE Q because TEXT` sets; null where the code has none. */
export function settableLimit(code: FindingCode): FindingLimit | null {
  return findingRecord(code).limits.at(0) ?? null;
}

/** A limit of the record in its own unit: 0 the settable one, then the fixed ones. */
export function fixedLimit(code: FindingCode, index: number): number {
  const limit = findingRecord(code).limits.at(index);
  if (limit === undefined) throw new Error(`${code} has no limit ${index}`);
  return limit.value;
}

function ordered(records: readonly FindingRecord[]): ReadonlyMap<FindingCode, FindingRecord> {
  const rank = new Map(codes.map((code, index) => [code, index]));
  const sorted = [...records].sort((a, b) => (rank.get(a.code) ?? 0) - (rank.get(b.code) ?? 0));
  return new Map(sorted.map((record) => [record.code, record]));
}
