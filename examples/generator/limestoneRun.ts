import { balanceNoise, balanceTerms, drawBalance } from './balance';
import { indicated, smoothRate, trueTemperature } from './furnace';
import { drawZero, exported, lagged, sensorNoise, simultaneous, zeroLine } from './heatFlow';
import {
  heatCapacity,
  molar,
  programme,
  reactions,
  regainAbove,
  regainBelow,
  regainTime,
  series,
  temperatureLag,
  type LimestoneRun,
} from './limestoneScenario';
import { drawsNamed, everything, silent, type Included } from './random';
import { conversion, conversionFunction, rateConstant } from './reaction';

/** One value a second. */
export interface SimulatedRun {
  readonly time: Float64Array;
  /** °C of the specimen, and as the instrument writes it. */
  readonly temperature: Float64Array;
  readonly indicated: Float64Array;
  /** mg as the balance shows it. */
  readonly mass: Float64Array;
  /** mW as exported, endothermic positive. */
  readonly heatFlow: Float64Array;
  /** mg of the specimen itself. */
  readonly specimenMass: Float64Array;
  /** Conversion of each reaction. */
  readonly conversions: ReadonlyMap<string, Float64Array>;
}

/** Weighed mass less the error of the weighing (u = 0.010 mg), mg. */
export function trueMass(run: LimestoneRun): number {
  return run.specimen === null
    ? 0
    : run.specimen.weighed - 0.01 * drawsNamed(`${series} ${run.name} weighing`).normal();
}

export function simulateLimestone(run: LimestoneRun, included: Included = everything): SimulatedRun {
  const seconds = programme.duration;
  const named = (what: string) => (included.scatter ? drawsNamed(`${series} ${run.name} ${what}`) : silent);
  const phase = included.scatter ? 25 * named('ripple').normal() : null;
  const time = Float64Array.from({ length: seconds + 1 }, (_, i) => i);
  const temperature = time.map((t) => trueTemperature(programme, t, phase));
  const shown = time.map((t) => indicated(programme, t, phase, temperatureLag));

  const all = run.specimen === null ? [] : reactions(run.specimen, run.gas);
  const conversions = new Map<string, Float64Array>();
  const start = trueMass(run);
  const specimenMass = new Float64Array(seconds + 1).fill(start);
  const reactionHeat = new Float64Array(seconds + 1);
  for (const reaction of all) {
    const rate = temperature.map((t) => rateConstant(reaction, t));
    const alpha = new Float64Array(seconds + 1);
    let integral = 0;
    for (let i = 0; i <= seconds; i++) {
      if (i > 0) {
        const between = rateConstant(reaction, trueTemperature(programme, i - 0.5, phase));
        integral += (rate[i - 1] + 4 * between + rate[i]) / 6;
      }
      alpha[i] = conversion(reaction.law, integral);
      specimenMass[i] -= (start * reaction.loss * alpha[i]) / 100;
      reactionHeat[i] += start * reaction.heat * rate[i] * conversionFunction(reaction.law, alpha[i]);
    }
    conversions.set(reaction.name, alpha);
  }
  addRegain(run, temperature, start, specimenMass, reactionHeat);

  const heat = time.map((t, i) => {
    const capacity = specimenMass[i] * heatCapacity(temperature[i]) * smoothRate(programme, t);
    return capacity + (included.reactionHeat ? reactionHeat[i] : 0);
  });
  const seen = lagged(heat, 1, simultaneous.lags);
  const zero = drawZero(named('zero line'));
  const heatNoise = sensorNoise(named('heat flow'), seconds + 1, 1);
  const heatFlow = seen.map((flow, i) =>
    exported(simultaneous, flow + zeroLine(zero, i, temperature[i]), heatNoise[i], temperature[i], shown[i]),
  );

  const state = drawBalance(named('balance'));
  const noise = balanceNoise(named('balance noise'), seconds);
  const gas = run.gas === 'nitrogen' ? molar.nitrogen : molar.carbonDioxide;
  const knock = included.scatter ? run.knock : null;
  const mass = specimenMass.map((specimen, i) => {
    const knocked = knock !== null && i >= knock.time && i < knock.time + 3 ? knock.size : 0;
    const reading = 1000 * specimen + balanceTerms(programme, gas, state, i, temperature[i]) + noise[i] + knocked;
    // The converter of the balance has steps of 0.1 µg.
    return included.scatter ? Math.round(10 * reading) / 10000 : reading / 1000;
  });
  return { time, temperature, indicated: shown, mass, heatFlow, specimenMass, conversions };
}

/** In carbon dioxide part of the lime is carbonate again after cooling, and gives the heat of it back. */
function addRegain(
  run: LimestoneRun,
  temperature: Float64Array,
  start: number,
  specimenMass: Float64Array,
  reactionHeat: Float64Array,
): void {
  if (run.specimen === null || run.gas !== 'carbon dioxide') return;
  const cooling = programme.legs[2].start;
  const heatPerMilligram = (168 * 1000) / molar.carbonDioxide;
  let taken = 0;
  for (let i = cooling; i < temperature.length; i++) {
    const open = temperature[i] < regainBelow && temperature[i] > regainAbove;
    const rate = open ? ((start * run.specimen.regain) / 100 - taken) / regainTime : 0;
    specimenMass[i] += taken;
    reactionHeat[i] -= rate * heatPerMilligram;
    taken += rate;
  }
}
