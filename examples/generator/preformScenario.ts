import { Programme } from './programme';

/**
 * Bottle preform PET-07 of the "Harrowmede Pipe & Film Test House": heated as received, cooled, heated again.
 * Laboratory, specimen and numbers are invented.
 */
export const preform = {
  name: 'pet-07',
  measured: '2026-09-17',
  /** mg as weighed; the true mass is `mass`. */
  weighed: 8.2,
  mass: 8.203,
};

export const preformProgramme = new Programme(10, [
  { hold: 5 },
  { to: 290, rate: 10 },
  { hold: 3 },
  { to: 10, rate: 10 },
  { hold: 5 },
  { to: 290, rate: 10 },
]);

/** K per K/min. */
export const preformLag = 0.03;
/** s between simulated readings; every second one is exported. */
export const preformInterval = 0.5;

/** A change of phase that runs along the temperature; heat in J/g, endothermic positive. */
export interface Transition {
  readonly name: string;
  /** Number of the leg of the programme. */
  readonly leg: number;
  /** °C at which it runs fastest. */
  readonly peak: number;
  /** K; the far flank falls by e in this distance, the near one in this distance over `skew`. */
  readonly width: number;
  readonly skew: number;
  readonly heat: number;
  /** Change of the heat capacity when it is complete, J/(g·K). */
  readonly capacityChange: number;
}

export const transitions: readonly Transition[] = [
  { name: 'relaxation', leg: 1, peak: 81.5, width: 0.8, skew: 1, heat: 1.8, capacityChange: 0 },
  { name: 'cold', leg: 1, peak: 128, width: 1.6, skew: 1, heat: -31.5, capacityChange: -0.008 },
  { name: 'melting', leg: 1, peak: 250.3, width: 1.3, skew: 0.4, heat: 44, capacityChange: 0.01 },
  { name: 'fromMelt', leg: 3, peak: 194, width: 2.2, skew: 1, heat: -40.5, capacityChange: -0.005 },
  { name: 'meltingAgain', leg: 5, peak: 250.3, width: 1.3, skew: 0.4, heat: 40.5, capacityChange: 0.01 },
];

/** Glass transitions: °C at half height, K, J/(g·K) there. */
export const glasses: readonly {
  readonly name: string;
  readonly leg: number;
  readonly midpoint: number;
  readonly width: number;
  readonly capacityChange: number;
}[] = [
  { name: 'first', leg: 1, midpoint: 76.5, width: 1.2, capacityChange: 0.36 },
  { name: 'cooling', leg: 3, midpoint: 76.0, width: 1.8, capacityChange: 0.29 },
  { name: 'second', leg: 5, midpoint: 80.2, width: 1.8, capacityChange: 0.29 },
];

/** Heat capacity of the glass, J/(g·K), and by how much less the one above the transition rises, J/(g·K²). */
export function glassCapacity(temperature: number): number {
  return 1.06 + 3.2e-3 * temperature;
}
export const slopeChange = -1.2e-3;

/**
 * Fraction done of a transition at a temperature on the way up: (1 + e^(−z))^(−skew), which runs fastest where
 * e^(−z) = 1/skew.
 */
export function fraction(transition: Transition, temperature: number, rising: boolean): number {
  return Math.exp(-transition.skew * Math.log(1 + Math.exp(-reduced(transition, temperature, rising))));
}

/** Its derivative with respect to the way along the temperature, 1/K. */
export function fractionPerKelvin(transition: Transition, temperature: number, rising: boolean): number {
  const e = Math.exp(-reduced(transition, temperature, rising));
  return (transition.skew / transition.width) * e * Math.exp(-(transition.skew + 1) * Math.log(1 + e));
}

function reduced(transition: Transition, temperature: number, rising: boolean): number {
  const way = rising ? temperature - transition.peak : transition.peak - temperature;
  return way / transition.width + Math.log(transition.skew);
}

/** Heat capacity in a leg without heats of transition, J/(g·K). */
export function heatCapacity(leg: number, temperature: number): number {
  const rising = leg < 3 || leg > 4;
  // In a hold the temperature stands at the end of the leg before.
  const ramp = leg === 0 ? 1 : leg - ((leg + 1) % 2);
  let capacity = glassCapacity(temperature);
  for (const glass of glasses) {
    if (glass.leg !== ramp) continue;
    const done = 1 / (1 + Math.exp(-(temperature - glass.midpoint) / glass.width));
    capacity += done * (glass.capacityChange + slopeChange * (temperature - glass.midpoint));
  }
  for (const transition of transitions) {
    if (transition.leg === ramp) capacity += transition.capacityChange * fraction(transition, temperature, rising);
  }
  return capacity;
}
