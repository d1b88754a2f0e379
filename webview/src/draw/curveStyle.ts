import type { CurveId, ViewState } from '../../../server/src/protocol/view';

/** The second cue beside a name: dashes of a curve laid over, and a mark along it. */
export interface CurveStyle {
  readonly dash: readonly number[];
  readonly marker: Marker | null;
}

export type Marker = 'circle' | 'square' | 'triangle' | 'diamond' | 'cross';

const dashes: readonly (readonly number[])[] = [
  [7, 4],
  [2, 3],
  [10, 3, 2, 3],
  [5, 2],
  [12, 5],
];
const markers: readonly Marker[] = ['circle', 'square', 'triangle', 'diamond', 'cross'];

/** Ten runs and a revision, each with its own pair of dash and mark. The run itself is a plain line. */
export function curveStyle(place: number): CurveStyle {
  if (place < 0) return { dash: [], marker: null };
  const marker = markers[(place + Math.floor(place / dashes.length)) % markers.length];
  return { dash: dashes[place % dashes.length], marker };
}

/** Names laid over, in the order of the legend; a revision comes first. */
export function laidOver(state: ViewState): readonly string[] {
  const curves = state.lanes.flatMap((lane) => lane.curves);
  const against = curves.filter((c) => c.of === 'against').map((c) => c.name);
  const listed = state.overlays.map((o) => o.name);
  const drawn = curves.filter((c) => c.of === 'overlay').map((c) => c.name);
  return [...new Set([...against, ...listed, ...drawn])];
}

export function styleOf(curve: CurveId, names: readonly string[]): CurveStyle {
  return curve.of === 'run' ? curveStyle(-1) : curveStyle(Math.max(0, names.indexOf(curve.name)));
}

/** Outline of a mark of radius `r` about the origin, as moves and lines (a circle as a polygon of 16). */
export function markerOutline(marker: Marker, r: number): readonly (readonly [number, number])[] {
  switch (marker) {
    case 'circle':
      return Array.from({ length: 16 }, (_, k) => [r * Math.cos((k * Math.PI) / 8), r * Math.sin((k * Math.PI) / 8)]);
    case 'square':
      return [
        [-r, -r],
        [r, -r],
        [r, r],
        [-r, r],
      ].map(([x, y]) => [0.88 * x, 0.88 * y] as const);
    case 'triangle':
      return [
        [0, -1.15 * r],
        [1.1 * r, 0.85 * r],
        [-1.1 * r, 0.85 * r],
      ];
    case 'diamond':
      return [
        [0, -1.25 * r],
        [1.25 * r, 0],
        [0, 1.25 * r],
        [-1.25 * r, 0],
      ];
    case 'cross': {
      const t = 0.35 * r;
      return [
        [-t, -r],
        [t, -r],
        [t, -t],
        [r, -t],
        [r, t],
        [t, t],
        [t, r],
        [-t, r],
        [-t, t],
        [-r, t],
        [-r, -t],
        [-t, -t],
      ];
    }
  }
}
