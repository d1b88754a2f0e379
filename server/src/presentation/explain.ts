import type { Snapshot } from '../engine/snapshot';
import type { Result } from '../evaluation/result';
import { interpretationLines } from './interpretation';
import type { Paint } from './paint';
import { unpainted } from './paint';
import { fixedNumber, plainNumber } from './plainNumber';
import { inReadingOrder } from './readingOrder';
import { shownBasis, shownValue, shownWindow, stateAndReasons, unitText } from './shown';
import { overrides, SnapshotTexts, statementsOf } from './statements';
import { textTable } from './textTable';
import { oneLine } from './width';

/**
 * The steps behind each number of one gloss: how the files were read, the segments found, what the text decides beyond the
 * defaults, then statement by statement window, basis, blank, method, and every result with what its uncertainty is made of.
 */
export function explainText(snapshot: Snapshot, paint: Paint = unpainted): string {
  const sections = [
    [paint('strong', `How the numbers of ${snapshot.gloss.display} were made`)],
    fileLines(snapshot),
    segmentLines(snapshot),
    decisionLines(snapshot),
    ...statementSections(snapshot, paint),
  ];
  return sections
    .filter((s) => s.length > 0)
    .map((s) => s.map((l) => `${l}\n`).join(''))
    .join('\n');
}

function fileLines(snapshot: Snapshot): string[] {
  const { run, inputs } = snapshot;
  if (run === null && inputs.length === 0) return [];
  const lines = ['Files'];
  if (run !== null) {
    lines.push(`  ${run.display} (run, ${run.points} points, SHA-256 ${run.identity})`);
    lines.push(...interpretationLines(run.interpretation).map((l) => `    ${oneLine(l)}`));
  }
  for (const input of inputs) {
    lines.push(`  ${input.display} (${input.role}, SHA-256 ${input.identity})`);
    if (input.interpretation !== null)
      lines.push(...interpretationLines(input.interpretation).map((l) => `    ${oneLine(l)}`));
  }
  return lines;
}

function segmentLines(snapshot: Snapshot): string[] {
  const segments = snapshot.run?.segments ?? [];
  if (segments.length === 0) return [];
  const table = textTable(
    ['  segment', 'from / °C', 'to / °C', 'from / min', 'to / min', 'rate / (K/min)', 'gas'].map((h, c) => ({
      header: [h],
      align: c === 0 || c === 6 ? 'left' : 'right',
    })),
    segments.map((s) => ({
      cells: [
        `  ${s.name}`,
        Number.isFinite(s.from) ? fixedNumber(s.from, 1) : '',
        Number.isFinite(s.to) ? fixedNumber(s.to, 1) : '',
        fixedNumber(s.start / 60, 2),
        fixedNumber(s.end / 60, 2),
        s.rate === null ? '' : fixedNumber(s.rate, 3),
        s.gas ?? '',
      ],
    })),
  );
  return ['Segments, found in the data', ...table];
}

/** What was decided in words: overrides, changed limits, masked points. */
function decisionLines(snapshot: Snapshot): string[] {
  const lines = [
    ...overrides(snapshot).map((o) => `  ${o.id}${o.because === null ? '' : `, because ${o.because}`}`),
    ...statementsOf(snapshot, 'rule').map(
      ({ statement: s }) => `  rule ${s.code} set to ${s.limit.text}, because ${s.reason}`,
    ),
    ...statementsOf(snapshot, 'mask').map(
      ({ statement: s }) => `  masked ${s.range.from.text}..${s.range.to.text}, because ${s.reason}`,
    ),
  ];
  return lines.length === 0 ? [] : ['Decided otherwise than by method and defaults', ...lines.map(oneLine)];
}

function statementSections(snapshot: Snapshot, paint: Paint): string[][] {
  const texts = new SnapshotTexts(snapshot);
  const groups = new Map<string, Result[]>();
  for (const r of inReadingOrder(snapshot, snapshot.results)) {
    const key = `${r.file} ${r.statement} ${r.name}`;
    groups.set(key, [...(groups.get(key) ?? []), r]);
  }
  return [...groups.values()].map((results) => {
    const [first] = results;
    const place = `${texts.path(first.file)}:${texts.line(first.file, first.statement)}`;
    const bases = [...new Set(results.map((r) => r.basis).filter((b) => b !== null))];
    const facts = [
      ['formula', first.kind === 'let' ? texts.words(first.file, first.statement, 'expression') : ''],
      [
        'window',
        [shownWindow(first.window), first.segment === null ? '' : `in ${first.segment}`].filter(Boolean).join(' '),
      ],
      ['basis', bases.map(shownBasis).join('; ')],
      ['blank', first.window === null ? '' : blankWords(snapshot, first.name)],
      ['method', first.method],
    ].filter(([, words]) => words !== '');
    return [
      `${paint('strong', first.name)} (${first.kind}, ${place})`,
      ...facts.map(([what, words]) => `  ${what.padEnd(8)}${oneLine(words)}`),
      ...results.flatMap(resultLines),
    ];
  });
}

/** The blanks taken off the signal that a statement reads; a rate is that of the mass. */
export function blankWords(snapshot: Snapshot, name: string): string {
  const reads = snapshot.constructions.find((c) => c.name === name)?.signal.replace('rate', 'mass');
  const blanks = statementsOf(snapshot, 'blank').flatMap(({ statement: s }) => {
    const from = (s.subtract.length === 0 ? ['mass'] : s.subtract).filter(
      (signal) => reads === undefined || signal === reads,
    );
    return from.length === 0 ? [] : [{ file: s.file, from: from.join(', ') }];
  });
  const groups = [...new Set(blanks.map((b) => b.from))];
  return groups
    .map(
      (from) =>
        `${blanks
          .filter((b) => b.from === from)
          .map((b) => `"${b.file}"`)
          .join(', ')} subtracted from ${from}`,
    )
    .join('; ');
}

function resultLines(r: Result): string[] {
  const state = stateAndReasons(r);
  if (r.value === null) {
    const limit = r.state === 'not-detected' ? `${shownValue(r)}, ` : '';
    return [`  ${r.id}: ${limit}${state}`];
  }
  const few = r.dof !== null && r.dof < 1000;
  const freedom = few ? `${plainNumber(r.dof, 2)} degrees of freedom` : 'many degrees of freedom';
  const coverage = (r.uncertainty ?? 0) > 0 ? `, k = ${plainNumber(r.k, 3)} (${freedom})` : '';
  return [`  ${r.id} = ${shownValue(r)}${coverage}${state === '' ? '' : `; ${state}`}`, ...contributionLines(r)];
}

/** What makes up u, down to a hundredth of it: below, a contribution moves u by less than its second digit. */
function contributionLines(r: Result): string[] {
  const least = (r.uncertainty ?? 0) / 100;
  const shown = r.contributions.filter((c) => Math.abs(c.u) > least);
  if (shown.length === 0) return [];
  const unit = unitText(r.unit.text === '°C' ? 'K' : r.unit.text);
  const parts = shown.map((c) => `${shortInput(c.input)} ${plainNumber(Math.abs(c.u), 2)}${unit}`);
  const rest = r.contributions.length - shown.length;
  return [`    u from ${parts.join('; ')}${rest === 0 ? '' : `; ${rest} below a hundredth of it`}`];
}

/** Names of influences hold places at full precision, for they are keys; people read two decimals. */
export function shortInput(input: string): string {
  return input.replace(/-?\d+\.\d{3,}(?:e-?\d+)?/g, (number) => plainNumber(Number(number), 5));
}
