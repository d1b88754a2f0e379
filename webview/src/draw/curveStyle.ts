import { dashesOf } from '../../../server/src/presentation/plot/palette';
import type { CurveId, Lane, ViewState } from '../../../server/src/protocol/view';

/** The second cue beside a name: dashes of a curve laid over, and a mark along it. */
export interface CurveStyle {
  readonly dash: readonly number[];
  readonly marker: Marker | null;
}

export type Marker = 'circle' | 'square' | 'triangle' | 'diamond' | 'cross';

/** A name laid over the run itself. */
export interface LaidOver {
  readonly name: string;
  readonly of: 'overlay' | 'against';
  /** Why nothing of it is drawn; null where something is. */
  readonly reason: string | null;
}

const markers: readonly Marker[] = ['circle', 'square', 'triangle', 'diamond', 'cross'];
const plain: CurveStyle = { dash: [], marker: null };

/** Names laid over, in the order of the legend: runs, then the revision, then what cannot be drawn. */
export function laidOver(state: ViewState): readonly LaidOver[] {
  const curves = state.lanes.filter((lane) => !isDifference(lane)).flatMap((lane) => lane.curves);
  const names = (of: 'overlay' | 'against'): LaidOver[] =>
    [...new Set(curves.filter((c) => c.of === of).map((c) => c.name))].map((name) => ({ name, of, reason: null }));
  const drawn = names('overlay');
  const lacking = state.overlays
    .filter((o) => o.reason !== null && drawn.every((d) => d.name !== o.name))
    .map(({ name, reason }): LaidOver => ({ name, of: 'overlay', reason }));
  return [...drawn, ...names('against'), ...lacking];
}

/** Ten runs and a revision, each with its own dashes, and a mark by its place in the legend. */
export function styleOfEntry({ of }: LaidOver, place: number): CurveStyle {
  return { dash: dashesOf(of, place), marker: markers[(place + Math.floor(place / markers.length)) % markers.length] };
}

/** The run itself, and a difference to it, is a plain line. */
export function styleOf(lane: Lane, curve: CurveId, entries: readonly LaidOver[]): CurveStyle {
  if (isOwn(lane, curve)) return plain;
  const place = entries.findIndex((e) => e.of === curve.of && e.name === curve.name);
  return place < 0 ? plain : styleOfEntry(entries[place], place);
}

export function isOwn(lane: Lane, curve: CurveId): boolean {
  return curve.of === 'run' || isDifference(lane);
}

function isDifference(lane: Lane): boolean {
  return lane.id.startsWith('difference:');
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
