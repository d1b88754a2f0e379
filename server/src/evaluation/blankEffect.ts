import { atTimes } from '../runs/atTimes';
import type { Outcome } from '../base/outcome';
import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import { numberText } from '../findings/numberText';
import type { BlankStatement, RunStatement, SignalName } from '../language/model';
import type { Effective, Program } from '../language/program';
import { differenceToSI } from '../quantities/convert';
import type { RawRun, ReadingProblem } from '../runs/run';
import { blankClock, type BlankTarget } from './blankClock';
import type { SourceSignal } from './sourceSignal';

export interface BlankInput {
  /** Id of the `blank` statement. */
  readonly statement: string;
  readonly data: Outcome<RawRun, ReadingProblem>;
  /** The run statement of the blank's own gloss; null for a bare data file. */
  readonly conditions: RunStatement | null;
  readonly path: string;
}

/** What subtracting the blanks leaves uncertain in one signal. */
export interface BlankEffect {
  /**
   * Standard uncertainty of the difference of two corrected readings at two times (s), in the unit of the signal, and its
   * degrees of freedom. The run's own unknown blank and the mean of n measured ones: s·√(1 + 1/n) (JCGM 100, 4.2 and
   * 5.1.2), s from `repeatability` where stated, else from the spread of the blanks; 0 where neither is there.
   */
  standardUncertainty(from: number, to: number): { readonly u: number; readonly dof: number | null };
}

export interface Blanks {
  readonly findings: readonly Finding[];
  /** The signal with its blanks subtracted; rows that no blank reaches become NaN. Itself where there is no blank. */
  correct(source: SourceSignal): Float64Array;
  of(signal: SignalName): BlankEffect | null;
}

interface UsedBlank {
  readonly effective: Effective<BlankStatement>;
  readonly values: Float64Array;
}

/** Blanks of every signal, matched on time whatever their sampling interval. */
export function blankEffects(
  program: Program,
  inputs: readonly BlankInput[],
  sources: readonly SourceSignal[],
  target: BlankTarget,
): Blanks {
  const findings: Finding[] = [];
  const used = new Map<SignalName, UsedBlank[]>();
  for (const input of inputs) {
    const effective = program.blanks.find((b) => b.id === input.statement);
    if (effective === undefined || !input.data.ok) continue;
    for (const signal of effective.statement.subtract) {
      const source = sources.find((s) => s.signal === signal);
      const blank = blankSignal(program, input, input.data.value, signal, target);
      if (source === undefined || blank === null) {
        const where = source === undefined ? 'the run' : input.path;
        findings.push(
          makeFinding(
            'signal-missing',
            { statement: input.statement, token: 'subtract' },
            `${capital(where)} has no ${signal} to subtract.`,
          ),
        );
        continue;
      }
      if (blank.unit !== source.unit) {
        findings.push(
          makeFinding(
            'signal-missing',
            { statement: input.statement, token: 'subtract' },
            `${signal} is in ${source.unit} in the run and in ${blank.unit} in ${input.path}: they cannot be subtracted. State the units with columns.`,
          ),
        );
        continue;
      }
      const values = atTimes(blank.time, blank.values, source.time);
      const lost = values.reduce((n, v, i) => n + (Number.isNaN(v) && !Number.isNaN(source.values[i]) ? 1 : 0), 0);
      if (lost > 0) {
        findings.push(
          makeFinding(
            'blank-too-short',
            { statement: input.statement, token: 'file' },
            `${input.path} does not reach ${lost} of ${source.values.length} readings of ${signal} (${numberText((100 * lost) / source.values.length, 1)} %): they were left out.`,
          ),
        );
      }
      used.set(signal, [...(used.get(signal) ?? []), { effective, values }]);
    }
  }
  return {
    findings,
    correct: (source) => {
      const blanks = used.get(source.signal);
      return blanks === undefined ? source.values : subtracted(source, blanks);
    },
    of: (signal) => {
      const blanks = used.get(signal);
      const source = sources.find((s) => s.signal === signal);
      return blanks === undefined || source === undefined ? null : effectOf(source, blanks);
    },
  };
}

/** The blank's signal: mass relative to its first reading, heat flow turned where its gloss says the other direction. */
function blankSignal(
  program: Program,
  input: BlankInput,
  raw: RawRun,
  signal: SignalName,
  target: BlankTarget,
): SourceSignal | null {
  const column = raw.columns.find((c) => c.signal === signal);
  const clock = blankClock(target, raw);
  if (column === undefined || clock === null) return null;
  const first = signal === 'mass' ? (column.values.find((v) => !Number.isNaN(v)) ?? 0) : 0;
  const own = input.conditions?.endothermic ?? null;
  const runs = program.run?.statement.endothermic ?? null;
  const sign = signal === 'heatflow' && own !== null && runs !== null && own !== runs ? -1 : 1;
  return { signal, unit: column.unit, time: clock.time, values: column.values.map((v) => sign * (v - first)) };
}

function subtracted(source: SourceSignal, blanks: readonly UsedBlank[]): Float64Array {
  const corrected = new Float64Array(source.values.length);
  for (let i = 0; i < corrected.length; i++) {
    let sum = 0;
    let n = 0;
    for (const { values } of blanks) {
      if (Number.isNaN(values[i])) continue;
      sum += values[i];
      n++;
    }
    corrected[i] = n === 0 ? NaN : source.values[i] - sum / n;
  }
  return corrected;
}

function effectOf(source: SourceSignal, blanks: readonly UsedBlank[]): BlankEffect {
  const stated = blanks.map((b) => repeatabilityOf(b.effective.statement, source)).filter((s) => s !== null);
  const n = blanks.length;
  const own = Math.sqrt(1 + 1 / n);
  return {
    standardUncertainty: (from, to) => {
      if (stated.length > 0) return { u: Math.max(...stated) * own, dof: null };
      if (n < 2) return { u: 0, dof: null };
      const differences = blanks
        .map((b) => atTimes(source.time, b.values, Float64Array.of(from, to)))
        .map((v) => v[1] - v[0])
        .filter((d) => !Number.isNaN(d));
      if (differences.length < 2) return { u: 0, dof: null };
      const mean = differences.reduce((s, d) => s + d, 0) / differences.length;
      const variance = differences.reduce((s, d) => s + (d - mean) ** 2, 0) / (differences.length - 1);
      return { u: Math.sqrt(variance) * own, dof: differences.length - 1 };
    },
  };
}

/** `repeatability` in the unit of the signal; null where not stated. */
function repeatabilityOf(statement: BlankStatement, source: SourceSignal): number | null {
  const stated = statement.repeatability;
  if (stated === null || stated.unit === null) return null;
  const si = differenceToSI(stated.value, stated.unit);
  if (source.unit === 'mg') return si * 1e6;
  if (source.unit === 'mW') return si * 1e3;
  return si;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
