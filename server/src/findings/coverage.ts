import type { FindingCode } from './codes';
import { reviewRules } from './reviewRules';
import { findingTable } from './table';

/** One review rule with the codes that hold it, or the data that it needs and that do not exist yet. */
export interface CoverageRow {
  readonly rule: string;
  readonly about: string;
  readonly codes: readonly FindingCode[];
  /** For a rule without code: what is missing. For one with codes: the part they leave out, or null. */
  readonly lacks: string | null;
}

const lacking: Readonly<Record<string, string>> = {
  A02: 'filling of the crucible: a bulk density of the specimen',
  A10: 'conditions from the header of the data file (gas, crucible, date, sensor) to compare with the gloss',
  B03: 'count of runs and interventions since the blank: an instrument log',
  B10: 'time in which the old gas is cleared: the volume of the furnace (here a fixed time after the switch)',
  B11: 'order of corrections made before the export: a history in the file (here it is fixed: blank, calibration, normalisation)',
  D08: 'slope of a reference melting at the same rate: a standard run',
  D11: 'that a peak is claimed to be a melting: a purpose of the statement',
  D12: 'the reaction a peak stands for, with a reference heat: a link from peak to reaction',
  D14: 'the purpose of a result (as received, or of the material): a purpose of the statement',
  G07: 'transitions of other runs: a study over several glosses',
  M13: 'the ratio of steps a substance must show: a link from step to reaction',
  M14: 'carbon dioxide seen during burn-off: an evolved-gas signal with its assignment',
  M17: 'waiting times and first readings of a whole series: a study over several glosses',
};

/** All 75 rules in their order, generated from the `rules` of the records. */
export function coverageTable(): readonly CoverageRow[] {
  const byRule = new Map<string, FindingCode[]>();
  for (const record of findingTable.values()) {
    for (const rule of record.rules) byRule.set(rule, [...(byRule.get(rule) ?? []), record.code]);
  }
  return reviewRules.map(([rule, about]) => ({
    rule,
    about,
    codes: byRule.get(rule) ?? [],
    lacks: lacking[rule] ?? null,
  }));
}

export function builtRules(): number {
  return coverageTable().filter((row) => row.codes.length > 0).length;
}
