import type { Construction, Shape } from './result';
import type { SignalName } from '../language/model';
import type { Placed } from './outcome';
import type { PreparedRun } from './preparedRun';

/** Construction as the analysis gives it: points are [time s, y]. */
export type RawShape =
  | {
      readonly shape: 'line';
      readonly role: 'level' | 'tangent' | 'baseline';
      readonly points: readonly (readonly [number, number])[];
    }
  | { readonly shape: 'mark'; readonly quantity: string; readonly at: readonly [number, number] }
  | { readonly shape: 'area'; readonly from: number; readonly to: number };

/**
 * Adds the temperature to each point, so that a plot may use either abscissa. `found`: the unit of y, that of the signal, or
 * of the mass per second.
 */
export function constructionOf(
  run: PreparedRun,
  placed: Placed,
  name: string,
  signal: SignalName,
  shapes: readonly RawShape[],
  found: 'as the signal' | 'per second' = 'as the signal',
): Construction {
  const map = placed.segment === null ? null : run.map(placed.segment);
  const point = ([time, y]: readonly [number, number]) => ({
    time,
    temperature: map?.temperatureAt(time) ?? placed.segment?.from ?? 0,
    y,
  });
  const placedShapes: Shape[] = shapes.map((shape) => {
    switch (shape.shape) {
      case 'line':
        return { shape: 'line', role: shape.role, points: shape.points.map(point) };
      case 'mark':
        return { shape: 'mark', quantity: shape.quantity, at: point(shape.at) };
      case 'area':
        return shape;
    }
  });
  const unit = found === 'per second' ? ratePerSecond(run) : run.signals.get(signal)?.unit;
  return { name, signal, ...(unit === undefined || unit === '1' ? {} : { unit }), shapes: placedShapes };
}

/** A passage of the rate is found on the slope of the mass itself. */
function ratePerSecond(run: PreparedRun): string {
  return run.signals.get('mass')?.unit === 'mg' ? 'mg/s' : '1/s';
}
