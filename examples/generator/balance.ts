import type { Programme } from './programme';
import type { Draws } from './random';

/** Everything the balance shows besides the specimen, in µg. */
export interface BalanceState {
  /** Share of the flow term that differs from run to run. */
  readonly flow: number;
  readonly convection: number;
  readonly offset: number;
}

const carrierVolume = 0.085;
const pressure = 101325;
const gasConstant = 8.314462618;
const flowLift = 12;
const flowTime = 180;
const driftPerHour = 2.5;
const whiteNoise = 0.4;
const walkPerRootHour = 0.5;
/** Blanks of one gas scatter by this much; half of its variance comes with the flow, half with the temperature. */
const runToRun = 4;

export function drawBalance(draws: Draws): BalanceState {
  const each = runToRun / Math.SQRT2;
  return { flow: each * draws.normal(), convection: each * draws.normal(), offset: draws.normal() };
}

/** Lift of the gas against the start, µg: V·(ρ(T₀) − ρ(T)) of an ideal gas with the molar mass in g/mol. */
export function buoyancy(molarMass: number, start: number, temperature: number): number {
  const density = (t: number): number => (pressure * molarMass) / (gasConstant * (t + 273.15));
  return carrierVolume * (density(start) - density(temperature));
}

/** µg at a time, without noise. */
export function balanceTerms(
  programme: Programme,
  molarMass: number,
  state: BalanceState,
  time: number,
  temperature: number,
): number {
  const flow = ((flowLift + state.flow) * programme.laggedRate(time, flowTime)) / 10;
  const convection = (state.convection * (temperature - programme.start)) / 970;
  const drift = (driftPerHour * time) / 3600;
  return buoyancy(molarMass, programme.start, temperature) + flow + convection + drift + state.offset;
}

/** White noise and a random walk, µg, one value a second. */
export function balanceNoise(draws: Draws, seconds: number): Float64Array {
  const noise = new Float64Array(seconds + 1);
  let walk = 0;
  for (let i = 0; i <= seconds; i++) {
    noise[i] = walk + whiteNoise * draws.normal();
    walk += (walkPerRootHour / 60) * draws.normal();
  }
  return noise;
}
