import type { Baseline, BaselineKind, Line } from './baseline';
import type { Curve, Window } from './curve';
import { levelStretch, type LevelStretch, type StretchRule } from './levelStretch';
import type { Noise } from './noise';
import { sigmoidalBaseline } from './sigmoidalBaseline';
import { fittedLine, joiningLine, straightBaseline } from './straightBaseline';
import { windowIntegral, type IntegralGrid } from './windowIntegral';

/** A level stretch and its line. */
export interface StretchAndLine {
  readonly stretch: LevelStretch;
  readonly line: Line;
}

/** Everything from which the baselines of a window are drawn; each stretch is looked for when it is asked for. */
export interface WindowBaselines {
  readonly grid: IntegralGrid;
  /** The level stretch inside each limit: what tangential and sigmoidal baselines rest on. */
  left(): StretchAndLine;
  right(): StretchAndLine;
  /** The level stretch centred on each limit: what the straight baseline rests on. */
  astrideLeft(): StretchAndLine;
  astrideRight(): StretchAndLine;
  of(kind: BaselineKind): Baseline;
}

/** A departure below this share of the range of y in the window is none: keeps exact curves from being straight nowhere. */
const FLOOR = 1e-5;

/**
 * The lines of a window. `linear` joins the local levels at both limits, each read from a stretch centred on its limit;
 * the others rest on stretches that lie inside the window, and reach out of it only as far as an effect close to the
 * limit leaves them short. `thin` is `curve` or averages of it; all but the area is read from `thin`, `noise` is its.
 */
export function windowBaselines(
  curve: Curve,
  thin: Curve,
  window: Window,
  options: { readonly spanFrom: number; readonly spanTo: number; readonly noise: Noise },
): WindowBaselines {
  const grid = windowIntegral(curve, thin, window);
  const { noise, spanFrom, spanTo } = options;
  const width = window.to - window.from;
  const common = { noise, floor: FLOOR * rangeOf(grid.y) };
  const from = { ...common, limit: window.from, inward: 1, span: spanFrom } as const;
  const to = { ...common, limit: window.to, inward: -1, span: spanTo } as const;
  const within = (rule: typeof from | typeof to): StretchAndLine =>
    stretchAndLine(thin, { ...rule, inside: Math.min(rule.span, width / 2), outside: rule.span });
  const astride = (rule: typeof from | typeof to): StretchAndLine =>
    stretchAndLine(thin, { ...rule, inside: Math.min(rule.span, width) / 2, outside: rule.span / 2 });
  const left = once(() => within(from));
  const right = once(() => within(to));
  const astrideLeft = once(() => astride(from));
  const astrideRight = once(() => astride(to));
  return {
    grid,
    left,
    right,
    astrideLeft,
    astrideRight,
    of(kind) {
      if (kind === 'sigmoidal') return sigmoidalBaseline(left().line, right().line, grid);
      if (kind === 'tangent left') return straightBaseline(kind, left().line, grid);
      if (kind === 'tangent right') return straightBaseline(kind, right().line, grid);
      const joining = joiningLine(astrideLeft().stretch.line, astrideRight().stretch.line, window);
      return straightBaseline(kind, joining, grid);
    },
  };
}

function stretchAndLine(curve: Curve, rule: StretchRule): StretchAndLine {
  const stretch = levelStretch(curve, rule);
  return { stretch, line: fittedLine(stretch.line, rule.limit) };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
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
