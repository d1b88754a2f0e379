import { comparedOf } from '../presentation/diff/compared';
import { changeWords } from '../presentation/diff/changes';
import { compareNumbers } from '../presentation/diff/compareNumbers';
import type { DiffRow } from '../presentation/diff/model';
import { differenceText, rowMoved, valueText } from '../presentation/diff/shownRows';
import { approvalTolerance } from '../presentation/diff/tolerance';
import type { Snapshot } from '../engine/snapshot';
import type { Inputs } from './inputs';
import { storedResults, type ApprovalRecord, type ApprovedFile } from './record';

/** What differs from the record, in words, from what to what. */
export interface Differences {
  /** Data files and statements. */
  readonly inputs: readonly string[];
  /** Results beyond tolerance, and verdicts. */
  readonly results: readonly string[];
}

export function differences(record: ApprovalRecord, now: Inputs, snapshot: Snapshot): Differences {
  return {
    inputs: [...fileChanges(record.files, now.files), ...statementChanges(record.statements, now.statements)],
    results: resultChanges(record, snapshot),
  };
}

function fileChanges(before: readonly ApprovedFile[], now: readonly ApprovedFile[]): string[] {
  const at = (files: readonly ApprovedFile[], of: ApprovedFile): ApprovedFile | undefined =>
    files.find((f) => f.role === of.role && f.path === of.path);
  const words: string[] = [];
  const came = now.filter((f) => at(before, f) === undefined);
  for (const was of before) {
    const is = at(now, was);
    const file = `${was.role} ${was.path}`;
    if (is?.identity === was.identity) continue;
    if (is !== undefined) {
      words.push(`the content of ${file} changed, identity ${short(was)} → ${short(is)}`);
      continue;
    }
    const other = came.findIndex((f) => f.role === was.role);
    if (other < 0) words.push(`${file} (identity ${short(was)}) is not read now`);
    else {
      const [to] = came.splice(other, 1);
      words.push(`${file} → ${to.path}, identity ${short(was)} → ${short(to)}`);
    }
  }
  return [...words, ...came.map((f) => `${f.role} ${f.path} (identity ${short(f)}) takes part now`)];
}

function short({ identity }: ApprovedFile): string {
  return `${identity.slice(0, 8)}…`;
}

/** Statements that went and came; two of them are one that changed where they begin alike. */
export function statementChanges(before: readonly string[], now: readonly string[]): string[] {
  const gone = without(before, now);
  const came = without(now, before);
  const words: string[] = [];
  // First by keyword and name, then, for what has no name, by the keyword alone.
  for (const key of [nameKey, plainKey]) {
    for (const was of [...gone]) {
      const k = key(was);
      const is = k === null ? undefined : came.find((text) => key(text) === k);
      if (is === undefined) continue;
      gone.splice(gone.indexOf(was), 1);
      came.splice(came.indexOf(is), 1);
      words.push(changeWords(was, is));
    }
  }
  return [...words, ...gone.map((t) => changeWords(t, null)), ...came.map((t) => changeWords(null, t))];
}

/** What the first list holds beyond the second; equal texts cancel one by one. */
function without(texts: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return texts.filter((text) => {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

const unnamed = new Set([
  'run',
  'method',
  'programme',
  'require',
  'note',
  'mask',
  'allow',
  'rule',
  'blank',
  'join',
  'in',
]);

function nameKey(text: string): string {
  return text.split(/[ \n]/, 2).join(' ');
}

function plainKey(text: string): string | null {
  const word = text.split(/[ \n]/, 1)[0];
  return unnamed.has(word) ? word : null;
}

function resultChanges(record: ApprovalRecord, snapshot: Snapshot): string[] {
  const diff = compareNumbers(storedResults(record), comparedOf(snapshot), approvalTolerance);
  // A quantity that a later version of the program adds was not approved, and is no change of what was.
  const rows = diff.rows.filter((row) => rowMoved(row) && row.old !== null);
  const verdicts = diff.verdicts.filter((v) => v.old !== null && v.new !== null && v.old.verdict !== v.new.verdict);
  return [
    ...[...rows.filter((r) => r.main), ...rows.filter((r) => !r.main)].map(rowWords),
    ...verdicts.map((v) => `${v.label} from ${v.old!.verdict} to ${v.new!.verdict}`),
  ];
}

/** `First.loss from 14.800 ± 0.040 % (initial) to 14.910 ± 0.040 % (initial), +0.110 %`. */
function rowWords(row: DiffRow): string {
  if (row.new === null) return `${row.id} (${valueText(row.old)}) is not computed now`;
  if (row.difference === null)
    return `${row.id}: ${row.remark ?? `${valueText(row.old)} before, cannot be computed now`}`;
  const remark = row.remark === null ? '' : ` (${row.remark})`;
  const from = valueText(row.old);
  const to = valueText(row.new);
  if (row.difference === 0) return `${row.id} ${to}${remark}`;
  return `${row.id} from ${from} to ${to}, ${differenceText(row)}${remark}`;
}
