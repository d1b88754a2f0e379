import type { Window } from '../../analysis/curve';
import { extrapolatedOnset, type ExtrapolatedOnset } from '../../analysis/extrapolatedOnset';
import type { OnsetStatement } from '../../language/model';
import type { Effective } from '../../language/program';
import { constructionOf } from '../construction';
import { edgeInputs, evaluateShifted, shiftedValues } from '../edges';
import { failedOutcome } from '../failedOutcome';
import { locate } from '../locate';
import type { StatementOutcome } from '../outcome';
import { pointQuantities } from '../pointResults';
import { defaults, smoothing, widthOf } from '../settings';
import type { StatementContext } from '../statementContext';
import { renamePoint } from './crossing';

/** First line ∩ steepest tangent of any signal. */
export function evaluateOnset(context: StatementContext, source: Effective<OnsetStatement>): StatementOutcome {
  const { run } = context;
  const statement = source.statement;
  const signal = statement.of ?? 'heatflow';
  const located = locate(context, statement.place, signal, statement.span);
  if (!located.ok) return failedOutcome(source, statement.name, located.failure, signal);
  const { placed, curve, noise } = located.value;
  const span = widthOf(placed, statement.span, defaults.span);
  const smooth = smoothing(placed, statement.smooth);
  const evaluate = (window: Window, propagate: boolean): ExtrapolatedOnset | null =>
    extrapolatedOnset(curve, window, { span: span.from, smooth: smooth.seconds, noise, propagate });
  const found = evaluate(placed.window, true);
  if (found === null) {
    return failedOutcome(
      source,
      statement.name,
      {
        code: 'below-noise',
        token: 'window',
        message: `No tangent in the window meets the line before it: ${signal} shows no onset there.`,
        candidates: [],
      },
      signal,
      placed,
    );
  }
  const moved = evaluateShifted(run, placed, (window) => evaluate(window, false));
  const { edges } = edgeInputs(placed, run.stem, signal);
  const point = pointQuantities(
    run,
    placed,
    statement.name,
    'temperature',
    found.onset,
    shiftedValues(moved, (f) => f.onset),
    edges,
  );
  return {
    source,
    name: statement.name,
    failure: null,
    placed,
    signal,
    quantities: renamePoint(point),
    method: `line over ${span.text}; ${smooth.text}`,
    findings: [],
    construction: constructionOf(run, placed, statement.name, signal, found.shapes),
    masses: null,
    analysis: { of: 'other' },
  };
}
