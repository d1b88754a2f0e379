import type { ApproveAnswer, ApproveParams } from '../../../server/src/protocol/messages';
import type { Translate } from '../text/translate';

export type Writing = Extract<ApproveAnswer, { readonly ok: true }>;

/** What approving needs of the editor. */
export interface ApproveWorld {
  /** The day where the person is, `2026-10-02`. */
  today(): string;
  /** Who may be about to approve; empty: not known. */
  proposal(): Promise<string>;
  /** Asks a person; undefined: they called it off. */
  name(proposal: string): Promise<string | undefined>;
  reason(why: string): Promise<string | undefined>;
  /** What the server would write; null: no answer. */
  ask(params: ApproveParams): Promise<ApproveAnswer | null>;
  /** Whether gloss and record may be written. */
  writable(): Promise<boolean>;
  /** Whether a link stands where the record goes: what is written to it lands in some other file. */
  linked(writing: Writing): Promise<boolean>;
  /** The lines of the gloss; false where its text is not (any more) the one that they are for. */
  edit(writing: Writing): Promise<boolean>;
  /** The record, whole. */
  record(writing: Writing): Promise<boolean>;
  /** The gloss, so that line and record lie beside each other. */
  save(): Promise<boolean>;
}

export type Outcome =
  | { readonly done: true; readonly by: string; readonly digest: string }
  /** null: it was called off. */
  | { readonly done: false; readonly reason: string | null };

/** Approves the results of a gloss by name, with a reason where one is due; writes nothing before everything is known. */
export async function approveResults(uri: string, world: ApproveWorld, t: Translate): Promise<Outcome> {
  if (!(await world.writable())) return failed(t('The gloss is read-only; nothing was written.'));
  const by = (await world.name(await world.proposal()))?.trim();
  if (by === undefined || by === '') return failed(null);
  const params = { uri, by, on: world.today(), because: null };
  let answer = await world.ask(params);
  if (answer !== null && !answer.ok && answer.needs === 'reason') {
    const because = (await world.reason(answer.message))?.trim();
    if (because === undefined || because === '') return failed(null);
    answer = await world.ask({ ...params, because });
  }
  if (answer === null) return failed(t('The language server gave no answer; nothing was written.'));
  if (!answer.ok) return failed(answer.message);
  if (await world.linked(answer)) return failed(t('A link stands where the record goes; nothing was written.'));
  if (!(await world.edit(answer))) return failed(t('The text changed meanwhile; nothing was written.'));
  // A line without its record says so; a record without its line would break the approval that is there.
  if (!(await world.record(answer)))
    return failed(t('The record could not be written: the line alone approves nothing.'));
  if (!(await world.save())) return failed(t('The gloss was not saved: its line counts once it is.'));
  return { done: true, by, digest: answer.digest };
}

function failed(reason: string | null): Outcome {
  return { done: false, reason };
}
