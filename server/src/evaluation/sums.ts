import { failed, success, type Outcome } from '../base/outcome';
import { dependency, type Failure } from './failedOutcome';
import type { Placed } from './outcome';
import { secondsPerKelvin } from './place';
import type { StatementContext } from './statementContext';

/** The hull of the windows of a sum's parts: one effect from the first edge to the last, in one segment. */
export function hullOfParts(context: StatementContext, parts: readonly string[]): Outcome<Placed, Failure> {
  const placed: Placed[] = [];
  for (const part of parts) {
    const of = context.outcome(part)?.placed ?? null;
    if (of === null) return failed({ code: dependency, token: 'name', message: '', candidates: [] });
    placed.push(of);
  }
  const first = placed[0];
  const elsewhere = placed.find((p) => p.segment?.name !== first.segment?.name);
  if (elsewhere !== undefined) {
    return failed({
      code: 'window-crosses-segments',
      token: 'head',
      message: `The parts lie in ${first.segment?.name ?? 'the run'} and in ${elsewhere.segment?.name ?? 'the run'}: one effect needs one segment.`,
      candidates: [],
    });
  }
  const window = {
    from: Math.min(...placed.map((p) => p.window.from)),
    to: Math.max(...placed.map((p) => p.window.to)),
  };
  const starts = placed.find((p) => p.window.from === window.from)!;
  const ends = placed.find((p) => p.window.to === window.to)!;
  return success({
    segment: first.segment,
    window,
    shown: { from: starts.shown.from, to: ends.shown.to, unit: first.shown.unit, rule: `hull of ${parts.join(' + ')}` },
    secondsPerKelvin: secondsPerKelvin(context.run, first.segment, window),
  });
}
