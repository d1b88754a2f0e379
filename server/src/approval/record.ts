import { glossOf } from '../presentation/diff/saved';
import type { ComparedGloss } from '../presentation/diff/compared';

/** Of the block in the record and first line of what the digest is taken over; rises when either changes its meaning. */
export const approvalSchema = 'thermogloss-approval/1';

/** A data file that took part. */
export interface ApprovedFile {
  readonly role: 'run' | 'blank' | 'join';
  /** From the folder of the gloss, with `/`: the same wherever the root lies. */
  readonly path: string;
  /** SHA-256 (hex) of its decoded text (`HostFile.identity`). */
  readonly identity: string;
}

/** Who approved what the record holds. */
export interface Approver {
  readonly by: string;
  readonly on: string;
  readonly because: string | null;
}

/** What was approved: `GLOSS.approved.json`, a saved results file with one block more (`approval.schema.json`). */
export interface ApprovalRecord {
  readonly approvers: readonly Approver[];
  readonly files: readonly ApprovedFile[];
  /** Canonical texts of the statements in effect, clauses on lines of their own, sorted. */
  readonly statements: readonly string[];
  /** The results as stored, without the block of the approval. */
  readonly stored: Readonly<Record<string, unknown>>;
}

export function recordPath(gloss: string): string {
  return `${gloss}.approved.json`;
}

export function recordText({ approvers, files, statements, stored }: ApprovalRecord): string {
  const approval = { schema: approvalSchema, approvers, files, statements };
  return `${JSON.stringify({ ...stored, approval }, null, 2)}\n`;
}

/** The results in the record as a side of a comparison. */
export function storedResults(record: ApprovalRecord): ComparedGloss {
  return glossOf(record.stored)!;
}

/** A record as it is read, whatever was written to it; a problem says what it lacks. */
export function readRecord(text: string): ApprovalRecord | { readonly problem: string } {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return { problem: 'it is no JSON' };
  }
  if (!isObject(json) || glossOf(json) === null) return { problem: 'it holds no results of thermogloss-results/1' };
  const { approval, ...stored } = json;
  if (!isObject(approval) || approval['schema'] !== approvalSchema) return { problem: `it holds no ${approvalSchema}` };
  const approvers = listOf(approval['approvers'], approver);
  const files = listOf(approval['files'], file);
  const statements = listOf(approval['statements'], (s) => (typeof s === 'string' ? s : null));
  if (approvers === null || files === null || statements === null) {
    const lacking = approvers === null ? 'approvers' : files === null ? 'files' : 'statements';
    return { problem: `its ${lacking} are not written as ${approvalSchema} has them` };
  }
  return { approvers, files, statements, stored };
}

function approver(value: unknown): Approver | null {
  if (!isObject(value)) return null;
  const { by, on, because } = value;
  if (typeof by !== 'string' || typeof on !== 'string') return null;
  return typeof because === 'string' || because === null ? { by, on, because } : null;
}

function file(value: unknown): ApprovedFile | null {
  if (!isObject(value)) return null;
  const { role, path, identity } = value;
  if (role !== 'run' && role !== 'blank' && role !== 'join') return null;
  return typeof path === 'string' && typeof identity === 'string' ? { role, path, identity } : null;
}

function listOf<T>(value: unknown, read: (item: unknown) => T | null): T[] | null {
  if (!Array.isArray(value)) return null;
  const items = value.map(read);
  return items.every((item) => item !== null) ? items : null;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
