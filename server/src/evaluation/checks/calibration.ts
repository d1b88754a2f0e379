import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import type { CheckContext } from './context';
import { at, celsius, insertClause, kelvin } from './wording';

/** Whether a calibration is stated, and whether the temperatures found lie in its range. */
export function checkCalibration(context: CheckContext): Finding[] {
  const { program, run } = context;
  if (program.run === null) return [];
  const ranges = run.calibrated.filter((c) => c.signal === 'temperature');
  const evaluated = [...context.outcomes.values()].filter((o) => temperatures(o).length > 0);
  if (ranges.length === 0) {
    if (evaluated.length === 0) return [];
    return [
      makeFinding(
        'calibration-not-stated',
        { statement: program.run.id, token: 'head' },
        'No calibration of the temperature is stated: temperatures are shown as indicated, heats as exported.',
        { fixes: [insertClause(program.run.id, `calibrated temperature ${usedRange(evaluated)}`)] },
      ),
    ];
  }
  const low = Math.min(...ranges.map((r) => r.from));
  const high = Math.max(...ranges.map((r) => r.to));
  const limit = context.limit('outside-calibration');
  return evaluated.flatMap((outcome) => {
    const outside = temperatures(outcome)
      .map((t) => ({ t, off: t < low ? low - t : t - high }))
      .filter(({ off }) => off > limit)
      .sort((a, b) => b.off - a.off);
    if (outside.length === 0) return [];
    const { t, off } = outside[0];
    return [
      makeFinding(
        'outside-calibration',
        at(outcome, 'name'),
        `${outcome.name} lies at ${celsius(t)}, ${kelvin(off)} outside the calibrated range ${celsius(low)} to ${celsius(high)}: indicated only.`,
        { about: outcome.name },
      ),
    ];
  });
}

type Outcome = CheckContext['outcomes'] extends ReadonlyMap<string, infer O> ? O : never;

function temperatures(outcome: Outcome): number[] {
  return outcome.quantities.flatMap((q) =>
    q.kind === 'temperature' && q.uncertain !== null ? [q.uncertain.value] : [],
  );
}

function usedRange(outcomes: readonly Outcome[]): string {
  const all = outcomes.flatMap(temperatures);
  const low = Math.floor(Math.min(...all) / 10) * 10;
  const high = Math.ceil(Math.max(...all) / 10) * 10;
  return `${low}..${high} °C u 1 K`;
}
