import { plainNumber } from '../plainNumber';
import { stateWords, unitText } from '../shown';
import type { ComparedGloss, ComparedRequirement, ComparedResult } from './compared';
import { besideMoved, sameLimit } from './beside';
import { matchNames } from './matchNames';
import type { DiffRow, VerdictRow } from './model';
import { allowedDifference, countedUncertainty, type Tolerance } from './tolerance';
import { convertedTo } from './units';

/** Result by result: what was there, what is there, by how much it moved and whether that is beyond tolerance. */
export function diffRows(older: ComparedGloss, newer: ComparedGloss, tolerance: Tolerance): DiffRow[] {
  const names = matchNames(older, newer);
  const oldById = new Map(older.results.map((r) => [r.id, r]));
  const seen = new Set<string>();
  const rows = newer.results.map((to): DiffRow => {
    const was = names.get(to.name);
    // The result of a `let` has the name alone.
    const oldId = was === undefined ? null : to.id === to.name ? was : `${was}.${to.quantity}`;
    const from = oldId === null ? undefined : oldById.get(oldId);
    if (from === undefined) return alone(null, to);
    seen.add(from.id);
    return pair(from, to, tolerance);
  });
  const gone = older.results.filter((r) => !seen.has(r.id)).map((r) => alone(r, null));
  return [...rows, ...gone];
}

function alone(from: ComparedResult | null, to: ComparedResult | null): DiffRow {
  const one = (from ?? to)!;
  return {
    id: one.id,
    was: null,
    status: from === null ? (one.state === 'failed' ? 'cannot compute' : 'added') : 'removed',
    old: from,
    new: to,
    difference: null,
    relative: null,
    unit: one.unit,
    uncertainty: null,
    tolerance: null,
    remark: from === null && one.state === 'failed' ? failureWords(one, 'now') : null,
    causes: [],
    together: null,
    main: one.main,
  };
}

function pair(from: ComparedResult, to: ComparedResult, tolerance: Tolerance): DiffRow {
  const start = {
    id: to.id,
    was: from.id === to.id ? null : from.id,
    old: from,
    new: to,
    unit: to.unit,
    causes: [],
    together: null,
    main: from.main || to.main,
  };
  const none = { difference: null, relative: null, uncertainty: null, tolerance: null };
  if (to.state === 'failed' || from.state === 'failed') {
    if (from.state === to.state && sameReasons(from, to)) {
      return { ...start, ...none, status: 'equal', remark: failureWords(to, 'on both sides') };
    }
    const remark = to.state === 'failed' ? failureWords(to, 'now') : failureWords(from, 'before');
    return { ...start, ...none, status: to.state === 'failed' ? 'cannot compute' : 'changed', remark };
  }
  if (from.value === null || to.value === null) return { ...start, ...none, ...wordless(from, to, tolerance) };
  const factor = convertedTo(from.unit, to.unit);
  if (factor === null) {
    const remark = `unit changed from ${from.unit || '1'} to ${to.unit || '1'}`;
    return { ...start, ...none, status: 'changed', remark };
  }
  const before = from.value * factor;
  const difference = to.value - before;
  const oldU = from.uncertainty === null ? null : from.uncertainty * factor;
  const uncertainty = countedUncertainty(tolerance, oldU, to.uncertainty);
  const allowed = allowedDifference(tolerance, to, before, to.value, uncertainty);
  const remark = joined([remarkOf(from, to), besideMoved(from, to, factor, tolerance)]);
  const moved = Math.abs(difference) > allowed || remark !== null;
  return {
    ...start,
    status: moved ? 'changed' : difference === 0 ? 'equal' : 'within tolerance',
    difference,
    relative: before === 0 ? null : difference / Math.abs(before),
    uncertainty,
    tolerance: allowed,
    remark,
  };
}

/** A change of what the number is, beside its size. */
function remarkOf(from: ComparedResult, to: ComparedResult): string | null {
  const words: string[] = [];
  if (from.basis !== to.basis) words.push(`basis changed from ${from.basis ?? 'none'} to ${to.basis ?? 'none'}`);
  if (from.state !== to.state) {
    const word = (r: ComparedResult): string => stateWords[r.state] || 'a number';
    words.push(`was ${word(from)}, is ${word(to)}${to.reasons.length === 0 ? '' : ` (${to.reasons.join(', ')})`}`);
  }
  return words.length === 0 ? null : words.join('; ');
}

function joined(remarks: readonly (string | null)[]): string | null {
  const words = remarks.filter((r) => r !== null);
  return words.length === 0 ? null : words.join('; ');
}

/** At least one side has no value though it did not fail: not detected, or a sum's part. */
function wordless(from: ComparedResult, to: ComparedResult, tolerance: Tolerance): Pick<DiffRow, 'status' | 'remark'> {
  const same =
    from.value === to.value && from.state === to.state && from.unit === to.unit && sameLimit(from, to, tolerance);
  if (same) return { status: 'equal', remark: null };
  return { status: 'changed', remark: `${valueWords(from)} before, ${valueWords(to)} now` };
}

function valueWords(r: ComparedResult): string {
  if (r.value !== null) return `${plainNumber(r.value, 4)}${unitText(r.unit)}`;
  if (r.state === 'not-detected' && r.limit !== null) {
    return `not detected (< ${plainNumber(r.limit, 2)}${unitText(r.unit)})`;
  }
  return stateWords[r.state];
}

function failureWords(r: ComparedResult, when: string): string {
  return r.reasons.length === 0 ? `failed ${when}` : `failed ${when}: ${r.reasons.join(', ')}`;
}

function sameReasons(a: ComparedResult, b: ComparedResult): boolean {
  return a.reasons.join() === b.reasons.join();
}

/** Requirements match by name, then by what they ask of: a changed limit reads as a decision. */
export function verdictRows(older: ComparedGloss, newer: ComparedGloss): VerdictRow[] {
  const free = new Set(older.requirements);
  const find = (to: ComparedRequirement): ComparedRequirement | null => {
    const named = [...free].find((r) => r.name !== null && r.name === to.name);
    const found = named ?? [...free].find((r) => r.asks === to.asks) ?? null;
    if (found !== null) free.delete(found);
    return found;
  };
  const rows = newer.requirements.map((to): VerdictRow => {
    const from = find(to);
    return {
      label: to.name ?? to.asks,
      status: from === null ? 'added' : from.verdict === to.verdict && from.text === to.text ? 'equal' : 'changed',
      old: from === null ? null : { verdict: from.verdict, text: from.text },
      new: { verdict: to.verdict, text: to.text },
      limitChanged: from !== null && from.text !== to.text,
    };
  });
  const gone = [...free].map((from): VerdictRow => ({
    label: from.name ?? from.asks,
    status: 'removed',
    old: { verdict: from.verdict, text: from.text },
    new: null,
    limitChanged: false,
  }));
  return [...rows, ...gone];
}
