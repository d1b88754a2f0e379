import type { Window } from '../../analysis/curve';
import { heatPeak, type HeatPeak } from '../../analysis/heatPeak';
import type { Measured } from '../../analysis/measured';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import type { PeakStatement } from '../../language/model';
import type { Effective } from '../../language/program';
import type { Part, Uncertain } from '../../quantities/uncertain';
import type { Unit } from '../../quantities/unit';
import { constructionOf } from '../construction';
import { peakShapes } from '../heatParts';
import { edgeInputs, evaluateShifted, shiftedValues } from '../edges';
import { failedOutcome } from '../failedOutcome';
import { heatBasis, heatScale } from '../heatUnits';
import { influence } from '../influences';
import { locate } from '../locate';
import type { QuantityOutcome, StatementOutcome } from '../outcome';
import { localParts, pointQuantities, type Shifted } from '../pointResults';
import { defaults, narrowedText, smoothing, widthOf } from '../settings';
import type { StatementContext } from '../statementContext';
import { joulePerGram, kelvin, wattPerGram } from '../units';

/** A heat-flow effect after ISO 11357-1 and -3 (quantities: language.md 3). Endothermic positive. */
export function evaluatePeak(context: StatementContext, source: Effective<PeakStatement>): StatementOutcome {
  const { run } = context;
  const statement = source.statement;
  const signal = statement.of ?? 'heatflow';
  const located = locate(context, statement.place, signal, statement.span, statement.sumOf);
  if (!located.ok) return failedOutcome(source, statement.name, located.failure, signal);
  const { placed, curve, noise } = located.value;
  const span = widthOf(placed, statement.span, defaults.span);
  const smooth = smoothing(placed, statement.smooth);
  const departure = widthOf(placed, null, defaults.departure);
  const baseline = statement.baseline ?? 'linear';
  const evaluate = (window: Window, propagate: boolean): HeatPeak | null =>
    heatPeak(curve, window, {
      baseline,
      spanFrom: span.from,
      spanTo: span.to,
      smooth: smooth.seconds,
      narrow: statement.smooth === null,
      departureFor: departure.from,
      noise,
      propagate,
    });
  const peak = evaluate(placed.window, true);
  if (peak === null) {
    return failedOutcome(
      source,
      statement.name,
      {
        code: 'too-few-points',
        token: 'window',
        message: 'Too few readings lie in the window to evaluate a peak.',
        candidates: [],
      },
      signal,
      placed,
    );
  }
  const moved = evaluateShifted(run, placed, (window) => evaluate(window, false));
  const { edges } = edgeInputs(placed, run.stem, signal);
  const shifts = (of: (p: HeatPeak) => Measured | null): Shifted => shiftedValues(moved, of);
  const uncertain = (quantity: string, measured: Measured, of: (p: HeatPeak) => Measured | null): Uncertain => ({
    value: measured.value,
    parts: localParts(measured, influence.noise(quantity, statement.name, run.stem), shifts(of), edges),
  });

  const prepared = run.signals.get(signal)!;
  const basis = heatBasis(context, statement.per, placed);
  const scale = heatScale(run, prepared.unit, basis);
  const area = withParts(
    uncertain('area', peak.area, (p) => p.area),
    heatScaleParts(context, signal, peak.area.value),
  );
  const height = uncertain('height', peak.height, (p) => p.height);
  const factor = context.limit('below-noise');
  const detected = Math.abs(peak.height.value) >= factor * noise.sigma;
  const undirected = run.endothermic === null;
  const quantities: QuantityOutcome[] = [];
  const sized = (quantity: string, value: Uncertain | null, unit: Unit, labelled: boolean, limit: number): void => {
    quantities.push({
      quantity,
      uncertain: undirected ? null : value,
      unit,
      kind: 'quantity',
      basis: labelled ? scale.basis : null,
      limit: detected ? null : limit,
      reason: undirected ? 'direction-not-declared' : value === null ? (scale.reason ?? 'signal-missing') : null,
    });
  };
  // The smallest area that would show: 5σ√2 over the width of the window's readings.
  const areaLimit = Math.max(
    factor * noise.sigma * Math.SQRT2 * (peak.halfWidth?.value ?? placed.window.to - placed.window.from),
    3 * peak.area.noise,
  );
  const enthalpyLimit = scale.enthalpy?.({ value: areaLimit, parts: [] })?.value ?? areaLimit;
  const heightLimit = scale.height?.({ value: factor * noise.sigma, parts: [] })?.value ?? factor * noise.sigma;
  if (scale.enthalpy !== null) sized('enthalpy', scale.enthalpy(area), joulePerGram, true, Math.abs(enthalpyLimit));
  else if (scale.reason !== null) sized('enthalpy', null, joulePerGram, true, 0);
  sized(
    'area',
    scale.area.of(area),
    scale.area.unit,
    false,
    Math.abs(scale.area.of({ value: areaLimit, parts: [] })?.value ?? areaLimit),
  );
  if (scale.height !== null) sized('height', scale.height(height), wattPerGram, true, Math.abs(heightLimit));
  if (detected) {
    const points: [string, (p: HeatPeak) => Measured | null][] = [
      ['departure', (p) => p.departure],
      ['onset', (p) => p.onset],
      ['peak', (p) => p.peak],
      ['end', (p) => p.end],
      ['return', (p) => p.return],
    ];
    for (const [quantity, of] of points) {
      quantities.push(...pointQuantities(run, placed, statement.name, quantity, of(peak), shifts(of), edges));
    }
    quantities.push(...widthQuantities(context, placed, statement.name, peak, shifts, edges));
  } else {
    for (const quantity of ['onset', 'peak', 'end', 'width']) {
      quantities.push({
        quantity,
        uncertain: null,
        unit: kelvin,
        kind: 'quantity',
        basis: null,
        limit: null,
        reason: 'below-noise',
      });
    }
  }
  const findings: Finding[] = [];
  if (undirected) {
    findings.push(
      makeFinding(
        'direction-not-declared',
        { statement: source.id, token: 'name' },
        `${statement.name} has a sign only once the run says which way endothermic effects point: write "endothermic up" or "endothermic down" under run.`,
        {
          fixes: ['up', 'down'].map((way) => ({
            title: `Write "endothermic ${way}"`,
            edits: [{ edit: 'insert-clause', statement: context.runStatement, text: `endothermic ${way}` }],
            safe: false,
          })),
          about: statement.name,
          only: ['enthalpy', 'area', 'height'],
        },
      ),
    );
  }
  const exported = run.calibrated.some((c) => c.signal === signal) ? '' : '; heat flow as exported';
  return {
    source,
    name: statement.name,
    failure: null,
    placed,
    signal,
    quantities,
    method: `baseline ${baseline}, span ${span.text}; ${narrowedText(placed, smooth, peak.checks?.smooth ?? null)}${exported}`,
    findings,
    construction: constructionOf(run, placed, statement.name, signal, peakShapes(peak)),
    masses: null,
    analysis: { of: 'peak', peak },
  };
}

/** Width at half height in K; a hold has none. */
function widthQuantities(
  context: StatementContext,
  placed: NonNullable<StatementOutcome['placed']>,
  name: string,
  peak: HeatPeak,
  shifts: (of: (p: HeatPeak) => Measured | null) => Shifted,
  edges: Parameters<typeof localParts>[3],
): QuantityOutcome[] {
  const width = peak.halfWidth;
  if (width === null) return [];
  const per = placed.segment === null || placed.segment.direction === 'hold' ? null : context.run.map(placed.segment);
  if (per === null) return [];
  const factor = Math.abs(per.rateAt(peak.peak.value));
  return [
    {
      quantity: 'width',
      uncertain: {
        value: width.value * factor,
        parts: localParts(
          width,
          influence.noise('width', name, context.run.stem),
          shifts((p) => p.halfWidth),
          edges,
          factor,
        ),
      },
      unit: kelvin,
      kind: 'quantity',
      basis: null,
      limit: null,
      reason: null,
    },
  ];
}

function withParts(value: Uncertain, parts: readonly Part[]): Uncertain {
  return { value: value.value, parts: [...value.parts, ...parts] };
}

/** The sensitivity's own uncertainty, where `calibrated heatflow` states one. */
export function heatScaleParts(context: StatementContext, signal: string, area: number): Part[] {
  const range = context.run.calibrated.find((c) => c.signal === signal);
  if (range === undefined || range.u === null || !range.u.relative) return [];
  return [{ input: influence.signalScale(signal, context.run.stem), u: range.u.value * area, dof: null }];
}
