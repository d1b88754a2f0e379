import { indicatedTemperature } from './furnace';
import { plainHeatFlow } from './heatFlow';
import { simulatePreform } from './preformRun';
import { glasses, preform, preformLag, preformProgramme, transitions } from './preformScenario';

function digits(value: number, count: number): number {
  return Number(value.toFixed(count));
}

/** What went into the record of the preform. */
export function preformTruth(): object {
  const whole = simulatePreform({ scatter: false, reactionHeat: true });
  const without = simulatePreform({ scatter: false, reactionHeat: false });
  const melting = transitions.find((t) => t.name === 'melting')!;
  const cold = transitions.find((t) => t.name === 'cold')!;
  return {
    about:
      'Invented scenario: what the generator put into the record. Heats in J per g of specimen, endothermic positive; temperatures in °C of the specimen, and as the instrument writes them after the lags of its sensor; heat capacities in J/(g·K).',
    weighedMass: preform.weighed,
    trueMass: preform.mass,
    crystallinity: digits((melting.heat + cold.heat) / 140, 4),
    glasses: Object.fromEntries(
      glasses.map((g) => {
        const rate = preformProgramme.legs[g.leg].rate;
        const late = (rate / 60) * (plainHeatFlow.lags[0] + plainHeatFlow.lags[1]);
        const heat = transitions.find((t) => t.name === 'relaxation' && t.leg === g.leg)?.heat ?? 0;
        // The temperature at which the glass would be in equilibrium: the area of the relaxation lies before it.
        const equalAreas = g.midpoint - heat / g.capacityChange;
        const shown = (temperature: number): number =>
          digits(indicatedTemperature(temperature + late, rate, preformLag), 1);
        return [
          g.name,
          {
            midpoint: g.midpoint,
            midpointIndicated: shown(g.midpoint),
            equalAreas: digits(equalAreas, 1),
            equalAreasIndicated: shown(equalAreas),
            capacityChange: g.capacityChange,
          },
        ] as const;
      }),
    ),
    transitions: Object.fromEntries(
      transitions.map((t) => {
        const leg = preformProgramme.legs[t.leg];
        let top = -1;
        let height = 0;
        for (let i = 0; i < whole.time.length; i++) {
          if (whole.time[i] < leg.start || whole.time[i] >= leg.end) continue;
          const above = Math.sign(t.heat) * (whole.heatFlow[i] - without.heatFlow[i]);
          // Two transitions of one leg never lie within 20 K of each other.
          if (above > height && Math.abs(whole.indicated[i] - t.peak) < 10) {
            height = above;
            top = i;
          }
        }
        return [t.name, { heat: t.heat, peak: t.peak, peakIndicated: digits(whole.indicated[top], 1) }];
      }),
    ),
  };
}
