import { findingRecord, isFindingCode } from '../../findings/table';
import type { Requirement, Result } from '../../evaluation/result';
import { usualQuantity, type EvaluationKind } from '../../language/vocabulary/quantities';
import { mainResults } from '../../presentation/mainQuantities';
import { ResultDetails, requirementDetails } from '../../presentation/plot/rowDetails';
import { FindingsByName } from '../../presentation/plot/viewFindings';
import { shownRequirementValue, shownValue, stateAndReasons, stateWords } from '../../presentation/shown';
import { SnapshotTexts } from '../../presentation/statements';
import { plain, rows, title, type Block } from '../prose';
import type { Results } from '../workspace';

/** What all results of a name came to, and how its usual one was made. */
export function statementResultBlocks(results: Results, name: string): readonly Block[] {
  const { snapshot } = results;
  const own = snapshot.results.filter((r) => r.name === name);
  const first = usual(own);
  if (first === null) return [];
  if (first.kind === 'let') return resultBlocks(results, first);
  const main = mainResults(snapshot);
  const shown = own.filter((r) => main.has(r.id));
  return [
    title(`${first.kind} ${name}`),
    rows(...shown.map((r): [string, string] => [r.quantity, valueAndState(r)])),
    ...(first.value === null && first.state === 'failed' ? [] : [title(first.id)]),
    ...detailBlocks(results, first),
  ];
}

/** One result with everything it rests on. */
export function resultBlocks(results: Results, result: Result): readonly Block[] {
  return [title(resultLine(result)), ...detailBlocks(results, result)];
}

/** `First.loss = 14.793 ± 0.026 % (initial)`, as the tables and the command line show the value. */
export function resultLine(result: Result): string {
  const value = shownValue(result);
  return result.value === null && result.limit === null ? `${result.id}: ${value}` : `${result.id} = ${value}`;
}

/** A requirement with its verdict and what it was judged by. */
export function requirementBlocks(results: Results, requirement: Requirement): readonly Block[] {
  const texts = new SnapshotTexts(results.snapshot);
  const value = shownRequirementValue(requirement);
  return [
    title(value === '' ? requirement.verdict : `${requirement.verdict}: ${value}`),
    rows(...requirementDetails(requirement, texts).map(({ label, text }): [string, string] => [label, text]), [
      'State',
      stateWords[requirement.state],
    ]),
  ];
}

function detailBlocks({ snapshot }: Results, result: Result): readonly Block[] {
  const details = new ResultDetails(snapshot, new SnapshotTexts(snapshot), new FindingsByName(snapshot)).of(result);
  const reasons = reasonWords(result);
  return [
    ...(reasons.length === 0 ? [] : [rows(...reasons)]),
    rows(...details.map(({ label, text }): [string, string] => [label, text])),
  ];
}

/** Why a value is no plain number, in words: the codes alone say it to nobody. */
function reasonWords({ reasons, state }: Result): readonly (readonly [string, string])[] {
  return reasons.map((reason) => {
    const [, code, name] = /^(\S+?)(?: \((.*)\))?$/.exec(reason) ?? ['', reason, undefined];
    const words = isFindingCode(code) ? findingRecord(code).title : (otherReasons[code] ?? code);
    return [
      stateWords[state] === '' ? 'Because' : `${stateWords[state]} because`,
      name === undefined ? words : `${words} (${name})`,
    ];
  });
}

/** Reasons that are no findings. */
const otherReasons: Readonly<Record<string, string>> = {
  dependency: 'what it reads failed',
  'quantity-not-shown': 'the curve does not show it',
  'sum-only': 'it is a part of a sum, and only the sum is meant',
  'not-a-number': 'the expression has no value there',
};

function valueAndState(result: Result): string {
  const state = stateAndReasons(result);
  const value = shownValue(result);
  return state === '' || state === value
    ? value
    : result.value === null && result.limit === null
      ? state
      : `${value}, ${state}`;
}

/** The quantity that a statement of this kind is asked for first; a hold has it in minutes. */
export function usual(own: readonly Result[]): Result | null {
  const kind = own[0]?.kind;
  if (kind === undefined) return null;
  const quantity = kind === 'let' ? 'value' : usualQuantity[kind as EvaluationKind];
  const names = [quantity, ...(kind === 'peak' ? ['area'] : []), `${quantity}_time`, 'time'];
  for (const name of names) {
    const found = own.find((r) => r.quantity === name);
    if (found !== undefined) return found;
  }
  return own[0] ?? null;
}

/** What is said of a name that has no result: its findings, where it has any. */
export function withoutResult(results: Results | null, name: string): readonly Block[] {
  if (results === null) return [];
  const findings = new FindingsByName(results.snapshot).of(name);
  return findings.map((f) => plain(`${f.message} (${f.code})`));
}
