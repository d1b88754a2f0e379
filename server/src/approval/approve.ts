import type { Host } from '../base/host';
import type { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';
import type { ApprovedStatement } from '../language/model';
import { parse } from '../language/syntax/parse';
import { writeStatement } from '../language/writing/writeStatement';
import { isDay } from '../presentation/report/day';
import { resultsJson } from '../presentation/resultsJson';
import type { Approvals } from './approvals';
import { samePerson } from './evaluator';
import { digestOf } from './digest';
import { inputsOf } from './inputs';
import { lineEdits, type LineEdit } from './lines';
import { openMatters } from './openMatters';
import { recordPath, recordText, type ApprovalRecord, type Approver } from './record';

/** What is written where results are approved: the record, and the line of the gloss. */
export interface Approved {
  readonly ok: true;
  readonly recordPath: string;
  readonly record: string;
  /** In the text of the gloss, in order, apart from each other. */
  readonly edits: readonly LineEdit[];
  readonly digest: string;
  /** Whose approvals no longer held and are replaced. */
  readonly replaced: readonly Approver[];
}

/** `reason`: it is asked for; what stands against the results is listed. */
export type Refused = { readonly ok: false; readonly needs: 'reason' | 'other'; readonly message: string };

/**
 * Approves the results of a snapshot. Lines of other persons that hold stay, with the same record and digest; the new line
 * takes the place of those that do not, and of the same person's. Where none holds, the record is made anew. Writes nothing.
 */
export async function approve(
  engine: Engine,
  host: Host,
  approvals: Approvals,
  snapshot: Snapshot,
  approver: Approver,
): Promise<Approved | Refused> {
  const refused = refusal(snapshot, approver);
  if (refused !== null) return refused;
  const { tree, path } = snapshot.gloss;
  const standing = await approvals.of(snapshot);
  const known = await approvals.recordOf(path);
  const kept = standing.filter((a) => a.state === 'holds' && !samePerson(a.by, approver.by));
  // Also where the one line that holds is that of the same person: its record holds too.
  const holds = known !== null && standing.some(({ state }) => state === 'holds');
  const record = holds ? withApprover(known, kept, approver) : await newRecord(engine, host, snapshot, approver);
  const digest = digestOf(host, record);
  const line: ApprovedStatement = {
    kind: 'approved',
    id: 'approved',
    override: false,
    because: approver.because,
    notes: [],
    allows: [],
    by: approver.by,
    date: approver.on,
    digest,
  };
  const written = writeStatement(line);
  const back = parse(`run "a.csv"\n${written}`).statements[1]?.statement;
  if (back?.kind !== 'approved' || back.by !== approver.by || back.because !== approver.because) {
    throw new Error(`an approval is read otherwise than it was written: ${written}`);
  }
  const stale = standing.filter((a) => !kept.includes(a));
  return {
    ok: true,
    recordPath: recordPath(path),
    record: recordText(record),
    edits: lineEdits(
      tree,
      stale.map(({ id }) => id),
      written,
    ),
    digest,
    replaced: stale.map(({ by, on, because }) => ({ by, on, because })),
  };
}

function refusal(snapshot: Snapshot, { by, on, because }: Approver): Refused | null {
  const { tree, display } = snapshot.gloss;
  const other = (message: string): Refused => ({ ok: false, needs: 'other', message });
  for (const [what, text] of [
    ['the name', by],
    ['the reason', because],
  ] as const) {
    if (text === null) continue;
    if (text.trim() === '') return other(`${what} is empty`);
    if (/\p{Cc}/u.test(text)) return other(`${what} holds a line end or another control character`);
  }
  if (!isDay(on)) return other(`${JSON.stringify(on)} is no day of the calendar; write it as YYYY-MM-DD`);
  if (tree.role === 'method') return other(`${display} is a method and has no results; approve its runs`);
  if (snapshot.run === null) {
    const why = snapshot.findings.find((f) => f.severity === 'error')?.message;
    return other(`${display} has no run that can be read${why === undefined ? '' : `: ${why}`}`);
  }
  if (snapshot.results.length === 0 && snapshot.requirements.length === 0) return other(`${display} evaluates nothing`);
  const open = openMatters(snapshot);
  if (open.length === 0 || because !== null) return null;
  return { ok: false, needs: 'reason', message: `${display} is approved with a reason only: ${open.join('; ')}` };
}

async function newRecord(engine: Engine, host: Host, snapshot: Snapshot, approver: Approver): Promise<ApprovalRecord> {
  // What was found about an approval before is no part of what is approved now.
  const findings = snapshot.findings.filter(({ code }) => !aboutApprovals.has(code));
  const stored = JSON.parse(JSON.stringify(resultsJson({ ...snapshot, findings }))) as ApprovalRecord['stored'];
  return { approvers: [approver], ...(await inputsOf(engine, host, snapshot)), stored };
}

const aboutApprovals = new Set<string>([
  'approval-broken',
  'approved-result-moved',
  'approval-record-missing',
  'approved-by-evaluator',
]);

/** The record that holds, with the approvers whose lines stay and the one who comes. */
function withApprover(record: ApprovalRecord, kept: readonly Approver[], approver: Approver): ApprovalRecord {
  const stays = (a: Approver): boolean => kept.some((k) => k.by === a.by && k.on === a.on && k.because === a.because);
  return { ...record, approvers: [...record.approvers.filter(stays), approver] };
}
