import type { Sourced } from './sources';
import { cellList, cellNumber, cellWords, tableRows } from './textTable';
import type { Named } from './words';

const specimenTraits = [
  'organic',
  'carbon',
  'energetic',
  'oxidiser',
  'reactive metal',
  'alkali metal',
  'silica',
  'silicate',
  'slag',
  'lime',
  'carbonate',
  'alkali carbonate',
  'alkali hydroxide',
  'peroxide',
  'cyanide',
  'borate',
  'alkali glass',
  'lead oxide',
  'bismuth oxide',
  'vanadate',
  'copper oxide',
  'iron oxide',
  'reducible oxide',
  'fluoride',
  'halide',
  'phosphate',
  'phosphoric acid',
  'sulfate',
  'sulfide',
  'nitrate',

  'carbide',
  'silicide',
  'phosphide',
  'acid',
  'vague',
] as const;

/** What a crucible, a gas or a person has to know of a specimen. */
export type SpecimenTrait = (typeof specimenTraits)[number];

export interface Specimen extends Named, Sourced {
  /** `vague`: known as a word, but too wide to say what a crucible will meet (`metal`, `glass`). */
  readonly traits: readonly SpecimenTrait[];
  /** Metals it holds as metals, by name. */
  readonly metals: readonly string[];
  /** Where it begins to melt, °C; null where that does not matter here. */
  readonly melts: number | null;
  /** Names of `products.ts`, expected from `decomposes` on. */
  readonly products: readonly string[];
  /** °C, the low end of what is quoted; null: products are expected at any temperature. */
  readonly decomposes: number | null;
}

const columns = ['name', 'aliases', 'formulas', 'traits', 'melts', 'products', 'decomposes'] as const;

/** Specimens that are no metals, from a table with the columns above. */
export function specimenTable(table: string, source: string): readonly Specimen[] {
  return tableRows(table, columns).map((row) => ({
    name: row.name,
    aliases: cellList(row.aliases),
    formulas: cellList(row.formulas),
    traits: cellWords(row.traits, specimenTraits),
    metals: [],
    melts: cellNumber(row.melts),
    products: cellList(row.products),
    decomposes: cellNumber(row.decomposes),
    source,
  }));
}

/** Metals and alloys: `metals` lists what is in it, an element only itself. */
export function metalTable(table: string, source: string): readonly Specimen[] {
  return tableRows(table, ['name', 'aliases', 'formulas', 'traits', 'metals', 'melts'] as const).map((row) => ({
    name: row.name,
    aliases: cellList(row.aliases),
    formulas: cellList(row.formulas),
    traits: cellWords(row.traits, specimenTraits),
    metals: row.metals === '' ? [row.name] : cellList(row.metals),
    melts: cellNumber(row.melts),
    products: row.name === 'mercury' ? ['mercury vapour'] : [],
    decomposes: null,
    source,
  }));
}
