import { sources, type Sourced } from './sources';
import { cellWords, tableRows } from './textTable';

const flags = ['toxic', 'corrosive', 'flammable'] as const;

/** What a specimen sets free when heated, as far as it matters to crucible, apparatus and people. */
export interface Product extends Sourced {
  readonly name: string;
  readonly flags: readonly (typeof flags)[number][];
  /** The gas of `gases.ts` whose rules for crucibles hold for it too; null: none. */
  readonly gas: string | null;
}

const table = `
water; -; -
carbon dioxide; -; -
oxygen; -; -
carbon monoxide; toxic, flammable; -
organic vapours; flammable; -
aldehydes; toxic, flammable; -
aromatic vapours; toxic, flammable; -
acetic acid; corrosive, flammable; -
isocyanates; toxic; -
hydrogen cyanide; toxic, flammable; -
hydrogen chloride; toxic, corrosive; hydrogen chloride
hydrogen bromide; toxic, corrosive; hydrogen chloride
hydrogen fluoride; toxic, corrosive; hydrogen fluoride
chlorine; toxic, corrosive; chlorine
sulfur oxides; toxic, corrosive; sulfur dioxide
hydrogen sulfide; toxic, corrosive, flammable; hydrogen sulfide
ammonia; toxic, corrosive; ammonia
nitrogen oxides; toxic, corrosive; -
phosphorus oxides; toxic, corrosive; -
phosphine; toxic, flammable; -
arsenic compounds; toxic; -
mercury vapour; toxic; -
`;

/** By name. */
export const products: ReadonlyMap<string, Product> = new Map(
  tableRows(table, ['name', 'flags', 'gas']).map((row) => [
    row.name,
    {
      name: row.name,
      flags: cellWords(row.flags, flags),
      gas: row.gas === '' ? null : row.gas,
      source: sources.commonPractice,
    },
  ]),
);
