import { massStep } from '../analysis/massStep';
import type { Window } from '../analysis/curve';
import type { Basis } from '../language/model';
import { divide, exact, multiply, scale, subtract, withU } from '../quantities/arithmetic';
import type { Uncertain } from '../quantities/uncertain';
import type { Unit } from '../quantities/unit';
import { basisMass, inMilligrams, initialLabel, initialMass } from './basis';
import { edgeInputs, evaluateShifted, shiftedValues } from './edges';
import type { Placed } from './outcome';
import { localParts } from './pointResults';
import type { PreparedRun } from './preparedRun';
import { defaults, smoothing, widthOf } from './settings';
import type { StatementContext } from './statementContext';
import type { StoredUnit } from '../runs/run';
import { joule, microvoltSecond, one } from './units';

/** Turns areas and heights of a heat-flow signal into heats over a basis. */
export interface HeatScale {
  readonly basis: string;
  /** y·s to J/g of the basis; null: not a calibrated heat flow, or the mass is missing. */
  readonly enthalpy: ((area: Uncertain) => Uncertain | null) | null;
  /** y to W/g of the basis. */
  readonly height: ((height: Uncertain) => Uncertain | null) | null;
  /** y·s to the unit of `area`. */
  readonly area: { readonly unit: Unit; readonly of: (area: Uncertain) => Uncertain | null };
  /** Code that explains a null. */
  readonly reason: 'mass-missing' | 'dependency' | 'signal-missing' | null;
}

export interface HeatBasis {
  readonly label: string;
  /** Basis mass over initial mass. */
  readonly share: Uncertain | null;
  readonly reason: 'mass-missing' | 'dependency' | 'signal-missing' | null;
}

/** The share of the initial mass that a heat is divided by. */
export function heatBasis(context: StatementContext, per: Basis | null, placed: Placed): HeatBasis {
  const { run } = context;
  if (per === null || per.of === 'initial mass') return { label: initialLabel(run), share: exact(1), reason: null };
  if (per.of === 'mass at start' || per.of === 'mass lost') {
    const own = massesAtEdges(context, placed);
    if (own === null) return { label: per.of, share: null, reason: 'signal-missing' };
    const mass = per.of === 'mass lost' ? subtract(own.start, own.end) : own.start;
    return { label: per.of, share: divide(mass, initialMass(run)), reason: null };
  }
  const basis = basisMass(context, per, { massStart: null, change: null });
  if (basis.mass === null) return { label: basis.label, share: null, reason: 'dependency' };
  return { label: basis.label, share: divide(basis.mass, initialMass(run)), reason: null };
}

/** Mass levels at the ends of the window of a heat-flow effect, with their influences. */
function massesAtEdges(context: StatementContext, placed: Placed): { start: Uncertain; end: Uncertain } | null {
  const { run } = context;
  const mass = run.signals.get('mass');
  const curve = mass?.curve(placed.segment) ?? null;
  if (mass === undefined || curve === null) return null;
  const span = widthOf(placed, null, defaults.span);
  const smooth = smoothing(placed, null).seconds;
  const departureFor = widthOf(placed, null, defaults.departure).from;
  const noise = mass.noise(placed.segment);
  const evaluate = (window: Window, propagate: boolean) =>
    massStep(curve, window, {
      by: 'levels',
      spanFrom: span.from,
      spanTo: span.to,
      smooth,
      departureFor,
      noise,
      propagate,
    });
  const step = evaluate(placed.window, true);
  if (step === null) return null;
  const moved = evaluateShifted(run, placed, (window) => evaluate(window, false));
  const local = edgeInputs(placed, run.stem, 'mass');
  return {
    start: {
      value: step.massStart.value,
      parts: localParts(
        step.massStart,
        local.level.from,
        shiftedValues(moved, (s) => s.massStart),
        local.edges,
      ),
    },
    end: {
      value: step.massEnd.value,
      parts: localParts(
        step.massEnd,
        local.level.to,
        shiftedValues(moved, (s) => s.massEnd),
        local.edges,
      ),
    },
  };
}

export function milligramsOf(run: PreparedRun): Uncertain | null {
  const known = run.mass.milligrams;
  if (known !== null) return known.u === 0 ? exact(known.value) : withU(known.value, known.u, known.input, null);
  return run.signals.has('mass') ? inMilligrams(run, initialMass(run)) : null;
}

/**
 * Heats from a heat-flow signal. mW: over the initial mass in mg gives W/g and J/g. W/g: already per initial mass as
 * exported. µV and µV/mg: not calibrated, so areas only and never J/g.
 */
export function heatScale(run: PreparedRun, unit: StoredUnit, basis: HeatBasis): HeatScale {
  const milligrams = milligramsOf(run);
  const { label, share } = basis;
  if (unit === 'mW') {
    const over =
      milligrams === null || share === null ? null : (v: Uncertain) => divide(v, multiply(milligrams, share));
    return {
      basis: label,
      enthalpy: over,
      height: over,
      area: { unit: joule, of: (a) => scale(a, 1e-3) },
      reason: share === null ? basis.reason : milligrams === null ? 'mass-missing' : null,
    };
  }
  if (unit === 'W/g') {
    const over = share === null ? null : (v: Uncertain) => divide(v, share);
    return {
      basis: label,
      enthalpy: over,
      height: over,
      area: { unit: joule, of: (a) => (milligrams === null ? null : scale(multiply(a, milligrams), 1e-3)) },
      reason: share === null ? basis.reason : null,
    };
  }
  if (unit === 'µV') {
    return { basis: label, enthalpy: null, height: null, area: { unit: microvoltSecond, of: (a) => a }, reason: null };
  }
  return {
    basis: label,
    enthalpy: null,
    height: null,
    area: {
      unit: milligrams === null ? one : microvoltSecond,
      of: (a) => (milligrams === null ? null : multiply(a, milligrams)),
    },
    reason: milligrams === null ? 'mass-missing' : null,
  };
}
