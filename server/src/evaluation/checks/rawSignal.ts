import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { decimalText } from '../../findings/numberText';
import { fixedLimit } from '../../findings/table';
import type { SignalName } from '../../language/model';
import type { StatementOutcome } from '../outcome';
import { defaults } from '../settings';
import type { CheckContext } from './context';
import type { Stretch } from './stretch';
import { at, count, insertStatement, kelvin, percent, placeText, plain, seconds, segmentAt } from './wording';

/** Faults of the record that matter wherever they lie. */
export function checkRecord(context: CheckContext): Finding[] {
  return [...disorderedRows(context), ...smoothedSignals(context), ...massJumps(context)];
}

/** Faults of the record that matter to the statement whose window holds them. */
export function checkRecordInWindow(context: CheckContext, outcome: StatementOutcome): Finding[] {
  return [...saturation(context, outcome), ...gaps(context, outcome), ...reversals(context, outcome)];
}

function disorderedRows(context: CheckContext): Finding[] {
  const { count: rows, firstRow, times } = context.facts.disordered;
  if (rows <= context.limit('time-not-increasing') || firstRow === null || context.program.run === null) return [];
  const inWindow = [...context.outcomes.values()].some(
    ({ placed }) => placed !== null && times.some((t) => t >= placed.window.from && t <= placed.window.to),
  );
  return [
    makeFinding(
      'time-not-increasing',
      { statement: context.program.run.id, token: 'file' },
      `${count(rows)} ${rows === 1 ? 'row is' : 'rows are'} not later than the row before and ${rows === 1 ? 'is' : 'are'} left out, the first is data row ${count(firstRow)}.`,
      inWindow ? {} : { only: [] },
    ),
  ];
}

function smoothedSignals(context: CheckContext): Finding[] {
  const { program, facts } = context;
  if (program.run === null) return [];
  const limit = context.limit('already-smoothed');
  const findings: Finding[] = [];
  for (const signal of signalsRead(context)) {
    const correlation = facts.signal(signal)?.correlation ?? null;
    if (correlation === null || correlation <= limit) continue;
    findings.push(
      makeFinding(
        'already-smoothed',
        { statement: program.run.id, token: 'file' },
        `Neighbouring residuals of ${signal} are correlated by ${plain(correlation)} (limit ${plain(limit)}): it looks smoothed before the export, so its noise and detection limits come out too small.`,
      ),
    );
  }
  return findings;
}

/** Signals of the file that any statement reads. */
function signalsRead(context: CheckContext): SignalName[] {
  const read = [...context.outcomes.values()].flatMap((o) => carrier(o) ?? []);
  return [...new Set(read)].filter((s) => s !== 'time' && s !== 'temperature').sort();
}

function massJumps(context: CheckContext): Finding[] {
  const { program, run, facts } = context;
  const limit = context.limit('jump-in-mass');
  const jumps = (facts.signal('mass')?.jumps ?? []).filter(
    (j) => j.size > limit && !isMasked(context, j) && matters(context, j),
  );
  if (jumps.length === 0 || program.run === null) return [];
  const largest = jumps.reduce((a, b) => (b.size > a.size ? b : a));
  const segment = segmentAt(run.segments, largest.from);
  const change = (100 * largest.change) / run.mass.reference;
  const others = jumps.length === 1 ? '' : ` ${count(jumps.length - 1)} more exceed ${plain(limit)} times the noise.`;
  const from = (largest.from - 3 * facts.interval) / 60;
  const to = (largest.to + 3 * facts.interval) / 60;
  return [
    makeFinding(
      'jump-in-mass',
      { statement: program.run.id, token: 'file' },
      `The mass jumps by ${percent(change)} between two readings at ${placeText(run, segment, largest.from)}, ${plain(largest.size)} times its noise.${others}`,
      {
        fixes: [
          insertStatement(
            'Mask the jump',
            null,
            `mask ${decimalText(from, 3)}..${decimalText(to, 3)} min because "jump of the mass, cause not known"`,
          ),
        ],
      },
    ),
  ];
}

/** A jump is in the steps that span it and in every residue read after it; elsewhere it is in no number. */
function matters(context: CheckContext, jump: Stretch): boolean {
  return [...context.outcomes.values()].some(({ analysis, placed }) => {
    if (placed === null) return false;
    if (analysis?.of === 'residue') return placed.window.to > jump.from;
    return analysis?.of === 'step' && jump.to > placed.window.from && jump.from < placed.window.to;
  });
}

function isMasked(context: CheckContext, stretch: Stretch): boolean {
  return context.run.masked.some((m) => stretch.from <= m.to && stretch.to >= m.from);
}

function inside(outcome: StatementOutcome, stretches: readonly Stretch[]): Stretch[] {
  const window = outcome.placed?.window;
  return window === undefined ? [] : stretches.filter((s) => s.to > window.from && s.from < window.to);
}

function worst(stretches: readonly Stretch[]): Stretch {
  return stretches.reduce((a, b) => (b.size > a.size ? b : a));
}

/** The signal of the file that a statement reads: rates are read from the mass. */
function carrier(outcome: StatementOutcome): SignalName | null {
  return outcome.signal === 'rate' ? 'mass' : outcome.signal;
}

function saturation(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const signal = carrier(outcome);
  const facts = signal === null ? null : context.facts.signal(signal);
  const limit = context.limit('signal-saturated');
  const found = inside(outcome, facts?.saturated ?? []).filter((s) => s.size >= limit);
  if (found.length === 0) return [];
  const { from, size } = worst(found);
  return [
    makeFinding(
      'signal-saturated',
      at(outcome, 'window'),
      `${count(size)} readings in a row at ${placeText(context.run, outcome.placed?.segment ?? null, from)} equal the extreme of ${signal} (limit ${count(limit)}): it is cut off there.`,
      { about: outcome.name },
    ),
  ];
}

function gaps(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { placed } = outcome;
  const signal = carrier(outcome);
  const facts = signal === null ? null : context.facts.signal(signal);
  if (facts === null || facts.covers === null || placed === null) return [];
  const limit = context.limit('gap-in-data');
  const { interval } = context.facts;
  // One point of the curve is no matter of a gap elsewhere in the window.
  const point = outcome.source.statement.kind === 'crossing';
  const { covers } = facts;
  // Readings that end before the window does leave a gap too.
  const beyond = [
    { from: placed.window.from, to: covers.from, size: (covers.from - placed.window.from) / interval },
    { from: covers.to, to: placed.window.to, size: (placed.window.to - covers.to) / interval },
  ];
  const found = point ? atPoint(outcome, facts.gaps) : [...inside(outcome, facts.gaps), ...beyond];
  const wide = found.filter((g) => g.size > limit);
  if (wide.length === 0) return [];
  const { from, to, size } = worst(wide);
  const others = wide.length === 1 ? '' : `, the widest of ${count(wide.length)}`;
  return [
    makeFinding(
      'gap-in-data',
      at(outcome, 'window'),
      `No reading for ${seconds(to - from)} after ${placeText(context.run, placed.segment, from)}: ${plain(size)} times the usual interval (limit ${plain(limit)})${others}.`,
      { about: outcome.name },
    ),
  ];
}

/** Gaps within the smoothing about the point that was found. */
function atPoint(outcome: StatementOutcome, gaps: readonly Stretch[]): Stretch[] {
  const found = outcome.quantities.find((q) => q.quantity === 'time')?.uncertain?.value;
  const { placed } = outcome;
  if (found === undefined || placed === null) return [];
  const time = found * 60 + (placed.segment?.start ?? 0);
  const near =
    defaults.smooth.kelvin * (placed.secondsPerKelvin?.from ?? defaults.smooth.seconds / defaults.smooth.kelvin);
  return gaps.filter((g) => g.to > time - near && g.from < time + near);
}

function reversals(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const limit = context.limit('temperature-reverses');
  const multiple = fixedLimit('temperature-reverses', 1);
  const all = context.facts.reversals.filter((r) => r.size > Math.max(limit, multiple * r.sigma));
  const found = inside(outcome, all);
  if (found.length === 0) return [];
  const { from, size } = worst(found);
  return [
    makeFinding(
      'temperature-reverses',
      at(outcome, 'window'),
      `The temperature turns back by ${kelvin(size)} at ${placeText(context.run, outcome.placed?.segment ?? null, from)} (limit ${kelvin(limit)}).`,
      { about: outcome.name },
    ),
  ];
}
