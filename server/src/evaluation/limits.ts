import type { FindingCode } from '../findings/codes';
import { findingRecord } from '../findings/table';
import type { Program } from '../language/program';
import { differenceToSI } from '../quantities/convert';
import { parseUnit } from '../quantities/parseUnit';

/** The limit in force for a finding, in the unit of its record: what `rule` sets, else the default. */
export function effectiveLimit(program: Program, code: FindingCode): number {
  const record = findingRecord(code);
  const limit = record.limits[0];
  if (limit === undefined) return NaN;
  // A rule of the gloss itself stands after one of its method.
  const rules = program.rules.filter((r) => r.statement.code === code);
  const rule = rules.find((r) => r.file === 'gloss') ?? rules[0];
  if (rule === undefined || rule.failed !== null) return limit.value;
  const amount = rule.statement.limit;
  const unit = limit.unit === '' ? null : parseUnit(limit.unit);
  if (amount.unit === null) return amount.value;
  const si = differenceToSI(amount.value, amount.unit);
  return unit !== null && unit.ok ? si / unit.value.factor : si;
}
