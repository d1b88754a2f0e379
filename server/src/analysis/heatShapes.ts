import type { Baseline, Line } from './baseline';
import type { Window } from './curve';
import type { HeatTangent } from './heatTangent';
import type { PeakTop } from './peakTop';
import type { WindowBaselines } from './windowBaselines';

type Points = readonly (readonly [time: number, y: number])[];

/** Construction lines in data units, for the plot and for a second person. */
export interface HeatPeakShapes {
  readonly baseline: Points;
  /** The level stretches that were fitted, with their lines. */
  readonly levelFrom: Points;
  readonly levelTo: Points;
  readonly onsetTangent: Points;
  readonly endTangent: Points;
  /** From the baseline to the top. */
  readonly height: Points;
}

const BENDS = 64;

export function heatShapes(
  { from, to }: Window,
  baselines: WindowBaselines,
  baseline: Baseline,
  top: PeakTop,
  first: HeatTangent | null,
  last: HeatTangent | null,
): HeatPeakShapes {
  const straight = baseline.kind === 'linear';
  const left = straight ? baselines.astrideLeft() : baselines.left();
  const right = straight ? baselines.astrideRight() : baselines.right();
  const bends = baseline.kind === 'sigmoidal' ? BENDS : 1;
  return {
    baseline: Array.from({ length: bends + 1 }, (_, i) => {
      const t = from + ((to - from) * i) / bends;
      return [t, baseline.at(t)] as const;
    }),
    levelFrom: [from - left.stretch.outside, from + left.stretch.inside].map((t) => [t, left.line.at(t)] as const),
    levelTo: [to - right.stretch.inside, to + right.stretch.outside].map((t) => [t, right.line.at(t)] as const),
    onsetTangent: tangentPoints(baseline.before, first, top),
    endTangent: tangentPoints(baseline.after, last, top),
    height: [
      [top.time, baseline.at(top.time)],
      [top.time, top.value],
    ],
  };
}

/** The tangent from the baseline's line up to the height of the peak. */
function tangentPoints(line: Line, tangent: HeatTangent | null, top: PeakTop): Points {
  if (tangent === null || tangent.slope === line.slope) return [];
  const low = tangent.time + (line.at(tangent.time) - tangent.value) / (tangent.slope - line.slope);
  const high = tangent.time + (top.value - tangent.value) / tangent.slope;
  return [low, high].map((t) => [t, tangent.value + tangent.slope * (t - tangent.time)] as const);
}
