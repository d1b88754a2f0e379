import type { Window } from '../../analysis/curve';
import { glassTransition, type GlassTransition } from '../../analysis/glassTransition';
import type { Measured } from '../../analysis/measured';
import type { GlassStatement } from '../../language/model';
import type { Effective } from '../../language/program';
import { divide, exact, multiply, scale } from '../../quantities/arithmetic';
import type { Uncertain } from '../../quantities/uncertain';
import { constructionOf } from '../construction';
import { glassShapes } from '../heatParts';
import { edgeInputs, evaluateShifted, shiftedValues } from '../edges';
import { failedOutcome } from '../failedOutcome';
import { milligramsOf } from '../heatUnits';
import { influence } from '../influences';
import { locate } from '../locate';
import type { Placed, QuantityOutcome, StatementOutcome } from '../outcome';
import { localParts, pointQuantities, type Shifted } from '../pointResults';
import type { PreparedRun } from '../preparedRun';
import { plainQuantity } from '../quantityOutcome';
import { defaults, narrowedText, smoothing, widthOf } from '../settings';
import type { StatementContext } from '../statementContext';
import { heatCapacity, kelvin } from '../units';
import { heatScaleParts } from './peak';

/** A glass transition after ISO 11357-2 (quantities: language.md 3). */
export function evaluateGlass(context: StatementContext, source: Effective<GlassStatement>): StatementOutcome {
  const { run } = context;
  const statement = source.statement;
  const located = locate(context, statement.place, 'heatflow', statement.span);
  if (!located.ok) return failedOutcome(source, statement.name, located.failure, 'heatflow');
  const { placed, curve, noise } = located.value;
  const span = widthOf(placed, statement.span, defaults.glassSpan);
  const smooth = smoothing(placed, statement.smooth);
  const by = statement.by ?? 'half height';
  const evaluate = (window: Window, propagate: boolean): GlassTransition | null =>
    glassTransition(curve, window, {
      by,
      spanFrom: span.from,
      spanTo: span.to,
      smooth: smooth.seconds,
      narrow: statement.smooth === null,
      noise,
      propagate,
    });
  const glass = evaluate(placed.window, true);
  if (glass === null) {
    return failedOutcome(
      source,
      statement.name,
      {
        code: 'too-few-points',
        token: 'window',
        message: 'Too few readings lie in the window to fit a line on either side of the step.',
        candidates: [],
      },
      'heatflow',
      placed,
    );
  }
  const moved = evaluateShifted(run, placed, (window) => evaluate(window, false));
  const { edges } = edgeInputs(placed, run.stem, 'heatflow');
  const shifts = (of: (g: GlassTransition) => Measured | null): Shifted => shiftedValues(moved, of);
  // A step shows over many readings, so not the single reading's σ but the noise of the step itself decides.
  const detected = Math.abs(glass.step.value) >= context.limit('below-noise') * glass.step.noise;
  const quantities: QuantityOutcome[] = [];
  if (detected) {
    const points: [string, (g: GlassTransition) => Measured | null][] = [
      ['onset', (g) => g.onset],
      ['midpoint', (g) => g.midpoint],
      ['inflection', (g) => g.inflection],
      ['end', (g) => g.end],
    ];
    for (const [quantity, of] of points) {
      quantities.push(...pointQuantities(run, placed, statement.name, quantity, of(glass), shifts(of), edges));
    }
  } else {
    for (const quantity of ['onset', 'midpoint', 'inflection', 'end']) {
      quantities.push(plainQuantity(quantity, null, kelvin, 'quantity', null, 'below-noise'));
    }
  }
  const step: Uncertain = {
    value: glass.step.value,
    parts: [
      ...localParts(
        glass.step,
        influence.noise('delta_cp', statement.name, run.stem),
        shifts((g) => g.step),
        edges,
      ),
      ...heatScaleParts(context, 'heatflow', glass.step.value),
    ],
  };
  const divisor = capacityDivisor(run, placed, glass.midpoint?.value ?? placed.window.from);
  const value = divisor === null ? null : divide(run.endothermic === null ? absolute(step) : step, divisor);
  quantities.push({
    quantity: 'delta_cp',
    uncertain: value,
    unit: heatCapacity,
    kind: 'quantity',
    basis: null,
    limit:
      detected || divisor === null ? null : Math.abs((context.limit('below-noise') * glass.step.noise) / divisor.value),
    reason: value === null ? 'mass-missing' : null,
  });
  return {
    source,
    name: statement.name,
    failure: null,
    placed,
    signal: 'heatflow',
    quantities,
    method: `midpoint by ${by}, lines over ${span.text}; ${narrowedText(placed, smooth, glass.checks?.smooth ?? null)}`,
    findings: [],
    construction: constructionOf(run, placed, statement.name, 'heatflow', glassShapes(glass)),
    masses: null,
    analysis: { of: 'glass', glass },
  };
}

/** Heat flow to heat capacity: mass (mg) × |heating rate| (K/s) for mW, the rate alone for W/g; null for µV. */
function capacityDivisor(run: PreparedRun, placed: Placed, time: number): Uncertain | null {
  const unit = run.signals.get('heatflow')!.unit;
  const map = placed.segment === null ? null : run.map(placed.segment);
  if (map === null) return null;
  const rate = Math.abs(map.rateAt(time));
  if (unit === 'W/g') return exact(rate);
  const mass = milligramsOf(run);
  return unit === 'mW' && mass !== null ? multiply(mass, exact(rate)) : null;
}

function absolute(value: Uncertain): Uncertain {
  return value.value < 0 ? scale(value, -1) : value;
}
