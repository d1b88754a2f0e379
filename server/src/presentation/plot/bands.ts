import type { Snapshot } from '../../engine/snapshot';
import type { SignalName } from '../../language/model';
import type { Band } from '../../protocol/view';
import { viewShapes } from './constructions';
import { edgeOf } from './edges';
import { placedWindow, type PlacedWindow } from './placedWindow';
import { writtenPlaces, type WrittenPlace } from './places';
import { unitOf, type PlotCurves, type PlotLane } from './plotCurves';
import { FindingsByName } from './viewFindings';

export interface BandInput {
  readonly snapshot: Snapshot;
  readonly curves: PlotCurves;
  readonly role: 'run' | 'method';
  readonly units: Readonly<Record<string, string>>;
}

/** A statement with the place it has on the run. */
export interface PlacedStatement {
  readonly place: WrittenPlace;
  readonly placed: PlacedWindow;
}

/** Every evaluation that has a place on the run, in written order. */
export function placedStatements(
  snapshot: Pick<Snapshot, 'gloss' | 'method' | 'results'>,
  curves: PlotCurves,
): readonly PlacedStatement[] {
  const places = writtenPlaces(snapshot);
  const known = new Map<string, PlacedWindow | null>();
  const find = (name: string): PlacedWindow | null => {
    const before = known.get(name);
    if (before !== undefined) return before;
    // A sum that names itself finds nothing on its way round.
    known.set(name, null);
    const place = places.find((p) => p.name === name);
    const found = place === undefined ? null : placedWindow(place, snapshot.results, curves, find);
    known.set(name, found);
    return found;
  };
  return places.flatMap((place) => {
    const placed = find(place.name);
    return placed === null ? [] : [{ place, placed }];
  });
}

/** The windows of a gloss through the lanes they read, with what their evaluation drew. */
export function bandsOf({ snapshot, curves, role, units }: BandInput): Band[] {
  const findings = new FindingsByName(snapshot);
  return placedStatements(snapshot, curves).map(({ place, placed }): Band => {
    const { name } = place;
    const lanes = lanesOf(place, curves.lanes);
    const part = placed.part ?? curves.parts.find((p) => p.start <= placed.from.time && placed.from.time <= p.end);
    const construction = snapshot.constructions
      .filter((c) => c.name === name)
      .flatMap((c) => {
        const lane = curves.lanes.find((l) => l.signal === c.signal);
        if (lane === undefined || part === undefined) return [];
        return viewShapes(c, { lane, unit: unitOf(lane, units), part: part.name }, snapshot.results);
      });
    return {
      statement: place.shown.node.id,
      name,
      kind: place.shown.statement.kind,
      lanes,
      part: part?.name ?? '',
      from: edgeOf('from', placed, place, role),
      to: edgeOf('to', placed, place, role),
      overlaps: findings.overlapping(name),
      severity: findings.severity(name),
      construction,
    };
  });
}

/** The lanes that show what a statement reads: a mass with its rate, since a window is set by both. */
function lanesOf({ base, override }: WrittenPlace, lanes: readonly PlotLane[]): string[] {
  const statement = base?.statement ?? override!.statement;
  const over = override?.statement ?? null;
  const signals = ((): readonly SignalName[] => {
    switch (statement.kind) {
      case 'step':
        return ['mass', 'rate'];
      case 'residue':
        return ['mass'];
      case 'glass':
        return ['heatflow'];
      case 'peak':
        return [(over?.kind === 'peak' ? over.of : null) ?? statement.of ?? 'heatflow'];
      case 'onset':
        return [(over?.kind === 'onset' ? over.of : null) ?? statement.of ?? 'heatflow'];
      case 'crossing':
        return [over?.kind === 'crossing' ? over.signal : statement.signal];
    }
  })();
  return lanes.filter((lane) => (signals as readonly string[]).includes(lane.signal)).map((lane) => lane.id);
}
