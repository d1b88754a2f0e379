import { Approvals } from '../../../server/src/approval/approvals';
import { approve, type Approved, type Refused } from '../../../server/src/approval/approve';
import type { Approval } from '../../../server/src/approval/check';
import { noAuthors } from '../../../server/src/approval/evaluator';
import { withEdits } from '../../../server/src/approval/lines';
import type { Approver } from '../../../server/src/approval/record';
import { Engine } from '../../../server/src/engine/engine';
import type { PlacedFinding, Snapshot } from '../../../server/src/engine/snapshot';
import { MemoryHost } from '../../../server/src/host/memoryHost';
import { smallRun } from '../../cli/smallRun';

/** The readings of an empty crucible at the times of `smallRun`: a rise of 12 µg, as buoyancy makes it. Invented. */
export const smallBlank: string = smallRun
  .trimEnd()
  .split('\n')
  .map((line, i) => {
    const [time, temperature] = line.split(',');
    return i === 0 ? line : `${time},${temperature},${(0.012 * (1 - Math.exp(-i / 300))).toFixed(5)}`;
  })
  .join('\n')
  .concat('\n');

/** Everything an approval can rest on: a run, a blank with its own gloss, a method with an override, limits, a note. */
export const files: Readonly<Record<string, string>> = {
  'series/b.csv': smallRun,
  'blanks/z.csv': smallBlank,
  'blanks/z.gloss':
    'run "z.csv"\n  sample none\n  crucible alumina 85 µL, no lid\n  atmosphere nitrogen 50 mL/min\n  hazard "none: empty crucible"\n',
  'm.gloss': `method "Loss of an invented salt"
step First 380..620 °C
  span 12 K
step Whole 200..800 °C
  encloses First
require First.loss in 14..16 % as Loss
rule window-edge-sensitive 5 % because "one broad step"
`,
  'series/b.gloss': `# Invented.
run "b.csv"
  mass 20.000 ± 0.010 mg
  crucible alumina 85 µL, no lid
  atmosphere nitrogen 50 mL/min
  evaluator "A. Berg"
  hazard "none: invented"

method "../m.gloss"
blank "../blanks/z.gloss"
  repeatability 4 µg

override step Whole 250..800 °C
  because "the first part drifts"

let double = 2 * First.loss
require double <= 32.0 % as Double
note "ground by hand"
  on First
`,
};

export const gloss = 'series/b.gloss';
export const record = `${gloss}.approved.json`;
export const byRuiz: Approver = { by: 'M. Ruiz', on: '2026-10-02', because: null };

/** A folder in memory with a gloss to approve. */
export class Lab {
  readonly host: MemoryHost;
  readonly engine: Engine;
  readonly approvals: Approvals;
  private readonly texts: Map<string, string>;

  constructor(of: Readonly<Record<string, string>> = files, lastAuthor: string | null = null, root = '/lab') {
    this.texts = new Map(Object.entries(of));
    this.host = new MemoryHost(of, root);
    this.engine = new Engine(this.host);
    this.approvals = new Approvals(this.engine, this.host, {
      ...noAuthors,
      of: () => Promise.resolve(lastAuthor),
    });
    this.root = root;
  }

  private readonly root: string;

  text(path: string): string {
    return this.texts.get(path) ?? '';
  }

  put(path: string, text: string | null): void {
    this.host.put(path, text);
    this.engine.invalidate(`${this.root}/${path}`);
    if (text === null) this.texts.delete(path);
    else this.texts.set(path, text);
  }

  all(): Record<string, string> {
    return Object.fromEntries(this.texts);
  }

  /** The gloss as it stands, its line ends too, without what its approvals say. */
  evaluated(): Promise<Snapshot> {
    return this.engine.evaluate(`${this.root}/${gloss}`, this.text(gloss));
  }

  async checked(): Promise<readonly PlacedFinding[]> {
    return (await this.approvals.checked(await this.evaluated())).findings;
  }

  async states(): Promise<Approval[]> {
    return this.approvals.of(await this.evaluated());
  }

  async ask(approver: Approver): Promise<Approved | Refused> {
    return approve(this.engine, this.host, this.approvals, await this.evaluated(), approver);
  }

  /** Approves and writes what is to be written. */
  async approve(approver: Approver = byRuiz): Promise<Approved> {
    const approved = await this.ask(approver);
    if (!approved.ok) throw new Error(approved.message);
    this.put(record, approved.record);
    this.put(gloss, withEdits(this.text(gloss).replace(/^\ufeff/, ''), approved.edits));
    return approved;
  }
}

/** Codes about approvals with their messages, each `code: message`. */
export function aboutApprovals(findings: readonly PlacedFinding[]): string[] {
  const codes = ['approval-broken', 'approved-result-moved', 'approval-record-missing', 'approved-by-evaluator'];
  return findings.filter((f) => codes.includes(f.code)).map((f) => `${f.code}: ${f.message}`);
}
