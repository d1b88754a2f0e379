import { indicated, smoothRate, smoothTemperature } from './furnace';
import { drawZero, exported, lagged, plainHeatFlow, sensorNoise, zeroLine } from './heatFlow';
import {
  fractionPerKelvin,
  heatCapacity,
  preform,
  preformInterval,
  preformLag,
  preformProgramme as programme,
  transitions,
} from './preformScenario';
import { drawsNamed, everything, silent, type Included } from './random';

export interface SimulatedHeatFlow {
  /** s. */
  readonly time: Float64Array;
  /** °C as the instrument writes it. */
  readonly indicated: Float64Array;
  /** mW as exported, endothermic positive. */
  readonly heatFlow: Float64Array;
}

/** The heat-cool-heat run. */
export function simulatePreform(included: Included = everything): SimulatedHeatFlow {
  const count = programme.duration / preformInterval + 1;
  const named = (what: string) => (included.scatter ? drawsNamed(`${preform.name} ${what}`) : silent);
  const phase = included.scatter ? 25 * named('ripple').normal() : null;
  const time = Float64Array.from({ length: count }, (_, i) => i * preformInterval);
  const temperature = time.map((t) => smoothTemperature(programme, t));
  const shown = time.map((t) => indicated(programme, t, phase, preformLag));
  const heat = time.map((t, i) => {
    const leg = programme.legs.indexOf(programme.legAt(t));
    const rate = smoothRate(programme, t);
    let flow = preform.mass * heatCapacity(leg, temperature[i]) * rate;
    if (!included.reactionHeat) return flow;
    for (const transition of transitions) {
      if (transition.leg !== leg) continue;
      const perSecond = fractionPerKelvin(transition, temperature[i], leg !== 3) * Math.abs(rate);
      flow += preform.mass * transition.heat * perSecond;
    }
    return flow;
  });
  const seen = lagged(heat, preformInterval, plainHeatFlow.lags);
  const zero = drawZero(named('zero line'));
  const noise = sensorNoise(named('heat flow'), count, preformInterval);
  const heatFlow = seen.map((flow, i) =>
    exported(plainHeatFlow, flow + zeroLine(zero, time[i], temperature[i]), noise[i], temperature[i], shown[i]),
  );
  return { time, indicated: shown, heatFlow };
}
