import { massStep, type MassStep } from '../../analysis/massStep';
import type { Window } from '../../analysis/curve';
import type { Measured } from '../../analysis/measured';
import { fixedLimit } from '../../findings/table';
import type { StepStatement } from '../../language/model';
import type { Effective } from '../../language/program';
import { negate, scale, subtract } from '../../quantities/arithmetic';
import type { Part, Uncertain } from '../../quantities/uncertain';
import { edgeInputs, evaluateShifted, shiftedValues } from '../edges';
import { blankParts, massScale } from '../massInfluences';
import { basisMass, inMilligrams, percentOf } from '../basis';
import { levelSlope, stepShapes } from '../massStepParts';
import { influence, mergeParts } from '../influences';
import type { QuantityOutcome, StatementOutcome } from '../outcome';
import { failedOutcome } from '../failedOutcome';
import { locate } from '../locate';
import { localParts, pointQuantities, type Shifted } from '../pointResults';
import { constructionOf } from '../construction';
import { defaults, smoothing, widthOf } from '../settings';
import type { StatementContext } from '../statementContext';
import { milligram, one, percent, percentPerMinute } from '../units';

/** A mass step after ISO 11358-1 (quantities: language.md 3). */
export function evaluateStep(context: StatementContext, source: Effective<StepStatement>): StatementOutcome {
  const { run } = context;
  const statement = source.statement;
  const located = locate(context, statement.place, 'mass', statement.span, statement.sumOf);
  if (!located.ok) return failedOutcome(source, statement.name, located.failure, 'mass');
  const { placed, curve, noise, signal } = located.value;
  const span = widthOf(placed, statement.span, defaults.span);
  const smooth = smoothing(placed, statement.smooth);
  const departure = widthOf(placed, null, defaults.departure);
  const by = statement.by ?? 'levels';
  const evaluate = (window: Window, propagate: boolean): MassStep | null =>
    massStep(curve, window, {
      by,
      spanFrom: span.from,
      spanTo: span.to,
      smooth: smooth.seconds,
      departureFor: departure.from,
      levelSlope: levelSlope(run, placed),
      noise,
      propagate,
    });
  const step = evaluate(placed.window, true);
  if (step === null) {
    return failedOutcome(
      source,
      statement.name,
      {
        code: 'too-few-points',
        token: 'window',
        message: `Too few readings lie in the window to evaluate a step.`,
        candidates: [],
      },
      'mass',
    );
  }
  const moved = evaluateShifted(run, placed, (window) => evaluate(window, false));
  const local = edgeInputs(placed, run.stem, 'mass');
  const shifts = (of: (s: MassStep) => Measured | null): Shifted | null => shiftedValues(moved, of);

  const level = (measured: Measured, at: 'from' | 'to', of: (s: MassStep) => Measured): Uncertain => ({
    value: measured.value,
    parts: mergeParts([
      ...localParts(measured, local.level[at], shifts(of), local.edges),
      ...blankParts(context, placed, placed.shown[at], placed.window[at]),
    ]),
  });
  const massStart = level(step.massStart, 'from', (s) => s.massStart);
  const massEnd = level(step.massEnd, 'to', (s) => s.massEnd);
  const change = withParts(subtract(massStart, massEnd), massScale(context, step.change.value));

  const basis = basisMass(context, statement.per, { massStart, change });
  const quantities: QuantityOutcome[] = [];
  const sigma = noise.sigma;
  const blankU = run.signals.get('mass')?.blank?.standardUncertainty(placed.window.from, placed.window.to)?.u ?? 0;
  const detection = Math.max(context.limit('below-noise') * sigma * Math.SQRT2, fixedLimit('below-noise', 1) * blankU);
  const detected = Math.abs(step.change.value) >= detection;
  if (basis.mass === null) {
    return failedOutcome(
      source,
      statement.name,
      { code: 'dependency', token: 'per', message: '', candidates: [] },
      'mass',
    );
  }
  const basisValue = basis.mass;
  const inPercent = (quantity: string, mass: Uncertain, size: boolean): QuantityOutcome => {
    const value = percentOf(mass, basisValue);
    const limit = size && !detected && basisValue.value !== 0 ? (100 * detection) / Math.abs(basisValue.value) : null;
    return { quantity, uncertain: value, unit: percent, kind: 'fraction', basis: basis.label, limit, reason: null };
  };
  quantities.push(
    inPercent('loss', change, true),
    inPercent('gain', negate(change), true),
    inPercent('change', negate(change), true),
    inPercent('remaining', massEnd, false),
  );
  const mg = (quantity: string, mass: Uncertain, size: boolean): void => {
    const value = inMilligrams(run, mass);
    const factor = value === null || mass.value === 0 ? 1 : value.value / mass.value;
    quantities.push({
      quantity,
      uncertain: value,
      unit: milligram,
      kind: 'quantity',
      basis: null,
      limit: size && !detected ? detection * factor : null,
      reason: value === null ? 'mass-missing' : null,
    });
  };
  mg('mass_start', massStart, false);
  mg('mass_end', massEnd, false);
  mg('amount', change, true);
  if (detected) {
    const points: [string, (s: MassStep) => Measured | null][] = [
      ['start', (s) => s.start],
      ['midpoint', (s) => s.midpoint],
      ['end', (s) => s.end],
      ['inflection', (s) => s.inflection],
      ['departure', (s) => s.departure],
    ];
    for (const [quantity, of] of points) {
      quantities.push(...pointQuantities(run, placed, statement.name, quantity, of(step), shifts(of), local.edges));
    }
    if (step.rate !== null) {
      const parts = localParts(
        step.rate,
        influence.noise('rate', statement.name, run.stem),
        shifts((s) => s.rate),
        local.edges,
      );
      const perMinute = percentOf(scale({ value: step.rate.value, parts }, 60), basisValue);
      quantities.push({
        quantity: 'rate',
        uncertain: perMinute,
        unit: percentPerMinute,
        kind: 'quantity',
        basis: basis.label,
        limit: null,
        reason: null,
      });
    }
    quantities.push({
      quantity: 'maxima',
      uncertain: { value: step.maxima.count, parts: [] },
      unit: one,
      kind: 'number',
      basis: null,
      limit: null,
      reason: null,
    });
  } else {
    for (const quantity of ['start', 'midpoint', 'end', 'inflection', 'rate']) {
      quantities.push({
        quantity,
        uncertain: null,
        unit: percent,
        kind: 'quantity',
        basis: null,
        limit: null,
        reason: 'below-noise',
      });
    }
  }
  return {
    source,
    name: statement.name,
    failure: null,
    placed,
    signal,
    quantities,
    method: `${by}, span ${span.text}; ${smooth.text}`,
    findings: [],
    construction: constructionOf(run, placed, statement.name, 'mass', stepShapes(step)),
    masses: { start: massStart, end: massEnd },
    analysis: { of: 'step', step, scale: 100 / basisValue.value },
  };
}

function withParts(value: Uncertain, parts: readonly Part[]): Uncertain {
  return { value: value.value, parts: [...value.parts, ...parts] };
}
