import { Counters } from '../../server/src/base/counters';
import { BoundedMemo } from '../../server/src/engine/boundedMemo';
import { evaluateProgram } from '../../server/src/evaluation/evaluateProgram';
import type { Memo } from '../../server/src/evaluation/memo';
import { effectiveLimit } from '../../server/src/evaluation/limits';
import { prepareRun } from '../../server/src/evaluation/prepareRun';
import type { Evaluated, Result } from '../../server/src/evaluation/result';
import { parse } from '../../server/src/language/syntax/parse';
import { resolveProgram } from '../../server/src/language/meaning/resolveProgram';
import type { SignalName } from '../../server/src/language/model';
import type { RawRun, StoredUnit } from '../../server/src/runs/run';

export type Arrays = readonly {
  readonly signal: SignalName;
  readonly unit: StoredUnit;
  readonly values: Float64Array;
}[];

/** A run as reading would give it, without a file. */
export function rawRun(columns: Arrays, identity = 'arrays'): RawRun {
  return {
    path: '/lab/run.csv',
    identity,
    interpretation: {
      encoding: 'utf-8',
      bom: false,
      lineEnds: 'lf',
      delimiter: ',',
      decimal: '.',
      skip: 0,
      header: 1,
      footer: 0,
      block: null,
      columns: columns.map((c, i) => ({ number: i + 1, header: c.signal, unitText: c.unit, signal: c.signal })),
      rows: columns[0].values.length,
      irregularRows: 0,
    },
    columns: columns.map((c, i) => ({ ...c, header: c.signal, number: i + 1 })),
    points: columns[0].values.length,
    badCells: { count: 0, first: [] },
    emptyCells: 0,
  };
}

/** Evaluates a gloss on arrays, without checks: for tests of numbers. Defaults are the program's own. */
export function evaluateOn(
  columns: Arrays,
  gloss: string,
  identity = 'arrays',
  memo: Memo = new BoundedMemo(200),
): Evaluated {
  const program = resolveProgram(parse(gloss), null);
  const prepared = prepareRun(program, rawRun(columns, identity), [], [], memo, new Counters());
  return evaluateProgram(
    {
      program,
      run: prepared.run,
      dataFindings: prepared.findings,
      limit: (code) => effectiveLimit(program, code),
      checks: { onOutcomes: () => [], onResults: () => [] },
    },
    memo,
    new Counters(),
  );
}

export function resultOf(evaluated: Evaluated, id: string): Result {
  const result = evaluated.results.find((r) => r.id === id);
  if (result === undefined)
    throw new Error(`no result ${id}; there are ${evaluated.results.map((r) => r.id).join(', ')}`);
  return result;
}

export function valueOf(evaluated: Evaluated, id: string): number {
  const { value, state, reasons } = resultOf(evaluated, id);
  if (value === null) throw new Error(`${id} is ${state}: ${reasons.join(', ')}`);
  return value;
}
