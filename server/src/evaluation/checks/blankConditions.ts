import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { numberText } from '../../findings/numberText';
import { fixedLimit } from '../../findings/table';
import type { Amount, Atmosphere, Crucible, SignalName } from '../../language/model';
import { findCrucible } from '../../reference/crucibles';
import { findGas } from '../../reference/gases';
import { isTime } from '../place';
import type { BlankRun, CheckContext } from './context';
import { gasWords } from './gasTimeline';
import { celsius, deleteStatement, heatQuantities, insertClause, massQuantities, minutes, percent } from './wording';

/** Whether a blank was measured as the run was. */
export function checkBlankConditions(context: CheckContext): Finding[] {
  return [...namedTwice(context), ...context.blanks.flatMap((blank) => checkBlank(context, blank))];
}

/** Quantities that rest on the signals a blank is subtracted from. */
export function reachedBy(blank: BlankRun): readonly string[] {
  const subtracted: readonly SignalName[] = blank.statement.subtract.length === 0 ? ['mass'] : blank.statement.subtract;
  return [
    ...(subtracted.includes('mass') ? massQuantities : []),
    ...(subtracted.includes('heatflow') ? heatQuantities : []),
  ];
}

function namedTwice(context: CheckContext): Finding[] {
  return context.blanks.flatMap((blank, index) => {
    const twin = context.blanks.slice(0, index).find((b) => b.identity === blank.identity);
    if (twin === undefined) return [];
    return [
      makeFinding(
        'blank-twice',
        { statement: blank.id, token: 'file' },
        `${blank.display} holds the same data as the blank ${twin.display}: one measurement counts twice, and their repeatability is no repeatability.`,
        {
          only: reachedBy(blank),
          related: [{ at: { statement: twin.id, token: 'file' }, message: 'the same data' }],
          fixes: [deleteStatement('Delete this blank', blank.id)],
        },
      ),
    ];
  });
}

function checkBlank(context: CheckContext, blank: BlankRun): Finding[] {
  const run = context.program.run?.statement;
  if (run === undefined) return [];
  const where = { statement: blank.id, token: 'file' };
  const only = reachedBy(blank);
  const crucible = blank.described?.crucible ?? blank.statement.crucible;
  const own = blank.described?.atmospheres ?? [];
  const atmospheres = own.length > 0 ? own : blank.statement.atmospheres;
  const findings: Finding[] = [];
  const missing = [...(crucible === null ? ['crucible'] : []), ...(atmospheres.length === 0 ? ['atmosphere'] : [])];
  if (missing.length > 0) {
    findings.push(
      makeFinding(
        'blank-undescribed',
        where,
        `Nothing says which ${missing.join(' and ')} ${blank.display} was measured with.`,
        { only, fixes: blank.described === null ? describe(blank, run.crucible, run.atmospheres, missing) : [] },
      ),
    );
  }
  const differences = [
    ...crucibleDifferences(run.crucible, crucible),
    ...gasDifferences(run.atmospheres, atmospheres),
    ...rateDifferences(context, blank),
    ...temperatureDifferences(context, blank),
  ];
  if (differences.length > 0) {
    findings.push(
      makeFinding('blank-mismatch', where, `${blank.display} does not match the run: ${differences.join('; ')}.`, {
        only,
      }),
    );
  }
  return findings;
}

function describe(
  blank: BlankRun,
  crucible: Crucible | null,
  atmospheres: readonly Atmosphere[],
  missing: readonly string[],
) {
  const fixes = [];
  if (missing.includes('crucible') && crucible !== null) {
    const volume = crucible.volume === null ? '' : ` ${crucible.volume.text}`;
    fixes.push(insertClause(blank.id, ['crucible ' + crucible.words + volume, ...crucible.further].join(', ')));
  }
  if (missing.includes('atmosphere') && atmospheres.length > 0) {
    const { flow } = atmospheres[0];
    fixes.push(insertClause(blank.id, `atmosphere ${gasWords(atmospheres[0])}${flow === null ? '' : ` ${flow.text}`}`));
  }
  return fixes;
}

function crucibleDifferences(run: Crucible | null, blank: Crucible | null): string[] {
  if (run === null || blank === null) return [];
  const differences: string[] = [];
  const name = (c: Crucible) => findCrucible(c.words)?.name ?? c.words.toLowerCase();
  if (name(run) !== name(blank)) differences.push(`crucible ${blank.words} instead of ${run.words}`);
  if (run.volume !== null && blank.volume !== null && relative(run.volume, blank.volume) > 0.01) {
    differences.push(`volume ${blank.volume.text} instead of ${run.volume.text}`);
  }
  const words = (c: Crucible) => [...c.further].map((w) => w.toLowerCase()).sort();
  if (words(run).join() !== words(blank).join()) {
    differences.push(`"${blank.further.join(', ')}" instead of "${run.further.join(', ')}"`);
  }
  return differences;
}

function gasDifferences(run: readonly Atmosphere[], blank: readonly Atmosphere[]): string[] {
  if (run.length === 0 || blank.length === 0) return [];
  if (run.length !== blank.length) return [`${blank.length} atmospheres instead of ${run.length}`];
  const differences: string[] = [];
  run.forEach((own, index) => {
    const other = blank[index];
    if (gasKey(own) !== gasKey(other)) differences.push(`gas ${gasWords(other)} instead of ${gasWords(own)}`);
    if (own.flow !== null && other.flow !== null) {
      const off = 100 * relative(own.flow, other.flow);
      if (off > fixedLimit('blank-mismatch', 1)) {
        differences.push(`flow ${other.flow.text} instead of ${own.flow.text} (${percent(off)} off)`);
      }
    }
    const moved = switchShift(own, other);
    if (moved !== null && moved > 60) differences.push(`the gas switched ${minutes(moved)} apart`);
  });
  return differences;
}

/** How far apart in time two switches written as times are, s. */
function switchShift(a: Atmosphere, b: Atmosphere): number | null {
  if (a.from === null || b.from === null || !('time' in a.from) || !('time' in b.from)) return null;
  if (!isTime(a.from.time) || !isTime(b.from.time)) return null;
  const seconds = (amount: Amount) => amount.value * (amount.unit?.factor ?? 1);
  return Math.abs(seconds(a.from.time) - seconds(b.from.time));
}

function gasKey(atmosphere: Atmosphere): string {
  return atmosphere.gases
    .map(({ words, percent: share }) => `${findGas(words)?.name ?? words.toLowerCase()} ${share ?? 100}`)
    .sort()
    .join('+');
}

function relative(a: Amount, b: Amount): number {
  const value = (amount: Amount) => amount.value * (amount.unit?.factor ?? 1);
  return Math.abs(value(b) / value(a) - 1);
}

function rateDifferences(context: CheckContext, blank: BlankRun): string[] {
  const limit = context.limit('blank-mismatch');
  const differences: string[] = [];
  for (const own of context.run.segments) {
    const other = blank.segments.find((s) => s.name === own.name);
    if (other === undefined || own.rate === null || other.rate === null) continue;
    const off = 100 * Math.abs(other.rate / own.rate - 1);
    if (off > limit) {
      differences.push(
        `${own.name} at ${numberText(other.rate, 2)} instead of ${numberText(own.rate, 2)} K/min (${percent(off)} off, limit ${percent(limit)})`,
      );
    }
  }
  return differences;
}

/** A blank is matched on time; its temperature tells whether that was right. */
function temperatureDifferences(context: CheckContext, blank: BlankRun): string[] {
  const { run } = context;
  const { temperature } = blank;
  if (run.temperature === null || temperature === null) return [];
  const tolerance = fixedLimit('blank-mismatch', 2);
  let worst = { off: 0, time: 0, own: 0, other: 0 };
  const step = Math.max(1, Math.floor(run.time.length / 2000));
  let at = 0;
  for (let i = 0; i < run.time.length; i += step) {
    while (at < blank.time.length - 1 && blank.time[at] < run.time[i]) at++;
    if (Math.abs(blank.time[at] - run.time[i]) > 2 * context.facts.interval + 1) continue;
    const off = Math.abs(temperature[at] - run.temperature[i]);
    if (off > worst.off) worst = { off, time: run.time[i], own: run.temperature[i], other: temperature[at] };
  }
  if (worst.off <= tolerance) return [];
  return [
    `at ${minutes(worst.time)} it is at ${celsius(worst.other)} and the run at ${celsius(worst.own)} (limit ${numberText(tolerance, 1)} K)`,
  ];
}
