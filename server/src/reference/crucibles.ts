import { sources, type Sourced } from './sources';
import { cellList, cellNumber, tableRows } from './textTable';
import { indexed, lookupForm, type Named } from './words';

/**
 * A crucible material with its working limits: conservative, below melting and softening. Supplier data and local
 * experience take precedence, and messages say so.
 */
export interface Crucible extends Named, Sourced {
  /** Highest working temperature in inert gas and in air, °C. */
  readonly limit: { readonly inert: number; readonly air: number };
  readonly goodFor: string;
  /** What it does to the data. */
  readonly sideEffects: string;
  /** For special cases only: never offered as a replacement. */
  readonly rare: boolean;
}

const columns = ['name', 'aliases', 'formulas', 'inert', 'air', 'goodFor', 'sideEffects', 'rare'] as const;

const table = `
aluminium; aluminum, pure aluminium, pure aluminum; Al; 600; 600; polymers, organics, oxidation induction, sealed work; sharp peaks, a bulging lid spoils the contact, aluminium chloride sublimes as a false loss; -
alumina; dense alumina, aluminium oxide, aluminum oxide, corundum, sintered alumina; Al2O3; 1650; 1650; oxides, carbonates, clays, many metals; porous grades take up water and melts, poor conductivity broadens peaks; -
platinum; -; Pt; 1500; 1500; glass free of lead, phosphorus and arsenic, oxides, heat capacity; catalyses oxidation, evaporates as oxide in oxygen above 1000 °C, sticks to platinum sensors above 1100 °C; -
platinum rhodium; platinum rhodium alloy, ptrh, pt rh, ptrh10, ptrh20; -; 1650; 1650; as platinum, stiffer and hotter; rhodium oxide forms and decomposes in air between 600 and 1100 °C; -
graphite; carbon, glassy carbon; C; 2000; 400; metals that form no carbides, sulfides, fluorides; background of carbon monoxide, reacts with platinum and alumina parts above 1200 °C; -
copper; -; Cu; 700; 200; oxidation induction of cable polymers; catalyses oxidation on purpose, its oxide changes the emissivity; -
gold; -; Au; 900; 900; corrosive or aqueous specimens, halides, sealed work; soft and in excellent contact, welds to gold seals; -
quartz glass; fused silica, fused quartz, silica, quartz, silica glass; SiO2; 1000; 1000; acids, salts, organics, sulfates; low conductivity, cristobalite forms and shows between 220 and 270 °C; -
zirconia; stabilised zirconia, stabilized zirconia, yttria stabilised zirconia, zirconium dioxide; ZrO2; 1900; 1900; iron, nickel, cobalt and platinum-group melts, oxides; very low conductivity, unstabilised grades transform near 1170 °C; -
yttria; yttrium oxide; Y2O3; 1800; 1800; titanium and rare-earth melts; loses water and carbon dioxide on the first heating; -
tungsten; -; W; 2400; 400; refractory metals, oxides in vacuum or inert gas; small volume and small buoyancy; -
steel; stainless steel; -; 400; 400; volatile and hazardous specimens under pressure, curing; heavy, broad peaks, a leak shows as a loss above 10 µg; -
tantalum; -; Ta; 1500; 200; volatile magnesium and rare-earth alloys, welded shut; takes up nitrogen, hydrogen and oxygen; rare
boron nitride; bn; BN; 1800; 900; aluminium melts, glass; oxidises in air above 900 °C; rare
magnesia; magnesium oxide; MgO; 1800; 1800; iron melts, slags free of lead; takes up water and carbon dioxide in storage; rare
nickel; -; Ni; 600; 300; alkali melts in inert gas; oxidises in air; rare
`;

export const crucibles: readonly Crucible[] = tableRows(table, columns).map((row) => ({
  name: row.name,
  aliases: cellList(row.aliases),
  formulas: cellList(row.formulas),
  limit: { inert: cellNumber(row.inert) ?? 0, air: cellNumber(row.air) ?? 0 },
  goodFor: row.goodFor,
  sideEffects: row.sideEffects,
  rare: row.rare === 'rare',
  source: sources.commonPractice,
}));

const find = indexed(crucibles);

/** Words about the make, not the material. */
const make =
  /\b(?:crucible|pan|cup|capsule|open|closed|sealed|hermetic|lidded|unlidded|pierced|welded|crimped|standard|high pressure|medium pressure|pressure|dsc|tga?|sta|with lid|without lid|lid|no|with|without|a|an|of)s?\b/g;

/**
 * A crucible material by the words of `crucible` (`alumina`, `platinum pan`, `sealed steel`); null: not in the table.
 * Words about make and lid are left out, whatever else is not understood leaves the material unknown (`gold plated
 * copper` is neither).
 */
export function findCrucible(words: string): Crucible | null {
  return find(words) ?? find(lookupForm(lookupForm(words).replace(make, ' ')));
}
