import type { Part } from '../quantities/uncertain';
import { influence } from './influences';
import type { Placed } from './outcome';
import type { StatementContext } from './statementContext';

/** What the subtracted blanks leave in the difference of two readings. */
export function blankParts(context: StatementContext, placed: Placed, name: string): Part[] {
  const blank = context.run.signals.get('mass')?.blank;
  const effect = blank?.standardUncertainty(placed.window.from, placed.window.to);
  if (effect === undefined || effect === null || effect.u === 0) return [];
  return [{ input: influence.blank('mass', name, context.run.stem), u: effect.u, dof: effect.dof }];
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
