import type { CurveId, Range, ViewState } from '../../../protocol/view';
import { dashesOf, type FigureColours } from '../palette';
import type { FigureBlocks, FigureLane, FigureLayout, Sample } from './layout';
import { chain, element } from './svg';

/** Names laid over the run in the order of the legend: runs, then the revision. */
export function laidOver(state: ViewState): readonly { readonly name: string; readonly of: CurveId['of'] }[] {
  const curves = state.lanes.filter((l) => !l.id.startsWith('difference:')).flatMap((lane) => lane.curves);
  const names = (of: CurveId['of']): string[] => [...new Set(curves.filter((c) => c.of === of).map((c) => c.name))];
  return [
    ...names('overlay').map((name) => ({ name, of: 'overlay' as const })),
    ...names('against').map((name) => ({ name, of: 'against' as const })),
  ];
}

/** The curves of one lane: what is laid over below, the run on top. */
export function curvesOf(
  at: FigureLane,
  blocks: FigureBlocks,
  layout: FigureLayout,
  state: ViewState,
  colours: FigureColours,
): string {
  const legend = laidOver(state);
  const isDifference = at.lane.id.startsWith('difference:');
  const drawn = (curve: CurveId): string => {
    const points = inView(blocks.get(curve.id) ?? [], layout.visible).map(
      ({ x, y }) => [layout.x(x), at.y(y)] as const,
    );
    const isOwn = curve.of === 'run' || isDifference;
    const place = legend.findIndex((l) => l.of === curve.of && l.name === curve.name);
    const dashes = isOwn ? [] : dashesOf(curve.of, Math.max(0, place));
    const d = chain(points);
    return d === ''
      ? ''
      : element('path', {
          d,
          fill: 'none',
          stroke: isOwn ? colours.ink : colours.muted,
          'stroke-width': isOwn ? 1.4 : 1.1,
          'stroke-linejoin': 'round',
          'stroke-dasharray': dashes.join(' '),
        });
  };
  const order = { overlay: 0, against: 1, run: 2 } as const;
  return [...at.lane.curves]
    .sort((a, b) => order[a.of] - order[b.of])
    .map(drawn)
    .join('');
}

/** Samples of a range with one neighbour on each side, so that lines reach the edge. */
function inView(samples: readonly Sample[], { from, to }: Range): readonly Sample[] {
  const first = samples.findIndex((s) => s.x >= from);
  const after = samples.findIndex((s) => s.x > to);
  const start = Math.max(0, (first < 0 ? samples.length : first) - 1);
  return samples.slice(start, after < 0 ? samples.length : after + 1);
}
