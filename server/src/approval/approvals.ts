import type { Host } from '../base/host';
import type { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';
import { approvedStatements, checkApproval, type Approval, type FoundRecord } from './check';
import { differences } from './differences';
import { digestOf } from './digest';
import { evaluatorOf, type Authors } from './evaluator';
import { inputsOf } from './inputs';
import { readRecord, recordPath, type ApprovalRecord } from './record';

/** What is kept at once: records of open glosses, and some more. */
const kept = 32;

interface ReadRecord {
  readonly record: ApprovalRecord | null;
  readonly found: FoundRecord;
}

/** Compares glosses with the records of their approvals. A gloss without an approval costs nothing here. */
export class Approvals {
  /** By content: while somebody types, the record beside the gloss is read, but not taken apart and hashed again. */
  private readonly records = new Map<string, ReadRecord>();

  constructor(
    private readonly engine: Engine,
    private readonly host: Host,
    private readonly authors: Authors,
  ) {}

  /** Files changed: who changed them last is asked again. */
  forget(): void {
    this.authors.forget();
  }

  /** The snapshot with what is found about its approvals. */
  async checked(snapshot: Snapshot): Promise<Snapshot> {
    const approvals = await this.of(snapshot);
    return this.engine.withFindings(
      snapshot,
      approvals.flatMap((a) => a.findings),
    );
  }

  /** The approvals of a gloss, in the order of its lines. */
  async of(snapshot: Snapshot): Promise<Approval[]> {
    const statements = approvedStatements(snapshot.gloss.tree);
    if (statements.length === 0) return [];
    const path = recordPath(snapshot.gloss.path);
    const { record, found } = await this.read(path);
    const now = await inputsOf(this.engine, this.host, snapshot);
    const compared = {
      path: this.host.display(path),
      found,
      differences: record === null ? null : differences(record, now, snapshot),
      evaluator: await evaluatorOf(snapshot.gloss.path, snapshot.gloss.tree, this.authors),
    };
    return statements.map((statement) => checkApproval(statement, compared));
  }

  /** The record beside a gloss; null where there is none that can be read. */
  async recordOf(gloss: string): Promise<ApprovalRecord | null> {
    return (await this.read(recordPath(gloss))).record;
  }

  private async read(path: string): Promise<ReadRecord> {
    const file = await this.host.read(path);
    if (!file.ok) {
      return file.reason === 'missing'
        ? { record: null, found: { record: 'missing', message: file.message } }
        : { record: null, found: { record: 'unreadable', problem: file.message } };
    }
    const known = this.records.get(file.identity);
    if (known !== undefined) return known;
    let text = '';
    for await (const piece of whole(file.chunks())) text += this.host.decode(piece);
    const read = this.understood(text);
    remember(this.records, file.identity, read);
    return read;
  }

  private understood(text: string): ReadRecord {
    const record = readRecord(text);
    if ('problem' in record) return { record: null, found: { record: 'unreadable', problem: record.problem } };
    const digest = digestOf(this.host, record);
    return { record, found: { record: 'read', digest, approvers: record.approvers } };
  }
}

function remember<T>(map: Map<string, T>, key: string, value: T): void {
  map.set(key, value);
  if (map.size <= kept) return;
  const [oldest] = map.keys();
  map.delete(oldest);
}

/** All pieces as one: a piece may end inside a character. */
async function* whole(pieces: AsyncIterable<Uint8Array>): AsyncIterable<Uint8Array> {
  const all: Uint8Array[] = [];
  for await (const piece of pieces) all.push(piece.slice());
  const joined = new Uint8Array(all.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const piece of all) {
    joined.set(piece, at);
    at += piece.length;
  }
  yield joined;
}
