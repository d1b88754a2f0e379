import type { Host } from '../base/host';
import type { FindingCode } from '../findings/codes';
import type { Finding } from '../findings/finding';
import type { RunStatement, SignalName } from '../language/model';
import type { Program } from '../language/program';
import type { RawRun } from '../runs/run';
import { blankClock } from './blankClock';
import type { BlankInput } from './blankEffect';
import { checkRunAlone, checkStatement, checkTogether } from './checks/all';
import type { BlankRun, BlankSignal, CheckContext, JoinedFile, UsedFile } from './checks/context';
import { scanRun } from './checks/scanRun';
import { checkShares } from './checks/shares';
import type { JoinInput } from './joinedSignals';
import { remembered, type Memo } from './memo';
import type { StatementOutcome } from './outcome';
import type { PreparedRun } from './preparedRun';
import type { Prepared } from './prepareRun';
import type { Result } from './result';

export interface CheckInput {
  readonly program: Program;
  readonly prepared: Prepared;
  readonly raw: RawRun;
  readonly blanks: readonly BlankInput[];
  readonly joins: readonly JoinInput[];
  readonly display: Host['display'];
  readonly limit: (code: FindingCode) => number;
}

export interface Checks {
  readonly onOutcomes: (outcomes: ReadonlyMap<string, StatementOutcome>) => readonly Finding[];
  readonly onResults: (results: readonly Result[]) => readonly Finding[];
}

/**
 * All checks of a run and its outcomes. What looks at the run alone is remembered with the run and the statements it
 * reads; what looks at one outcome, with that outcome; only what compares outcomes runs anew.
 */
export function checksOf(input: CheckInput, memo: Memo): Checks {
  const { program, prepared } = input;
  const { run } = prepared;
  const rules = program.rules.map((r) => r.canonical);
  const programme = program.programme?.canonical ?? '';
  const facts = remembered(memo, JSON.stringify(['facts', run.key]), () => scanRun(run));
  const blanks = remembered(memo, JSON.stringify(['blank runs', run.key, input.blanks.map((b) => b.path)]), () =>
    input.blanks.flatMap((blank) => blankRun(program, run, blank)),
  );
  const context: CheckContext = {
    program,
    run,
    facts,
    blanks,
    joins: joinedFiles(input),
    files: usedFiles(input),
    outcomes: new Map(),
    limit: input.limit,
  };
  const alone = remembered(
    memo,
    JSON.stringify(['run alone', run.key, rules, programme, context.files, context.joins]),
    () => checkRunAlone(context),
  );
  const onOutcomes: Checks['onOutcomes'] = (outcomes) => {
    const all: CheckContext = { ...context, outcomes };
    const each = [...outcomes.values()].flatMap((outcome) => {
      const known = remembered(
        memo,
        JSON.stringify(['checked', run.key, rules, programme]),
        () => new WeakMap<object, Finding[]>(),
      );
      const before = known.get(outcome);
      if (before !== undefined) return before;
      const made = checkStatement(all, outcome);
      known.set(outcome, made);
      return made;
    });
    return [...alone, ...each, ...checkTogether(all)];
  };
  return { onOutcomes, onResults: (results) => checkShares(context, results) };
}

function blankRun(program: Program, run: PreparedRun, input: BlankInput): BlankRun[] {
  const effective = program.blanks.find((b) => b.id === input.statement);
  if (effective === undefined || !input.data.ok) return [];
  const raw = input.data.value;
  const clock = blankClock(run, raw);
  if (clock === null) return [];
  const signals = new Map<SignalName, BlankSignal>();
  for (const c of raw.columns) {
    if (c.signal !== 'time' && c.signal !== 'temperature') signals.set(c.signal, { unit: c.unit, values: c.values });
  }
  const described: RunStatement | null = input.conditions;
  return [
    {
      id: input.statement,
      statement: effective.statement,
      display: input.path,
      identity: raw.identity,
      described,
      ...clock,
      signals,
    },
  ];
}

function joinedFiles(input: CheckInput): JoinedFile[] {
  return input.joins.flatMap((join) =>
    join.data.ok
      ? [
          {
            id: join.statement,
            display: input.display(join.data.value.path),
            temperatureDifference: input.prepared.joinMismatches.get(join.statement) ?? null,
          },
        ]
      : [],
  );
}

function usedFiles(input: CheckInput): UsedFile[] {
  const files: UsedFile[] = [
    {
      statement: input.program.run!.id,
      token: 'file',
      display: input.display(input.raw.path),
      identity: input.raw.identity,
    },
  ];
  for (const file of [...input.joins, ...input.blanks]) {
    if (!file.data.ok) continue;
    const { path, identity } = file.data.value;
    files.push({ statement: file.statement, token: 'file', display: input.display(path), identity });
  }
  return files;
}
