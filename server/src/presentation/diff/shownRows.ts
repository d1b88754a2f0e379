import type { RowStatus } from './model';
import type { DiffModel, DiffRow, GlossDiff, VerdictRow } from './model';
import type { ComparedResult } from './compared';
import { roundToUncertainty } from '../number';
import { plainNumber } from '../plainNumber';
import { plural } from '../plural';
import { plusMinus, shownBasis, stateWords, unitText } from '../shown';

export interface ShowOptions {
  /** Every quantity, not only the main ones and what the gloss uses. */
  readonly all: boolean;
  /** Also what did not move beyond tolerance. */
  readonly within: boolean;
}

/** One row as text, the same in every format. */
export interface ShownRow {
  readonly result: string;
  readonly old: string;
  readonly new: string;
  readonly difference: string;
  readonly relative: string;
  readonly status: RowStatus;
  readonly cause: string;
}

export interface ShownGloss {
  readonly title: string;
  readonly remarks: readonly string[];
  readonly rows: readonly ShownRow[];
  readonly verdicts: readonly {
    readonly label: string;
    readonly old: string;
    readonly new: string;
    readonly cause: string;
  }[];
  /** What is left out and why; null: nothing is. */
  readonly hidden: string | null;
}

/** The same words in every format. */
export const nothingMoved = 'No result moved beyond tolerance.';

/** True where a person should look: a result beyond tolerance, came, went or failed, or a verdict changed. */
export function moved(diff: GlossDiff): boolean {
  return diff.trouble !== null || diff.rows.some(rowMoved) || diff.verdicts.some((v) => v.status !== 'equal');
}

export function rowMoved(row: DiffRow): boolean {
  return row.status !== 'equal' && row.status !== 'within tolerance';
}

export function modelMoved(model: DiffModel): boolean {
  return model.glosses.some(moved);
}

export function shownGloss(diff: GlossDiff, options: ShowOptions): ShownGloss {
  const chosen = diff.rows.filter(
    (r) => options.all || r.main || (r.status === 'cannot compute' && r.new?.main !== false),
  );
  const shown = chosen.filter((r) => options.within || rowMoved(r));
  const others = diff.rows.filter((r) => !chosen.includes(r) && rowMoved(r)).length;
  const quiet = chosen.length - shown.length;
  const hidden = [
    plural(quiet, 'result within tolerance is not shown', 'results within tolerance are not shown'),
    plural(others, 'further quantity moved too (--all shows it)', 'further quantities moved too (--all shows them)'),
  ].filter((t) => t !== null);
  return {
    title: diff.gloss,
    remarks: remarks(diff),
    rows: shown.map((row) => shownRow(row, diff)),
    verdicts: diff.verdicts.filter((v) => options.within || v.status !== 'equal').map((v) => shownVerdict(v)),
    hidden: hidden.length === 0 ? null : hidden.join('; '),
  };
}

function remarks(diff: GlossDiff): string[] {
  const lines: string[] = [];
  if (diff.status === 'added') lines.push('this gloss is new');
  if (diff.status === 'removed') lines.push('this gloss is gone');
  if (diff.was !== null) lines.push(`it was ${diff.was}`);
  if (diff.program !== null) lines.push(`computed by version ${diff.program.old} before, by ${diff.program.new} now`);
  if (diff.trouble !== null) {
    lines.push(`cannot compute ${diff.trouble.side === 'new' ? 'now' : 'before'}: ${diff.trouble.reason}`);
  }
  return lines;
}

/** `changes`: what the causes of the row name. */
export function shownRow(row: DiffRow, diff: Pick<GlossDiff, 'changes'>): ShownRow {
  return {
    result: row.was === null ? row.id : `${row.id} (was ${row.was})`,
    old: valueText(row.old),
    new: valueText(row.new),
    difference: differenceText(row),
    relative: relativeText(row),
    status: row.status,
    cause: [row.remark, causeText(row, diff)].filter((t) => t !== null && t !== '').join('; '),
  };
}

/** Of the value before; nothing where that is within its own 2 u of zero, for a share of nothing says nothing. */
function relativeText({ relative, old }: DiffRow): string {
  if (relative === null || old === null || old.value === null) return '';
  if (old.uncertainty !== null && Math.abs(old.value) < 2 * old.uncertainty) return '';
  return `${signed(plainNumber(100 * relative, 2))} %`;
}

/** As it stands: value with u and basis, or the state in words; empty where there is none. */
export function valueText(r: ComparedResult | null): string {
  if (r === null) return '';
  if (r.value === null) {
    if (r.state === 'not-detected' && r.limit !== null) return `< ${plainNumber(r.limit, 2)}${unitText(r.unit)}`;
    return stateWords[r.state];
  }
  const basis = r.basis === null ? '' : ` (${shownBasis(r.basis)})`;
  return `${plusMinus(r.value, r.uncertainty)}${unitText(r.unit)}${basis}`;
}

/** `+0.02 %`: the difference to the digits of its combined uncertainty. */
export function differenceText(row: DiffRow): string {
  if (row.difference === null) return '';
  const { uncertainty: u } = row;
  const number =
    u !== null && u > 0 ? roundToUncertainty(row.difference, u).value : plainNumber(row.difference, u === 0 ? 6 : 3);
  // What rounds to nothing has moved nevertheless: its own digits.
  const text = row.difference !== 0 && Number(number) === 0 ? plainNumber(row.difference, 2) : number;
  return `${signed(text)}${unitText(row.unit)}`;
}

function signed(text: string): string {
  return text.startsWith('-') || /^0(?:\.0*)?$/.test(text) ? text : `+${text}`;
}

function causeText(row: DiffRow, diff: Pick<GlossDiff, 'changes'>): string {
  const text = new Map(diff.changes.map((c) => [c.key, `${kindWords[c.kind]}: ${c.text}`]));
  const several = row.causes.length > 1;
  const causes = row.causes.map(({ change, effect }) => {
    const words = text.get(change) ?? change;
    if (!several) return words;
    return effect === null ? `${words} (alone: cannot compute)` : `${words} (alone ${effectText(effect, row)})`;
  });
  // A hundredth of the difference is no news of how the changes act together.
  const least = 0.01 * Math.abs(row.difference ?? 0);
  if (several && row.together !== null && Math.abs(row.together) > least)
    causes.push(`together ${effectText(row.together, row)}`);
  return causes.join('; ');
}

function effectText(effect: number, row: DiffRow): string {
  return `${signed(plainNumber(effect, 2))}${unitText(row.unit)}`;
}

const kindWords: Readonly<Record<GlossDiff['changes'][number]['kind'], string>> = {
  decision: 'decision changed',
  method: 'method changed',
  data: 'data changed',
  blank: 'blank changed',
  rule: 'rule changed',
};

function shownVerdict(v: VerdictRow): ShownGloss['verdicts'][number] {
  const words = (side: VerdictRow['old']): string =>
    side === null ? '' : v.limitChanged ? `${side.verdict} (${side.text})` : side.verdict;
  return {
    label: v.label,
    old: words(v.old),
    new: words(v.new),
    cause: v.limitChanged
      ? 'decision changed: the limit'
      : v.status === 'added'
        ? 'new'
        : v.status === 'removed'
          ? 'gone'
          : '',
  };
}

/** What the whole comparison comes to, in one line. */
export function summaryLine(model: DiffModel): string {
  const all = model.glosses.flatMap((g) => g.rows.filter(rowMoved));
  const rows = all.filter((r) => r.main);
  const verdicts = model.glosses.flatMap((g) => g.verdicts.filter((v) => v.status !== 'equal'));
  const troubled = model.glosses.filter((g) => g.trouble !== null);
  if (!modelMoved(model)) return nothingMoved;
  const parts = [
    plural(
      rows.filter((r) => r.status === 'changed').length,
      'result moved beyond tolerance',
      'results moved beyond tolerance',
    ),
    plural(rows.filter((r) => r.status === 'added').length, 'result added', 'results added'),
    plural(rows.filter((r) => r.status === 'removed').length, 'result removed', 'results removed'),
    plural(
      rows.filter((r) => r.status === 'cannot compute').length,
      'result cannot be computed',
      'results cannot be computed',
    ),
    plural(verdicts.length, 'verdict changed', 'verdicts changed'),
    plural(troubled.length, 'gloss cannot be computed', 'glosses cannot be computed'),
  ].filter((t) => t !== null);
  const further = plural(all.length - rows.length, 'further quantity', 'further quantities');
  if (further !== null) parts.push(parts.length === 0 ? `${further} moved beyond tolerance` : further);
  return `${parts.join(', ')}.`;
}
