import type { Sourced } from './sources';
import { cellList, cellNumber, cellWords, tableRows } from './textTable';
import { indexed, type Named } from './words';

const gasTraits = [
  'inert',
  'oxidising',
  'reducing',
  'carburising',
  'nitriding',
  'hydrogen',
  'carbon dioxide',
  'halogen',
  'hydrogen halide',
  'hydrogen fluoride',
  'sulfur dioxide',
  'hydrogen sulfide',
  'ammonia',
  'steam',
  'vacuum',
  'flammable',
  'toxic',
  'corrosive',
] as const;

/** How a gas acts on crucible, specimen, apparatus and people. */
export type GasTrait = (typeof gasTraits)[number];

export interface Gas extends Named, Sourced {
  readonly traits: readonly GasTrait[];
  /** g/mol; null for a mixture without a stated composition and for vacuum. */
  readonly molarMass: number | null;
  /** mg/cm³ (kg/m³) at 25 °C and 101.325 kPa; null where the composition is not known or the gas is far from ideal. */
  readonly density: number | null;
  /** Thermal conductivity at room temperature relative to nitrogen (common practice); null: not in the table. */
  readonly relativeConductivity: number | null;
  readonly note: string;
}

const columns = [
  'name',
  'aliases',
  'formulas',
  'traits',
  'molarMass',
  'density',
  'conductivity',
  'source',
  'note',
] as const;

/**
 * Densities of the first six come from reference equations of state at 298.15 K and 101.325 kPa (the coefficients were
 * read in a public collection); `ideal`: the ideal gas law. Behaviour: common practice.
 */
const table = `
nitrogen; dry nitrogen; N2; inert, nitriding; 28.014; 1.145245; 1; Span 2000; Forms nitrides with titanium, zirconium, fine aluminium, magnesium, lithium and chromium.
argon; -; Ar; inert; 39.95; 1.633864; 0.68; Tegeler 1999; Large buoyancy, poorer heat transfer than nitrogen.
air; synthetic air, dry air, compressed air, ambient air; -; oxidising; 28.965; 1.184318; 1; Lemmon 2000; State how dry it is.
oxygen; -; O2; oxidising; 31.998; 1.308786; 1.02; Schmidt 1985; Oil, grease and unsuitable seals burn in it.
helium; -; He; inert; 4.0026; 0.163523; 5.8; Ortiz-Vega; Temperature and heat flow are calibrated in it, smallest buoyancy.
carbon dioxide; -; CO2; carbon dioxide; 44.009; 1.80797; 0.64; Span 1996; Hides carbon dioxide from the specimen and is taken up again on cooling.
hydrogen; -; H2; reducing, hydrogen, flammable; 2.016; ideal; -; ideal; Only within the mixture the site permits.
forming gas; -; -; reducing, hydrogen, flammable; -; -; -; practice; Hydrogen in nitrogen or argon, the share not stated.
carbon monoxide; -; CO; reducing, carburising, flammable, toxic; 28.010; ideal; -; ideal; Poisonous and without smell.
methane; natural gas; CH4; reducing, carburising, flammable; 16.043; ideal; -; ideal; Deposits carbon when hot.
ammonia; -; NH3; reducing, nitriding, ammonia, flammable, toxic, corrosive; 17.031; ideal; -; ideal; Attacks copper and its alloys.
steam; water vapour, water vapor, humid air, wet air, moist air, humid nitrogen, wet nitrogen, moist nitrogen; -; steam, oxidising; -; -; -; practice; State the dew point.
chlorine; -; Cl2; halogen, oxidising, toxic, corrosive; 70.90; ideal; -; ideal; Attacks nearly every metal.
hydrogen chloride; -; HCl; hydrogen halide, toxic, corrosive; 36.458; ideal; -; ideal; Attacks balance, windings and seals.
hydrogen fluoride; -; HF; hydrogen fluoride, hydrogen halide, toxic, corrosive; 20.006; -; -; practice; Attacks glass and quartz.
sulfur dioxide; sulphur dioxide; SO2; sulfur dioxide, toxic, corrosive; 64.058; ideal; -; ideal; Attacks balance and windings.
hydrogen sulfide; hydrogen sulphide; H2S; reducing, hydrogen sulfide, flammable, toxic, corrosive; 34.076; ideal; -; ideal; Dulls the sense of smell.
nitrous oxide; dinitrogen oxide; N2O; oxidising; 44.013; ideal; -; ideal; Feeds a fire as oxygen does.
nitric oxide; nitrogen monoxide; NO; oxidising, toxic, corrosive; 30.006; ideal; -; ideal; Turns to the dioxide in air.
nitrogen dioxide; -; NO2; oxidising, toxic, corrosive; 46.005; -; -; practice; Poisonous.
neon; -; Ne; inert; 20.180; ideal; -; ideal; -
krypton; -; Kr; inert; 83.798; ideal; -; ideal; -
xenon; -; Xe; inert; 131.29; ideal; -; ideal; -
vacuum; -; -; vacuum, inert; -; -; -; practice; Degassed powders may ignite on venting.
`;

const references: Readonly<Record<string, string>> = {
  'Span 2000': 'density: Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361',
  'Tegeler 1999': 'density: Tegeler et al., J. Phys. Chem. Ref. Data 28 (1999) 779',
  'Lemmon 2000': 'density: Lemmon et al., J. Phys. Chem. Ref. Data 29 (2000) 331, dry air',
  'Schmidt 1985': 'density: Schmidt and Wagner, Fluid Phase Equilib. 19 (1985) 175',
  'Ortiz-Vega': 'density: Ortiz-Vega et al., as labelled in the collection',
  'Span 1996': 'density: Span and Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509',
  ideal: 'density: ideal gas law; behaviour: common practice',
  practice: 'common practice',
};

/** p·M/(R·T) at 101.325 kPa and 298.15 K in kg/m³, M in g/mol (R: CODATA 2018). */
function idealDensity(molarMass: number): number {
  return (101325 * molarMass) / (8.31446261815324 * 298.15) / 1000;
}

export const gases: readonly Gas[] = tableRows(table, columns).map((row) => {
  const molarMass = cellNumber(row.molarMass);
  return {
    name: row.name,
    aliases: cellList(row.aliases),
    formulas: cellList(row.formulas),
    traits: cellWords(row.traits, gasTraits),
    molarMass,
    density: row.density === 'ideal' && molarMass !== null ? idealDensity(molarMass) : cellNumber(row.density),
    relativeConductivity: cellNumber(row.conductivity),
    source: references[row.source] ?? '',
    note: row.note,
  };
});

/** A purge gas of a run, and how hot the run gets while it flows (°C); null: as hot as the run. */
export interface GasUse {
  readonly words: string;
  readonly upTo: number | null;
}

const find = indexed(gases);

/** A purge gas by its name, a usual other name or its formula (`nitrogen`, `synthetic air`, `CO2`); null: not in the table. */
export function findGas(words: string): Gas | null {
  return find(words);
}
