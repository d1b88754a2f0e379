import type { HistoryRow } from '../presentation/history/model';
import type { Change, DiffRow } from '../presentation/diff/model';
import type { ComparedResult } from '../presentation/diff/compared';
import { compareSides, oneSided, type CompareOptions } from './compare';
import type { RevisionEngine } from './revisionEngine';
import { sideOf, type Side } from './side';
import type { State } from './states';

export interface History {
  readonly rows: readonly HistoryRow[];
  /** Ids of all results seen, those of the newest state first. */
  readonly ids: readonly string[];
}

/**
 * One result through states of its gloss, newest first; of those beyond `asked` the first serves for comparison alone. A state is
 * evaluated once, however often its content comes back. The result keeps its thread through a new name of its statement; where
 * the older name is not there and the name asked for is, that one is followed again.
 */
export async function historyOf(
  engine: RevisionEngine,
  name: string,
  states: readonly State[],
  asked: number,
  options: CompareOptions,
  tell: (done: number, of: number) => void = () => undefined,
): Promise<History> {
  const sides = new Map<string, Promise<Side | null>>();
  const side = (state: State): Promise<Side | null> => {
    const known = sides.get(state.key) ?? sideOf(engine, state.source, state.path).then(withoutCurves);
    sides.set(state.key, known);
    return known;
  };
  const rows: HistoryRow[] = [];
  const ids = new Set<string>();
  let id = name;
  for (const [index, state] of states.slice(0, asked).entries()) {
    tell(index + 1, asked);
    const newer = await side(state);
    const before = states.at(index + 1);
    const older = before === undefined ? null : await side(before);
    for (const result of newer?.compared.results ?? []) ids.add(result.id);
    const has = (one: string): boolean => newer?.compared.results.some((r) => r.id === one) ?? false;
    const again = id !== name && !has(id) && has(name) ? id : null;
    if (again !== null) id = name;
    const made = await rowOf(engine, id, state, newer, older, before !== undefined, options);
    const moved = before !== undefined && older !== null && newer !== null && before.path !== state.path;
    rows.push({
      ...made,
      again,
      isMerge: state.isMerge ?? false,
      was: moved ? engine.host.display(before.path) : null,
    });
    id = made.diff?.old?.id ?? id;
  }
  return { rows, ids: [...ids] };
}

/** What a side is compared by; the curves of a hundred runs are not kept with it. */
function withoutCurves(side: Side | null): Side | null {
  return side === null ? null : { ...side, snapshot: { ...side.snapshot, constructions: [] } };
}

type Made = Omit<HistoryRow, 'was' | 'again' | 'isMerge'>;

async function rowOf(
  engine: RevisionEngine,
  id: string,
  state: State,
  newer: Side | null,
  older: Side | null,
  isAfterAnother: boolean,
  options: CompareOptions,
): Promise<Made> {
  const result = newer?.compared.results.find((r) => r.id === id) ?? null;
  const start = {
    revision: state.revision,
    gloss: engine.host.display(state.path),
    id,
    result,
    reason: reasonOf(id, newer, result),
    changes: [],
  };
  const alone = { ...start, status: statusAlone(newer, result), diff: null };
  if (newer === null || older === null) {
    // The gloss itself went, or came back.
    const isAlone = !isAfterAnother || (newer === null && older === null);
    const row = isAlone ? undefined : oneSided(older, newer).rows.find((r) => r.id === id);
    return row === undefined ? alone : { ...start, status: row.status, diff: row };
  }
  if (older.unread !== null) return { ...alone, status: alone.status === 'first' ? 'oldest here' : alone.status };
  const isIts = (row: DiffRow): boolean => row.new?.id === id || row.old?.id === id;
  const { rows, changes } = await compareSides(engine, older, newer, { ...options, only: isIts });
  const row = rows.find((r) => (r.new ?? r.old)?.id === id);
  if (row === undefined) {
    const later = rows.find((r) => r.old?.id === id)?.new?.id;
    return later === undefined ? alone : { ...alone, reason: `${id} is ${later} from here on` };
  }
  if (row.old === null && result !== null && older.compared.failure !== null) {
    const remark = `could not be computed before: ${older.compared.failure}`;
    return { ...start, status: 'changed', diff: { ...row, status: 'changed', remark }, changes };
  }
  if (row.status === 'added' || row.status === 'removed') {
    const causes = changes.filter((c) => isAbout(c, id)).map(({ key }) => ({ change: key, effect: null }));
    return { ...start, status: row.status, diff: { ...row, causes }, changes };
  }
  return { ...start, status: row.status, diff: row, changes };
}

function isAbout(change: Change, id: string): boolean {
  return change.about !== null && (change.about === id || id.startsWith(`${change.about}.`));
}

function statusAlone(side: Side | null, result: ComparedResult | null): HistoryRow['status'] {
  if (result !== null) return result.state === 'failed' ? 'cannot compute' : 'first';
  return side !== null && side.compared.failure !== null ? 'cannot compute' : 'absent';
}

function reasonOf(id: string, side: Side | null, result: ComparedResult | null): string | null {
  if (side === null) return 'the gloss is gone';
  if (result === null) return side.compared.failure ?? `there is no ${id}`;
  return result.state === 'failed' ? result.reasons.join(', ') || 'failed' : null;
}
