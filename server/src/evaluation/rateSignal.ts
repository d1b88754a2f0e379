import { checkedCurve, type Curve } from '../analysis/curve';
import { estimateNoise } from '../analysis/estimateNoise';
import { silent, type Noise } from '../analysis/noise';
import { slopeCurve } from '../analysis/slopeCurve';
import type { Segment } from '../runs/run';
import type { TemperatureMap } from '../runs/temperatureMap';
import type { InitialMass, PreparedSignal } from './preparedRun';
import { defaults } from './settings';

/**
 * The derived signal `rate`: −dm/dt over the initial mass in %/min, loss positive, by local cubics over the default
 * width of 5 K (30 s in a hold) (language.md 4). Computed for a segment when something asks for it.
 */
export function rateSignal(
  mass: PreparedSignal,
  initial: InitialMass,
  map: (segment: Segment) => TemperatureMap | null,
): PreparedSignal {
  const curves = new Map<string, Curve | null>();
  const noises = new Map<string, Noise>();
  const curve = (segment: Segment | null): Curve | null => {
    const name = segment?.name ?? '';
    const known = curves.get(name);
    if (known !== undefined) return known;
    const made = derived(mass, initial, segment, map);
    curves.set(name, made);
    return made;
  };
  return {
    signal: 'rate',
    unit: '%/min',
    blank: null,
    first: 0,
    curve,
    noise: (segment) => {
      const name = segment?.name ?? '';
      const known = noises.get(name);
      if (known !== undefined) return known;
      const of = curve(segment);
      const made = of === null ? silent : estimateNoise(of);
      noises.set(name, made);
      return made;
    },
  };
}

function derived(
  mass: PreparedSignal,
  initial: InitialMass,
  segment: Segment | null,
  map: (segment: Segment) => TemperatureMap | null,
): Curve | null {
  const of = mass.curve(segment);
  if (of === null) return null;
  const slope = slopeCurve(of, { from: of.x[0], to: of.x[of.x.length - 1] }, smoothingOf(segment, map));
  const perMinute = -6000 / initial.reference;
  return checkedCurve(
    slope.x,
    slope.slope.map((s) => s * perMinute),
  );
}

function smoothingOf(segment: Segment | null, map: (segment: Segment) => TemperatureMap | null): number {
  if (segment === null || segment.direction === 'hold') return defaults.smooth.seconds;
  const of = map(segment);
  if (of === null) return defaults.smooth.seconds;
  const rate = Math.abs(of.rateAt((segment.start + segment.end) / 2));
  return defaults.smooth.kelvin / Math.max(rate, 1e-9);
}
