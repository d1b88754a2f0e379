import type { Curve, Window } from './curve';
import { lineAt } from './level';
import type { Measured } from './measured';
import { noiseOf, type Noise } from './noise';
import { samplesIn } from './range';
import { steepest } from './steepest';

export interface OnsetOptions {
  /** Length of the stretch the first line is fitted to, at the start of the window, s. */
  readonly span: number;
  readonly smooth: number | null;
  readonly noise: Noise | null;
  readonly propagate?: boolean;
}

export interface ExtrapolatedOnset {
  readonly onset: Measured;
  readonly readings: number;
  /** The first line, the tangent from where they meet to where it touches, and the point itself. */
  readonly shapes: readonly OnsetShape[];
}

export type OnsetShape =
  | { readonly shape: 'line'; readonly role: 'baseline' | 'tangent'; readonly points: Points }
  | { readonly shape: 'mark'; readonly quantity: string; readonly at: readonly [number, number] };

type Points = readonly (readonly [time: number, y: number])[];

/**
 * The extrapolated onset of any signal: where the straight line of the stretch at the start of the window meets the
 * tangent at the steepest point of the window (ISO 11357-1 and ISO 11358-1, extrapolated onset; from memory). The line is
 * fitted inside the window; the steepest point is that where the slope differs most from the line's, rising or falling. Null where
 * the window holds fewer than five readings, or no flank. Times in s.
 */
export function extrapolatedOnset(curve: Curve, window: Window, options: OnsetOptions): ExtrapolatedOnset | null {
  const { noise, propagate = true } = options;
  const inside = samplesIn(curve.x, window);
  const readings = inside.last - inside.first;
  if (readings < 5) return null;
  const from = curve.x[inside.first];
  const line = lineAt(curve, from + options.span / 2, options.span);
  const smooth = options.smooth ?? 0;
  const rest = { from: Math.max(window.from, line.from), to: window.to };
  const candidates = (['rising', 'falling'] as const).map((d) =>
    steepest(curve, rest, d, { smooth, noise, propagate }),
  );
  let best = candidates[0];
  for (const c of candidates) {
    if (c === null) continue;
    if (best === null || Math.abs(c.slope.value - line.slope) > Math.abs(best.slope.value - line.slope)) best = c;
  }
  if (best === null) return null;
  const steep = best;
  const slope = steep.slope.value - line.slope;
  if (slope === 0) return null;
  const t0 = steep.time.value;
  const t = t0 + (line.at(t0) - steep.tangent(t0)) / slope;
  const u =
    noise === null || !propagate
      ? 0
      : noiseOf(noise, curve.x, [
          { times: 1 / slope, of: line.functional(t) },
          { times: -1 / slope, of: steep.tangentFunctional(t) },
        ]);
  const points = (from: number, to: number, at: (t: number) => number): Points => [from, to].map((t) => [t, at(t)]);
  return {
    onset: { value: t, noise: u, dof: noise?.dof ?? null },
    readings,
    shapes: [
      { shape: 'line', role: 'baseline', points: points(from, Math.max(t, line.to), (at) => line.at(at)) },
      { shape: 'line', role: 'tangent', points: points(t, t0, (at) => steep.tangent(at)) },
      { shape: 'mark', quantity: 'temperature', at: [t, line.at(t)] },
    ],
  };
}
