import type { Abscissa, CurveId, Lane, Range } from '../../protocol/view';
import { axisLabel, directionWords, nameOf, symbolOf } from './laneWords';
import { unitOf, type PlotCurves, type PlotLane } from './plotCurves';

/** Curves drawn with those of the run. */
export interface LaidOver {
  readonly name: string;
  readonly of: 'overlay' | 'against';
  readonly curves: PlotCurves;
}

export interface LanesInput {
  readonly curves: PlotCurves;
  readonly laidOver: readonly LaidOver[];
  /** Differences to the revision compared with, each shown below its lane. */
  readonly differences: readonly PlotLane[];
  readonly abscissa: Abscissa;
  readonly units: Readonly<Record<string, string>>;
  readonly hiddenParts: readonly string[];
}

/**
 * The lanes of a run in their units, with the curves of the parts shown: its own, then those laid over it. The temperature
 * has a lane over the time only; over itself it would be a straight line.
 */
export function lanesOf(input: LanesInput): Lane[] {
  const { curves, differences, abscissa } = input;
  return curves.lanes
    .filter((lane) => lane.signal !== 'temperature' || abscissa === 'time')
    .flatMap((lane) => {
      const beside = differences.filter((d) => d.id === `difference:${lane.id}`);
      return [laneOf(lane, input), ...beside.map((d) => differenceOf(d, input))];
    });
}

function laneOf(lane: PlotLane, { curves, laidOver, units, hiddenParts }: LanesInput): Lane {
  const unit = unitOf(lane, units);
  const all = [
    { of: 'run' as const, name: '', lane },
    ...laidOver.flatMap(({ of, name, curves: other }) =>
      other.lanes.filter((l) => l.id === lane.id && canShare(lane, curves, other)).map((l) => ({ of, name, lane: l })),
    ),
  ];
  return {
    ...words(lane, unit, curves),
    extent: wholeExtent(all.map(({ lane: of }) => of.extent(unit, shownParts(of, hiddenParts)))),
    curves: all.flatMap(({ of, name, lane: from }) => curveIds(from, of, name, hiddenParts)),
  };
}

/**
 * Whether the heat flows of two runs point the same way in one lane: each is turned to, where both declare it, or drawn as
 * exported, where neither does.
 */
export function canShareHeatFlow(own: PlotCurves, other: PlotCurves): boolean {
  const flows = [own, other].every((c) => c.lanes.some((l) => l.signal === 'heatflow'));
  return !flows || (own.endothermic === null) === (other.endothermic === null);
}

function canShare(lane: PlotLane, own: PlotCurves, other: PlotCurves): boolean {
  return lane.signal !== 'heatflow' || canShareHeatFlow(own, other);
}

function differenceOf(lane: PlotLane, { curves, units, hiddenParts }: LanesInput): Lane {
  // In the unit of the lane it is of.
  const unit = unitOf({ id: lane.id.slice('difference:'.length), units: lane.units }, units);
  return {
    ...words(lane, unit, curves),
    extent: wholeExtent([lane.extent(unit, shownParts(lane, hiddenParts))]),
    curves: curveIds(lane, 'against', '', hiddenParts),
  };
}

function words(lane: PlotLane, unit: string, curves: PlotCurves): Omit<Lane, 'extent' | 'curves'> {
  const signal = lane.id.startsWith('difference:') ? lane.id : lane.signal;
  return {
    id: lane.id,
    label: axisLabel(symbolOf(signal, unit), unit),
    name: nameOf(signal),
    unit,
    units: lane.units,
    direction: directionWords(signal, curves.endothermic),
  };
}

function curveIds(lane: PlotLane, of: CurveId['of'], name: string, hiddenParts: readonly string[]): CurveId[] {
  return lane.curves
    .filter((c) => !hiddenParts.includes(c.part))
    .map(({ id, part, points }) => ({ id, part, of, name, points }));
}

function shownParts(lane: PlotLane, hiddenParts: readonly string[]): string[] {
  return [...new Set(lane.curves.map((c) => c.part))].filter((part) => !hiddenParts.includes(part));
}

/** Of all that is drawn; from 0 to 1 where nothing is. */
function wholeExtent(extents: readonly (Range | null)[]): Range {
  const known = extents.filter((e) => e !== null);
  if (known.length === 0) return { from: 0, to: 1 };
  return { from: Math.min(...known.map((e) => e.from)), to: Math.max(...known.map((e) => e.to)) };
}
