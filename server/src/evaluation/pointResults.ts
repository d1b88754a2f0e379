import { celsius, minute } from './units';
import type { Measured } from '../analysis/measured';
import type { Part, Uncertain } from '../quantities/uncertain';
import { edgePart, influence, mergeParts } from './influences';
import type { Placed, QuantityOutcome } from './outcome';
import type { PreparedRun } from './preparedRun';

/** A value of one quantity with each edge moved: [from earlier, from later, to earlier, to later]. */
export type Shifted = readonly [number, number, number, number];

export interface EdgeInputs {
  readonly from: string;
  readonly to: string;
}

/** Noise and edge parts of one measured quantity; the scale is the caller's. */
export function localParts(
  measured: Measured,
  noiseInput: string,
  shifted: Shifted | null,
  edges: EdgeInputs | null,
  scale = 1,
): Part[] {
  const parts: Part[] = [];
  if (measured.noise > 0) parts.push({ input: noiseInput, u: measured.noise * scale, dof: measured.dof });
  if (shifted !== null && edges !== null) {
    const from = edgePart(edges.from, shifted[0] * scale, measured.value * scale, shifted[1] * scale);
    const to = edgePart(edges.to, shifted[2] * scale, measured.value * scale, shifted[3] * scale);
    if (from !== null) parts.push(from);
    if (to !== null) parts.push(to);
  }
  return mergeParts(parts);
}

/**
 * A point in time as a temperature (°C) and as minutes in its segment. In a hold, and where the run has no
 * temperature, only the minutes exist.
 */
export function pointQuantities(
  run: PreparedRun,
  placed: Placed,
  name: string,
  quantity: string,
  measured: Measured | null,
  shifted: Shifted | null,
  edges: EdgeInputs | null,
): QuantityOutcome[] {
  if (measured === null) return [];
  const noiseInput = influence.noise(quantity, name, run.stem);
  const origin = placed.segment?.start ?? 0;
  const time: Uncertain = {
    value: (measured.value - origin) / 60,
    parts: localParts(measured, noiseInput, shifted, edges, 1 / 60),
  };
  const timeOutcome: QuantityOutcome = {
    quantity: `${quantity}_time`,
    uncertain: time,
    unit: minute,
    kind: 'quantity',
    basis: null,
    limit: null,
    reason: null,
  };
  const map = placed.segment === null || placed.segment.direction === 'hold' ? null : run.map(placed.segment);
  if (map === null) return [timeOutcome];
  const rate = map.rateAt(measured.value);
  const temperatures =
    shifted === null
      ? null
      : (shifted.map((t) => (Number.isFinite(t) ? map.temperatureAt(t) : NaN)) as unknown as Shifted);
  const parts = localParts(
    { value: map.temperatureAt(measured.value), noise: measured.noise * Math.abs(rate), dof: measured.dof },
    noiseInput,
    temperatures,
    edges,
  );
  const scale = temperatureScale(run, map.temperatureAt(measured.value));
  return [
    {
      quantity,
      uncertain: { value: map.temperatureAt(measured.value), parts: [...parts, ...scale] },
      unit: celsius,
      kind: 'temperature',
      basis: null,
      limit: null,
      reason: null,
    },
    timeOutcome,
  ];
}

/** The scale's own uncertainty, where stated for this temperature (K). */
export function temperatureScale(run: PreparedRun, temperature: number): Part[] {
  const range = run.calibrated.find((c) => c.signal === 'temperature' && temperature >= c.from && temperature <= c.to);
  if (range === undefined || range.u === null) return [];
  const u = range.u.relative ? range.u.value * Math.abs(temperature) : range.u.value;
  return [{ input: influence.temperatureScale(run.stem), u, dof: null }];
}
