import type { Basis } from '../language/model';
import { divide, exact, multiply, scale, withU } from '../quantities/arithmetic';
import type { Uncertain } from '../quantities/uncertain';
import type { PreparedRun } from './preparedRun';
import type { StatementContext } from './statementContext';

/** The mass that a percentage or a heat refers to, in the unit of the run's mass signal (mg, or 1 of exported fractions). */
export interface BasisMass {
  readonly label: string;
  /** null: the statement it comes from failed. */
  readonly mass: Uncertain | null;
}

/** The initial mass with its influence. */
export function initialMass(run: PreparedRun): Uncertain {
  const { reference, u, input } = run.mass;
  return u === 0 ? exact(reference) : withU(reference, u, input, null);
}

export function initialLabel(run: PreparedRun): string {
  return run.mass.source === 'first reading' ? 'first reading' : 'initial mass';
}

/** The part of the basis that is known before the statement itself is evaluated. */
export function basisMass(
  context: StatementContext,
  per: Basis | null,
  own: { readonly massStart: Uncertain | null; readonly change: Uncertain | null },
): BasisMass {
  const of = per ?? { of: 'initial mass' as const };
  switch (of.of) {
    case 'initial mass':
      return { label: initialLabel(context.run), mass: initialMass(context.run) };
    case 'mass at start':
      return { label: 'mass at start', mass: own.massStart };
    case 'mass lost':
      return { label: 'mass lost', mass: own.change };
    case 'dried mass':
      return { label: `dried, ${of.step}`, mass: context.outcome(of.step)?.masses?.end ?? null };
    case 'ignited mass':
      return { label: `ignited, ${of.residue}`, mass: context.outcome(of.residue)?.masses?.end ?? null };
  }
}

/** `mass` over the basis, in %. */
export function percentOf(mass: Uncertain, basis: Uncertain): Uncertain | null {
  if (basis.value === 0) return null;
  return scale(divide(mass, basis), 100);
}

/** A mass in the signal's unit as mg; null where only fractions are known and nothing was weighed. */
export function inMilligrams(run: PreparedRun, mass: Uncertain): Uncertain | null {
  if (run.signals.get('mass')?.unit === 'mg') return mass;
  const weighed = run.mass.milligrams;
  if (weighed === null) return null;
  const factor = weighed.u === 0 ? exact(weighed.value) : withU(weighed.value, weighed.u, weighed.input, null);
  return multiply(mass, factor);
}
