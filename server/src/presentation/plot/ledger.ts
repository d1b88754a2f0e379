import type { Snapshot } from '../../engine/snapshot';
import type { Requirement } from '../../evaluation/result';
import type { Expression, RequireStatement } from '../../language/model';
import type { Ledger, LedgerRow } from '../../protocol/view';
import { mainResults } from '../mainQuantities';
import { inReadingOrder } from '../readingOrder';
import { shownBasis, shownRequirementValue, shownValue, stateAndReasons, stateWords } from '../shown';
import { SnapshotTexts, statementsOf } from '../statements';
import { requirementDetails, ResultDetails } from './rowDetails';
import { FindingsByName, worst } from './viewFindings';

/** The difference of a result to another revision, in words. */
export interface Since {
  readonly text: string;
  /** Beyond its tolerance. */
  readonly moved: boolean;
}

export const ledgerColumns: Ledger['columns'] = [
  { id: 'name', title: 'Name', align: 'left' },
  { id: 'quantity', title: 'Quantity', align: 'left' },
  { id: 'value', title: 'Value', align: 'left' },
  { id: 'basis', title: 'Basis', align: 'left' },
  { id: 'state', title: 'State', align: 'left' },
  { id: 'since', title: 'Since HEAD', align: 'left' },
  { id: 'limit', title: 'Limit', align: 'left' },
];

/**
 * One row a result, in the order in which names are written, then a row for each requirement that judges more than one
 * plain result; one that does stands in that result's row.
 *
 * @param since differences by result id, where a revision is compared with
 * @param against what it is compared with: the head of that column
 */
export function ledgerOf(
  snapshot: Snapshot,
  since: ReadonlyMap<string, Since> = new Map(),
  against: string | null = null,
): Ledger {
  const texts = new SnapshotTexts(snapshot);
  const findings = new FindingsByName(snapshot);
  const details = new ResultDetails(snapshot, texts, findings);
  const main = mainResults(snapshot);
  const results = inReadingOrder(snapshot, snapshot.results);
  const ids = new Set(results.map((r) => r.id));
  const judged = snapshot.requirements.map((requirement) => {
    const target = plainTarget(requirement, texts);
    return { requirement, target: target !== null && ids.has(target) ? target : null };
  });
  const readers = readersOf(snapshot);
  const firsts = new Set<string>();
  const rows = results.map((r): LedgerRow => {
    const own = judged.filter((j) => j.target === r.id).map((j) => j.requirement);
    const isMain = main.has(r.id) || own.length > 0;
    const isFirst = isMain && !firsts.has(r.name);
    if (isFirst) firsts.add(r.name);
    const about = findings.of(r.name).filter((f) => isFirst || r.reasons.some((reason) => reason.startsWith(f.code)));
    const limit = [...own.map(verdictWords), ...readerWords(own, readers.get(r.id) ?? []), ...codes(about)];
    return {
      id: r.id,
      statement: r.statement,
      name: r.name,
      kind: r.kind,
      quantity: r.kind === 'let' ? '' : r.quantity,
      value: shownValue({ ...r, basis: null }),
      number: r.value,
      unit: r.unit.text === '1' ? '' : r.unit.text,
      basis: r.basis === null ? '' : shownBasis(r.basis),
      state: r.value === null && stateWords[r.state] === stateAndReasons(r) ? '' : stateAndReasons(r),
      since: since.get(r.id)?.text ?? '',
      sinceMoved: since.get(r.id)?.moved ?? false,
      limit: limit.join('; '),
      verdict: worstVerdict(own.map((o) => o.verdict)),
      severity: worst(about.map((f) => f.severity)),
      main: isMain,
      details: [...own.flatMap((o) => requirementDetails(o, texts).slice(0, 2)), ...details.of(r)],
    };
  });
  const apart = judged.filter((j) => j.target === null).map((j) => requirementRow(j.requirement, texts));
  const title =
    against === null
      ? ledgerColumns
      : ledgerColumns.map((c) => (c.id === 'since' ? { ...c, title: `Since ${against}` } : c));
  return { columns: title, rows: [...rows, ...withOwnIds(apart)] };
}

function requirementRow(r: Requirement, texts: SnapshotTexts): LedgerRow {
  return {
    id: `require ${r.name ?? r.text}`,
    statement: r.statement,
    name: r.name ?? '',
    kind: 'require',
    quantity: r.text,
    value: shownRequirementValue(r),
    number: r.value,
    unit: r.unit.text === '1' ? '' : r.unit.text,
    basis: '',
    state: r.value === null ? '' : stateWords[r.state],
    since: '',
    sinceMoved: false,
    limit: verdictWords(r),
    verdict: r.verdict,
    severity: null,
    main: true,
    details: requirementDetails(r, texts),
  };
}

/** Two requirements may say the same. */
function withOwnIds(rows: readonly LedgerRow[]): LedgerRow[] {
  const counts = new Map<string, number>();
  return rows.map((row) => {
    const count = (counts.get(row.id) ?? 0) + 1;
    counts.set(row.id, count);
    return count === 1 ? row : { ...row, id: `${row.id}#${count}` };
  });
}

/** `met (60..65 %)`, `not met (≤ 0.5 %)`: the limit as it is written. */
function verdictWords({ verdict, text }: Requirement): string {
  const limit = / (in|<=|>=) ((?:(?! (?:in|<=|>=) ).)*)$/.exec(text);
  if (limit === null) return verdict;
  const sign = limit[1] === '<=' ? '≤ ' : limit[1] === '>=' ? '≥ ' : '';
  return `${verdict} (${sign}${limit[2]})`;
}

/** `in dolomite`: what reads the result further, where no verdict on it is said. */
function readerWords(own: readonly Requirement[], names: readonly string[]): string[] {
  return own.length > 0 || names.length === 0 ? [] : [`in ${names.join(', ')}`];
}

function codes(about: readonly { readonly code: string; readonly severity: string }[]): string[] {
  return [...new Set(about.filter((f) => f.severity !== 'note').map((f) => f.code))];
}

const badness: readonly Requirement['verdict'][] = ['not met', 'not evaluated', 'inconclusive', 'met'];

function worstVerdict(verdicts: readonly Requirement['verdict'][]): Requirement['verdict'] | null {
  return badness.find((v) => verdicts.includes(v)) ?? null;
}

/** The id of the result a requirement judges, where it judges just that against a constant; else null. */
function plainTarget(requirement: Requirement, texts: SnapshotTexts): string | null {
  const statement = texts.node(requirement.file, requirement.statement)?.statement;
  if (statement?.kind !== 'require' || statement.name !== null || statement.left.node !== 'name') return null;
  if (!isConstant(statement.limit)) return null;
  const { name, quantity } = statement.left;
  return quantity === null ? name : `${name}.${quantity}`;
}

function isConstant(limit: RequireStatement['limit']): boolean {
  return limit.form === 'in' || (limit.right.node === 'amount' && limit.right.amount.u === null);
}

/** Names of lets and requirements that read a result, by its id, in written order. */
function readersOf(snapshot: Snapshot): ReadonlyMap<string, readonly string[]> {
  const readers = new Map<string, string[]>();
  const add = (expression: Expression, reader: string): void => {
    for (const id of namesIn(expression)) {
      const known = readers.get(id) ?? [];
      if (!known.includes(reader)) readers.set(id, [...known, reader]);
    }
  };
  for (const { statement } of statementsOf(snapshot, 'let')) add(statement.expression, statement.name);
  for (const { statement } of statementsOf(snapshot, 'require')) {
    if (statement.name === null) continue;
    add(statement.left, statement.name);
    if ('right' in statement.limit) add(statement.limit.right, statement.name);
  }
  return readers;
}

function namesIn(expression: Expression): readonly string[] {
  switch (expression.node) {
    case 'name':
      return [expression.quantity === null ? expression.name : `${expression.name}.${expression.quantity}`];
    case 'call':
      return expression.args.flatMap(namesIn);
    case 'negate':
      return namesIn(expression.of);
    case 'binary':
      return [...namesIn(expression.left), ...namesIn(expression.right)];
    default:
      return [];
  }
}
