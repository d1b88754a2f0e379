import type { Sourced } from './sources';
import { cellNumber, tableRows } from './textTable';

/**
 * Heat of fusion of a perfect crystal, J/g, for crystallinities. Molar values of the repeat unit over its molar mass.
 * These are conventions as much as constants: others differ by the spread, they hold at the equilibrium melting
 * point, and one area over one of them rarely equals a crystallinity by density or X-rays (Kong and Hay, Eur. Polym. J.
 * 39 (2003) 1721). A gloss states the number it uses; this table is offered, never applied unseen.
 */
export interface PolymerFusion extends Sourced {
  readonly polymer: string;
  /** J/g. */
  readonly enthalpy: number;
  /** Half the relative spread of what is quoted, %; not a standard uncertainty. */
  readonly spread: number;
  /** Other values in use, J/g; empty: none known here. */
  readonly others: string;
}

const table = `
polyethylene; 293.0; 5; -
polypropylene; 206.7; 5; -
polyethylene terephthalate; 140.0; 5; -
polyamide 6; 229.8; 10; 190 in older work
polyamide 66; 255.4; 5; -
polyoxymethylene; 326.1; 5; -
polytetrafluoroethylene; 82.0; 5; -
polyether ether ketone; 129.7; 6; 130 (Blundell and Osborn 1983, from memory), 122.5 ± 1.5 at 437 K (Mehmet-Alkan and Hay, Polymer 33 (1992) 3527)
polybutylene terephthalate; 145.3; 5; -
polyvinylidene fluoride; 104.6; 5; -
polyethylene oxide; 196.6; 5; -
polylactide; 90.9; 15; 93.0 to 93.7 (Fischer 1973), 106 (from memory)
polycaprolactone; 156.8; 12; 139.5 (Crescenzi 1972), 135 to 142 (from memory)
polyamide 11; 243.9; 5; -
polyamide 12; 245.3; 5; -
polybutene; 124.8; 5; -
`;

export const polymerFusion: readonly PolymerFusion[] = tableRows(table, [
  'polymer',
  'enthalpy',
  'spread',
  'others',
]).map((row) => ({
  polymer: row.polymer,
  enthalpy: cellNumber(row.enthalpy) ?? 0,
  spread: cellNumber(row.spread) ?? 0,
  others: row.others,
  source: 'molar heats of fusion of Wunderlich and the ATHAS data bank, from memory',
}));
