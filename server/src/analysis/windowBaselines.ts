import type { Baseline, BaselineKind, Line } from './baseline';
import type { Curve, Window } from './curve';
import { levelStretch, type LevelStretch } from './levelStretch';
import { silent, type Noise } from './noise';
import type { SampleRange } from './range';
import { sigmoidalBaseline } from './sigmoidalBaseline';
import { fittedLine, joiningLine, straightBaseline } from './straightBaseline';
import { windowIntegral, type IntegralGrid } from './windowIntegral';

/** Everything from which the baselines of a window are drawn; each is drawn when asked for. */
export interface WindowBaselines {
  readonly grid: IntegralGrid;
  /** The level stretch inside each limit and its line: what tangential and sigmoidal baselines rest on. */
  readonly stretchLeft: LevelStretch;
  readonly stretchRight: LevelStretch;
  readonly left: Line;
  readonly right: Line;
  /** The lines of the stretches centred on the limits. */
  readonly astrideLeft: Line;
  readonly astrideRight: Line;
  of(kind: BaselineKind): Baseline;
}

/** A departure below this share of the range of y in the window is none: keeps exact curves from being straight nowhere. */
const FLOOR = 1e-5;

/**
 * The lines of a window. `linear` joins the local levels at both limits, each read from a stretch centred on its limit;
 * the others rest on stretches that lie inside the window, and reach out of it only as far as an effect close to the
 * limit leaves them short.
 */
export function windowBaselines(
  curve: Curve,
  window: Window,
  options: {
    readonly spanFrom: number;
    readonly spanTo: number;
    readonly noise: Noise | null;
    readonly data?: SampleRange;
  },
): WindowBaselines {
  const grid = windowIntegral(curve, window);
  const { data = { first: 0, last: curve.x.length }, spanFrom, spanTo } = options;
  const width = window.to - window.from;
  const common = { data, noise: options.noise ?? silent, floor: FLOOR * rangeOf(grid.y) };
  const from = { ...common, limit: window.from, inward: 1, span: spanFrom } as const;
  const to = { ...common, limit: window.to, inward: -1, span: spanTo } as const;
  const within = (rule: typeof from | typeof to): LevelStretch =>
    levelStretch(curve, { ...rule, inside: Math.min(rule.span, width / 2), outside: rule.span });
  const astride = (rule: typeof from | typeof to): LevelStretch =>
    levelStretch(curve, { ...rule, inside: Math.min(rule.span, width) / 2, outside: rule.span / 2 });

  const stretchLeft = within(from);
  const stretchRight = within(to);
  const centredLeft = astride(from);
  const centredRight = astride(to);
  const left = fittedLine(stretchLeft.line, window.from);
  const right = fittedLine(stretchRight.line, window.to);
  return {
    grid,
    stretchLeft,
    stretchRight,
    left,
    right,
    astrideLeft: fittedLine(centredLeft.line, window.from),
    astrideRight: fittedLine(centredRight.line, window.to),
    of(kind) {
      if (kind === 'sigmoidal') return sigmoidalBaseline(left, right, grid);
      if (kind === 'tangent left') return straightBaseline(kind, left, grid);
      if (kind === 'tangent right') return straightBaseline(kind, right, grid);
      return straightBaseline(kind, joiningLine(centredLeft.line, centredRight.line, window), grid);
    },
  };
}

function rangeOf(y: Float64Array): number {
  let low = Infinity;
  let high = -Infinity;
  for (const v of y) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return high - low;
}
