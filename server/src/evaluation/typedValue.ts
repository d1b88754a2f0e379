import { differenceToSI, toSI } from '../quantities/convert';
import type { Part, Uncertain } from '../quantities/uncertain';
import type { Dimension, Kind, Unit } from '../quantities/unit';
import type { ResultState } from './result';

/** Why a value is not a plain number: the finding, and the statement it came through. */
export interface Reason {
  readonly code: string;
  readonly name: string;
}

/** A value on its way through arithmetic: in SI, with what it is and how far it may be trusted. */
export interface TypedValue {
  /** SI (a fraction as 0..1, a temperature in K); null where the state has no value. */
  readonly uncertain: Uncertain | null;
  readonly dimension: Dimension;
  readonly kind: Kind;
  readonly basis: string | null;
  readonly state: ResultState;
  /** SI, where not detected. */
  readonly limit: number | null;
  /** A size of either sign, for what a value below its limit becomes in sums. */
  readonly signed: boolean;
  readonly reasons: readonly Reason[];
  /** Unit it would be shown in; null: by its dimension. */
  readonly unit: Unit | null;
}

/** Strongest first (language.md 4). */
const strength: readonly ResultState[] = ['failed', 'sum-only', 'apparent', 'indicated', 'not-detected', 'number'];

export function strongest(states: readonly ResultState[]): ResultState {
  return strength.find((s) => states.includes(s)) ?? 'number';
}

export function mergeReasons(lists: readonly (readonly Reason[])[]): Reason[] {
  const merged: Reason[] = [];
  for (const reason of lists.flat()) {
    if (!merged.some((m) => m.code === reason.code && m.name === reason.name)) merged.push(reason);
  }
  return merged;
}

/** An uncertain value in `unit` as SI. */
export function uncertainToSI(value: Uncertain, unit: Unit): Uncertain {
  return {
    value: toSI(value.value, unit),
    parts: value.parts.map((p) => withSize(p, differenceToSI(p.u, unit))),
  };
}

/** The same influence with another size. Written out: it runs for every part of every result of every revision. */
export function withSize(part: Part, u: number): Part {
  const { input, dof, group } = part;
  return group === undefined ? { input, u, dof } : { input, u, dof, group };
}
