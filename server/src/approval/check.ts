import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import type { ApprovedStatement } from '../language/model';
import type { Tree } from '../language/tree';
import type { Differences } from './differences';
import { samePerson, type Evaluator } from './evaluator';
import type { Approver } from './record';

/** An approval of a gloss as it stands. */
export interface Approval extends Approver {
  /** Of its statement. */
  readonly id: string;
  readonly digest: string;
  /** `unknown`: its record is missing. */
  readonly state: 'holds' | 'broken' | 'unknown';
  /** What differs, in words; empty where it holds. */
  readonly why: readonly string[];
  readonly findings: readonly Finding[];
}

/** What became of the record beside the gloss. */
export type FoundRecord =
  | { readonly record: 'missing'; readonly message: string }
  | { readonly record: 'unreadable'; readonly problem: string }
  | { readonly record: 'read'; readonly digest: string; readonly approvers: readonly Approver[] };

export interface Compared {
  /** Display path of the record. */
  readonly path: string;
  readonly found: FoundRecord;
  /** null where no record was read. */
  readonly differences: Differences | null;
  readonly evaluator: Evaluator | null;
}

export function approvedStatements(tree: Tree): ApprovedStatement[] {
  return tree.statements.flatMap(({ statement }) => (statement?.kind === 'approved' ? [statement] : []));
}

/** One approval against what was found; every finding stands at its line. */
export function checkApproval(statement: ApprovedStatement, compared: Compared): Approval {
  const { id, by, date, because, digest } = statement;
  const of = `${by} on ${date}`;
  const findings: Finding[] = [];
  const add = (code: Finding['code'], token: string, message: string): void =>
    void findings.push(makeFinding(code, { statement: id, token }, message));
  const { found, evaluator } = compared;
  const approval = { id, by, on: date, because, digest };
  if (evaluator !== null && samePerson(evaluator.name, by)) {
    add('approved-by-evaluator', 'by', `${by} approved and evaluated (${evaluator.from}): nobody else has looked.`);
  }
  if (found.record === 'missing') {
    const missing = `${found.message}: what ${by} approved on ${date} cannot be compared with what stands here.`;
    add('approval-record-missing', 'head', capital(missing));
    return { ...approval, state: 'unknown', why: [found.message], findings };
  }
  const forged = recordProblems(statement, found, compared.path);
  const { inputs, results } = compared.differences ?? { inputs: [], results: [] };
  // What an edited record says was approved nobody approved: the rest is not compared with it.
  if (forged.length > 0) {
    add('approval-broken', 'digest', `The approval by ${of} does not hold: ${forged.join('; ')}.`);
    return { ...approval, state: 'broken', why: forged, findings };
  }
  if (inputs.length > 0) add('approval-broken', 'head', `The approval by ${of} does not hold: ${listed(inputs)}.`);
  if (results.length > 0) add('approved-result-moved', 'head', `Since the approval by ${of}: ${listed(results)}.`);
  const why = [...inputs, ...results];
  return { ...approval, state: why.length === 0 ? 'holds' : 'broken', why, findings };
}

function recordProblems(statement: ApprovedStatement, found: FoundRecord, path: string): string[] {
  if (found.record === 'missing') return [];
  if (found.record === 'unreadable') return [`${path} is no record of an approval: ${found.problem}`];
  const { by, date, because, digest } = statement;
  if (found.digest !== digest) {
    return [
      `the record ${path} or this line was changed, or the record is that of another approval; its digest is ${found.digest}, the line has ${digest}`,
    ];
  }
  const named = found.approvers.filter((a) => a.by === by);
  if (named.some((a) => a.on === date && a.because === because)) return [];
  const [other] = named;
  if (other === undefined) {
    return [`the record names ${found.approvers.map((a) => a.by).join(', ') || 'nobody'}, the line ${by}`];
  }
  return other.on === date
    ? [`the record has the reason ${quoted(other.because)}, the line ${quoted(because)}`]
    : [`the record has the day ${other.on}, the line ${date}`];
}

function quoted(reason: string | null): string {
  return reason === null ? 'none' : `"${reason}"`;
}

const shownAtOnce = 6;

function listed(words: readonly string[]): string {
  const more = words.length - shownAtOnce;
  return more <= 0
    ? words.join('; ')
    : [...words.slice(0, shownAtOnce), `and ${more} further ${more === 1 ? 'change' : 'changes'}`].join('; ');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
