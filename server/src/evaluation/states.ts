import type { Finding } from '../findings/finding';
import { findingRecord } from '../findings/table';
import type { Program } from '../language/program';
import type { StatementOutcome } from './outcome';
import type { PreparedRun } from './preparedRun';
import { mergeReasons, strongest, uncertainToSI, type Reason, type TypedValue } from './typedValue';
import type { ResultState } from './result';

/** One quantity with its state: what findings, sums, detection limits and the calibration make of it. */
export interface StatedQuantity {
  readonly name: string;
  readonly quantity: string;
  readonly value: TypedValue;
}

/** Quantities that may have either sign. */
const signed = new Set(['change', 'enthalpy', 'area', 'height', 'drift', 'delta_cp']);

/** What a part of a sum still says for itself, as *apparent* (language.md 4). */
const apparentInSums = new Set(['inflection', 'inflection_time', 'rate', 'peak', 'peak_time']);

export interface Stating {
  readonly program: Program;
  readonly run: PreparedRun;
  readonly outcomes: ReadonlyMap<string, StatementOutcome>;
  readonly findings: readonly Finding[];
}

/** What findings made of an outcome: under the same findings (`signature`) it has the same states. */
export interface Stated {
  readonly signature: string;
  readonly quantities: readonly StatedQuantity[];
}

/**
 * States of all quantities of all evaluation statements, in the order of the program. `before`: those of the last revision,
 * taken over while nothing about an outcome changes.
 */
export function stateQuantities(
  stating: Stating,
  before: ReadonlyMap<StatementOutcome, Stated> = new Map(),
): Map<StatementOutcome, Stated> {
  const inSums = partsOfSums(stating.program);
  const stated = new Map<StatementOutcome, Stated>();
  const inherited = new Map<string, Reason[]>();
  for (const [name, outcome] of stating.outcomes) {
    const findings = stating.findings.filter((f) => f.about === name || f.about === null);
    // A statement that reads another's masses inherits what makes those doubtful.
    const passed = mergeReasons(outcome.source.needs.map((n) => inherited.get(n) ?? []));
    const own: Reason[] = [];
    for (const finding of findings) {
      const effect = findingRecord(finding.code).effect;
      if (effect !== null && finding.only === undefined) own.push({ code: finding.code, name });
    }
    inherited.set(name, mergeReasons([passed, own]));
    const signature = JSON.stringify([
      passed,
      inSums.has(name),
      findings.map((f) => (findingRecord(f.code).effect === null ? '' : [f.code, f.only ?? null])),
    ]);
    const same = before.get(outcome);
    if (same?.signature === signature) {
      stated.set(outcome, same);
      continue;
    }
    const quantities = outcome.quantities.map((q) => {
      const reasons = mergeReasons([passed, reasonsFor(findings, name, q.quantity)]);
      return { name, quantity: q.quantity, value: statedValue(stating, outcome, q, reasons, inSums.has(name)) };
    });
    stated.set(outcome, { signature, quantities });
  }
  return stated;
}

function reasonsFor(findings: readonly Finding[], name: string, quantity: string): Reason[] {
  return findings
    .filter((f) => findingRecord(f.code).effect !== null)
    .filter((f) => f.only === undefined || f.only.includes(quantity))
    .map((f) => ({ code: f.code, name }));
}

function statedValue(
  stating: Stating,
  outcome: StatementOutcome,
  q: StatementOutcome['quantities'][number],
  reasons: readonly Reason[],
  isPart: boolean,
): TypedValue {
  const { run } = stating;
  const states: ResultState[] = [];
  const all: Reason[] = [...reasons];
  for (const reason of reasons) {
    states.push(findingRecord(reason.code as Finding['code']).effect === 'fails' ? 'failed' : 'apparent');
  }
  if (q.reason !== null) {
    states.push('failed');
    if (!all.some((r) => r.code === q.reason)) all.push({ code: q.reason, name: outcome.name });
  }
  if (isPart) {
    states.push(apparentInSums.has(q.quantity) ? 'apparent' : 'sum-only');
    all.push({ code: 'sum-only', name: outcome.name });
  }
  if (q.kind === 'temperature' && q.uncertain !== null && !isCalibrated(run, q.uncertain.value)) {
    states.push('indicated');
    const code = run.calibrated.some((c) => c.signal === 'temperature')
      ? 'outside-calibration'
      : 'calibration-not-stated';
    if (!all.some((r) => r.code === code)) all.push({ code, name: outcome.name });
  }
  const hidden = q.limit !== null && q.reason === null;
  if (hidden) {
    states.push('not-detected');
    all.push({ code: 'below-noise', name: outcome.name });
  }
  const state = strongest(states.length === 0 ? ['number'] : states);
  // Not detected and apparent: it is still only known to be below its limit.
  const shown: ResultState = hidden && (state === 'apparent' || state === 'indicated') ? 'not-detected' : state;
  const lost = shown === 'failed' || shown === 'sum-only' || shown === 'not-detected' || q.uncertain === null;
  const factor = q.unit.factor;
  return {
    uncertain: lost || q.uncertain === null ? null : uncertainToSI(q.uncertain, q.unit),
    dimension: q.unit.dimension,
    kind: q.kind,
    basis: q.basis,
    state: q.uncertain === null && shown !== 'failed' && shown !== 'not-detected' ? 'failed' : shown,
    limit: shown === 'not-detected' && q.limit !== null ? q.limit * factor : null,
    signed: signed.has(q.quantity),
    reasons: all,
    unit: q.unit,
  };
}

function isCalibrated(run: PreparedRun, temperature: number): boolean {
  return run.calibrated.some((c) => c.signal === 'temperature' && temperature >= c.from && temperature <= c.to);
}

export function partsOfSums(program: Program): Set<string> {
  const parts = new Set<string>();
  for (const { statement } of program.order) {
    if ((statement.kind === 'step' || statement.kind === 'peak') && statement.sumOf !== null) {
      for (const part of statement.sumOf) parts.add(part);
    }
  }
  return parts;
}
