import type { Snapshot } from '../../engine/snapshot';
import type { Result, ResultState, ResultWindow, Verdict } from '../../evaluation/result';
import { mainResults } from '../mainQuantities';
import { inReadingOrder } from '../readingOrder';
import { SnapshotTexts } from '../statements';
import { version } from '../version';

/** One side of a comparison: the numbers of one gloss, evaluated now or read from a saved results file. */
export interface ComparedGloss {
  readonly gloss: string;
  /** Version of the program that computed it. */
  readonly program: string;
  readonly results: readonly ComparedResult[];
  readonly requirements: readonly ComparedRequirement[];
  readonly run: { readonly path: string; readonly identity: string } | null;
  readonly inputs: readonly { readonly role: string; readonly path: string; readonly identity: string }[];
  /** What each statement means without its name, by name; empty where the text is not at hand. */
  readonly meanings: ReadonlyMap<string, string>;
  /** Why nothing could be computed, where that is so. */
  readonly failure: string | null;
}

export interface ComparedResult {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly quantity: string;
  readonly state: ResultState;
  readonly value: number | null;
  readonly uncertainty: number | null;
  readonly unit: string;
  readonly limit: number | null;
  readonly basis: string | null;
  readonly segment: string | null;
  readonly window: ResultWindow | null;
  readonly reasons: readonly string[];
  readonly main: boolean;
  /** 1-based line in the gloss; null: in its method, or not known. */
  readonly line: number | null;
}

export interface ComparedRequirement {
  /** What it asks of: left side and operator. */
  readonly asks: string;
  readonly name: string | null;
  readonly text: string;
  readonly verdict: Verdict;
  readonly value: number | null;
  readonly uncertainty: number | null;
  readonly unit: string;
  readonly line: number | null;
}

/** The numbers of a snapshot, results in the order in which their names are written. */
export function comparedOf(snapshot: Snapshot): ComparedGloss {
  const main = mainResults(snapshot);
  const texts = new SnapshotTexts(snapshot);
  const line = (of: { file: Result['file']; statement: string }): number | null =>
    of.file === 'gloss' ? texts.line('gloss', of.statement) : null;
  const errors = snapshot.findings.filter((f) => f.severity === 'error' && f.allowed === null);
  const nothing = snapshot.results.length === 0 && snapshot.requirements.length === 0;
  return {
    gloss: snapshot.gloss.display,
    program: version,
    results: inReadingOrder(snapshot, snapshot.results).map((r) => ({
      id: r.id,
      name: r.name,
      kind: r.kind,
      quantity: r.quantity,
      state: r.state,
      value: r.value,
      uncertainty: r.uncertainty,
      unit: r.unit.text,
      limit: r.limit,
      basis: r.basis,
      segment: r.segment,
      window: r.window,
      reasons: r.reasons,
      main: main.has(r.id),
      line: line(r),
    })),
    requirements: snapshot.requirements.map((r) => ({
      asks: asksOf(r.text),
      name: r.name,
      text: r.text,
      verdict: r.verdict,
      value: r.value,
      uncertainty: r.uncertainty,
      unit: r.unit.text,
      line: line(r),
    })),
    run: snapshot.run === null ? null : { path: snapshot.run.display, identity: snapshot.run.identity },
    inputs: snapshot.inputs.map((i) => ({ role: i.role, path: i.display, identity: i.identity })),
    meanings: meaningsOf(snapshot),
    failure: nothing && errors.length > 0 ? errors[0].message : null,
  };
}

/** Left side and operator of a requirement: `x in`, `x <=`; a changed limit leaves it as it is. */
export function asksOf(text: string): string {
  const at = /^(.*?) (in|<=|>=) /.exec(text);
  return at === null ? text : `${at[1]} ${at[2]}`;
}

function meaningsOf(snapshot: Snapshot): Map<string, string> {
  const meanings = new Map<string, string>();
  for (const text of [snapshot.method, snapshot.gloss]) {
    for (const { name, canonical } of text?.tree.statements ?? []) {
      if (name !== null) meanings.set(name, canonical.replace(` ${name}`, ''));
    }
  }
  return meanings;
}
