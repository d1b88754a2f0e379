import type { Part } from '../quantities/uncertain';
import { influence, localInput } from './influences';
import type { Placed } from './outcome';
import type { StatementContext } from './statementContext';

/**
 * What the subtracted blanks leave in one reading of the mass: the error of the blank there less that at its first
 * reading, from which it is counted. Each is an influence of its place, so that sums of steps that share an edge, or run
 * to a residue, cancel as they do on the curve. `at` as shown (°C or min), `time` in s.
 */
export function blankParts(context: StatementContext, placed: Placed, at: number, time: number): Part[] {
  const { run } = context;
  const effect = run.signals.get('mass')?.blank?.standardUncertainty(run.time[0], time);
  if (effect === undefined || effect.u === 0) return [];
  const u = effect.u / Math.SQRT2;
  const group = `blanks of mass, ${run.stem}`;
  const there = localInput({
    what: 'blank',
    signal: 'mass',
    segment: placed.segment?.name ?? 'the run',
    at: Math.round(at * 100) / 100,
    unit: placed.shown.unit,
    stem: run.stem,
  });
  return [
    { input: there, u: -u, dof: effect.dof, group },
    { input: influence.blankStart('mass', run.stem), u, dof: effect.dof, group },
  ];
}

/** The balance's own scale, where `calibrated mass` states one. */
export function massScale(context: StatementContext, mass: number): Part[] {
  const range = context.run.calibrated.find((c) => c.signal === 'mass');
  if (range === undefined || range.u === null) return [];
  return [
    {
      input: influence.signalScale('mass', context.run.stem),
      u: range.u.relative ? range.u.value * mass : range.u.value,
      dof: null,
    },
  ];
}
