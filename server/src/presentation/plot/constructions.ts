import type { Construction, Result, Shape, ShapePoint } from '../../evaluation/result';
import type { ViewPoint, ViewShape } from '../../protocol/view';
import { shownValue } from '../shown';
import type { PlotLane } from './plotCurves';

/** Turns the construction of a statement into the unit of its lane. */
export interface ShapeScale {
  readonly lane: PlotLane;
  readonly unit: string;
  readonly part: string;
}

/**
 * The construction of one statement as it is drawn: in the unit and the direction its lane is shown in, marks with the
 * value that the ledger prints, areas with the baseline that was used. Empty where the lane has no such unit in that part
 * (a rate per kelvin in a hold).
 */
export function viewShapes(construction: Construction, scale: ShapeScale, results: readonly Result[]): ViewShape[] {
  const factor = scale.lane.factor(scale.unit, scale.part, storedUnit(construction, results));
  if (factor === null) return [];
  const lane = scale.lane.id;
  const point = (p: ShapePoint): ViewPoint => ({
    time: p.time,
    temperature: Number.isFinite(p.temperature) ? p.temperature : null,
    y: p.y * factor,
  });
  const baseline = longest(construction.shapes);
  return construction.shapes.flatMap((shape): ViewShape[] => {
    switch (shape.shape) {
      case 'line':
        return [{ shape: 'line', lane, role: shape.role, points: shape.points.map(point) }];
      case 'mark':
        return [
          {
            shape: 'mark',
            lane,
            quantity: shape.quantity,
            text: markText(construction.name, shape.quantity, results),
            at: point(shape.at),
          },
        ];
      case 'area': {
        const points = baseline.map(point);
        if (points.length < 2) return [];
        return [{ shape: 'area', lane, from: points[0], to: points[points.length - 1], baseline: points }];
      }
    }
  });
}

/** The passage of a rate is found on the slope as it is computed, a second at a time; all else is in the stored unit. */
function storedUnit(construction: Construction, results: readonly Result[]): string | undefined {
  if (construction.signal !== 'rate') return undefined;
  return results.some((r) => r.name === construction.name && r.kind === 'crossing') ? construction.unit : undefined;
}

function longest(shapes: readonly Shape[]): readonly ShapePoint[] {
  const lines = shapes.flatMap((s) => (s.shape === 'line' && s.role === 'baseline' ? [s.points] : []));
  return lines.reduce<readonly ShapePoint[]>((a, b) => (b.length > a.length ? b : a), []);
}

/** `onset 247.3 ± 0.4 °C`, in a hold `onset 12.31 min`; the quantity alone where it has no value to show. */
function markText(name: string, quantity: string, results: readonly Result[]): string {
  const twin = quantity === 'temperature' ? 'time' : `${quantity}_time`;
  const known = [quantity, twin].map((q) => {
    const id = `${name}.${q}`;
    return results.find((r) => r.id === id);
  });
  const result = known.find((r) => r !== undefined && r.value !== null);
  const word = quantity === 'temperature' ? 'passage' : quantity;
  return result === undefined ? word : `${word} ${shownValue(result)}`;
}
