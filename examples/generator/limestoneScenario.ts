import { Programme } from './programme';
import { logFactorForPeak, type Reaction } from './reaction';

/**
 * Dolomitic limestone VQ-217 of the "Velmora Quarry Testing Centre". Laboratory, specimen and numbers are invented;
 * the kinetics are chosen to look right at one heating rate and are no measured kinetics.
 */
export type Gas = 'carbon dioxide' | 'nitrogen';

export interface LimestoneRun {
  /** Name of the files, without ending. */
  readonly name: string;
  readonly title: string;
  readonly gas: Gas;
  readonly measured: string;
  /** null: the empty crucible. */
  readonly specimen: Specimen | null;
  /** s between the readings that are exported. */
  readonly interval: number;
  /** Time in s of a knock against the bench, and its size in µg. */
  readonly knock: { readonly time: number; readonly size: number } | null;
}

export interface Specimen {
  /** As weighed, mg. */
  readonly weighed: number;
  /** Shares in %. */
  readonly dolomite: number;
  readonly calcite: number;
  /** A fine fraction loses the first carbon dioxide this much earlier, K. */
  readonly earlier: number;
  /** Carbon dioxide taken up again on cooling, % of the specimen. */
  readonly regain: number;
}

/** Shares in % that all specimens have alike; quartz is the rest. */
export const illite = 1.0;
export const illiteWater = 5.0;
export const moisture = 0.4;

/** g/mol, IUPAC 2021 abridged. */
export const molar = {
  dolomite: 184.4,
  calcite: 100.086,
  carbonDioxide: 44.009,
  magnesia: 40.304,
  lime: 56.077,
  nitrogen: 28.014,
};

export const programme = new Programme(30, [{ to: 1000, rate: 10 }, { hold: 5 }, { to: 200, rate: 20 }]);
/** K per K/min. */
export const temperatureLag = 0.09;
/** Below this the oxide takes up carbon dioxide again in carbon dioxide, with this time constant (s). */
export const regainBelow = 850;
export const regainAbove = 450;
export const regainTime = 360;

/** Names the draws of this series: one in which the two blanks agree as a laboratory would ask for. */
export const series = 'series 1323';

const batch = { dolomite: 62.0, calcite: 34.0, earlier: 0, regain: 3.2 };

export const limestoneRuns: readonly LimestoneRun[] = [
  specimenRun('vq217-1', 'carbon dioxide', '2026-10-02', { ...batch, weighed: 20.052 }),
  specimenRun('vq217-2', 'carbon dioxide', '2026-10-02', {
    weighed: 19.874,
    dolomite: 61.76,
    calcite: 34.16,
    earlier: 0,
    regain: 2.6,
  }),
  {
    ...specimenRun('vq217-3', 'carbon dioxide', '2026-10-05', {
      weighed: 20.231,
      dolomite: 62.24,
      calcite: 33.84,
      earlier: 8,
      regain: 4.1,
    }),
    knock: { time: 2280, size: 46 },
  },
  specimenRun('vq217-n2', 'nitrogen', '2026-10-06', { ...batch, weighed: 20.118 }),
  blankRun('blank-co2-1', 'carbon dioxide', '2026-10-01'),
  blankRun('blank-co2-2', 'carbon dioxide', '2026-10-05'),
  blankRun('blank-n2', 'nitrogen', '2026-10-06'),
];

function specimenRun(name: string, gas: Gas, measured: string, specimen: Specimen): LimestoneRun {
  const title = `VQ-217, ${name === 'vq217-n2' ? 'specimen 4' : `specimen ${name.slice(-1)}`}`;
  return { name, title, gas, measured, specimen, interval: 2, knock: null };
}

function blankRun(name: string, gas: Gas, measured: string): LimestoneRun {
  return { name, title: 'empty crucible', gas, measured, specimen: null, interval: 4, knock: null };
}

/** Loss in % of the specimen with which half of the dolomite's carbon dioxide leaves. */
export function firstLoss(specimen: Specimen): number {
  return (specimen.dolomite * molar.carbonDioxide) / molar.dolomite;
}

/** Loss in % of all calcite: the specimen's own and the one that dolomite leaves. */
export function secondLoss(specimen: Specimen): number {
  return firstLoss(specimen) + (specimen.calcite * molar.carbonDioxide) / molar.calcite;
}

/** The four reactions of a specimen in a gas. Moisture sits in the pores and leaves around 140 °C. */
export function reactions(specimen: Specimen, gas: Gas): readonly Reaction[] {
  const inCarbonDioxide = gas === 'carbon dioxide';
  const first = firstLoss(specimen);
  const second = secondLoss(specimen);
  // 124 and 168 kJ per mole of carbon dioxide.
  const heatOf = (loss: number, perMole: number): number => ((loss / 100) * 1000 * perMole) / molar.carbonDioxide;
  const water = (illite * illiteWater) / 100;
  const peak = inCarbonDioxide ? 768 : 742;
  const half = inCarbonDioxide
    ? { energy: 330, logFactor: 14.34, law: 'F1' as const }
    : { energy: 225, logFactor: 8.93, law: 'R2' as const };
  // The same law, moved along the temperature.
  const shift = logFactorForPeak(half.energy, peak - specimen.earlier, 10) - logFactorForPeak(half.energy, peak, 10);
  return [
    {
      name: 'moisture',
      loss: moisture,
      energy: 95,
      logFactor: logFactorForPeak(95, 140, 10),
      law: 'F1',
      heat: 24 * moisture,
    },
    { name: 'illite', loss: water, energy: 180, logFactor: 8.3, law: 'F1.5', heat: 30 * water },
    { name: 'first', loss: first, ...half, logFactor: half.logFactor + shift, heat: heatOf(first, 124) },
    {
      name: 'second',
      loss: second,
      ...(inCarbonDioxide ? { energy: 1250, logFactor: 52.21 } : { energy: 205, logFactor: 7.19 }),
      law: 'R2',
      heat: heatOf(second, 168),
    },
  ];
}

/** Specific heat capacity of the solid, J/(g·K). */
export function heatCapacity(temperature: number): number {
  return 0.85 + 5e-4 * (temperature - 25);
}
