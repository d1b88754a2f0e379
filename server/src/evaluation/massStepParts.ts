import type { MassStep } from '../analysis/massStep';
import type { RawShape } from './construction';
import type { Placed } from './outcome';
import type { PreparedRun } from './preparedRun';

/** A mass is level where it changes by no more than this in a kelvin (language.md 4: 0.005 %/K of the initial mass). */
export const levelPercentPerKelvin = 0.005;

/** The same as a slope per second in the unit of the mass signal; in a hold as at 10 K/min. */
export function levelSlope(run: PreparedRun, placed: Placed | null): number {
  const per = placed?.secondsPerKelvin ?? { from: 6, to: 6 };
  return ((levelPercentPerKelvin / 100) * run.mass.reference) / Math.max(per.from, per.to);
}

export function stepShapes(step: MassStep): RawShape[] {
  const shapes: RawShape[] = [
    { shape: 'line', role: 'level', points: step.shapes.levelFrom },
    { shape: 'line', role: 'level', points: step.shapes.levelTo },
  ];
  if (step.shapes.tangent.length > 1) {
    shapes.push({ shape: 'line', role: 'tangent', points: step.shapes.tangent });
    shapes.push({ shape: 'mark', quantity: 'start', at: step.shapes.tangent[0] });
    shapes.push({ shape: 'mark', quantity: 'end', at: step.shapes.tangent[step.shapes.tangent.length - 1] });
  }
  return shapes;
}
