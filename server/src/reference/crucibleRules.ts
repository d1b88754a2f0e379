import { sources, type Sourced } from './sources';
import { cellList, cellNumber, tableRows } from './textTable';

/** One thing that a crucible must not meet. */
export interface CrucibleRule extends Sourced {
  readonly crucible: string;
  /** `gas`: traits of a purge gas or product; `specimen`: traits; `metal`: names of metals, as metals. */
  readonly against: 'gas' | 'specimen' | 'metal';
  readonly what: readonly string[];
  /** °C from which it is to be expected; null: at any temperature. */
  readonly above: number | null;
  /** Only with a purge gas of one of these traits; empty: in any gas. */
  readonly inGas: readonly string[];
  /** Only where a specimen of this trait is there as well. */
  readonly beside: string | null;
  readonly why: string;
}

/**
 * Pairs known to react. Temperatures are where the reaction may begin: the lowest eutectic for aluminium and gold
 * (phase diagrams, from memory), the melting point of a metal on platinum unless a eutectic lies below, else a
 * conservative working value.
 */
const table = `
aluminium; gas; hydrogen halide, halogen; -; -; -; corrodes the crucible, and aluminium halide sublimes as a false loss
aluminium; metal; gallium; 26; -; -; wets and embrittles the crucible
aluminium; metal; mercury; -; -; -; forms an amalgam that destroys the crucible
aluminium; metal; tin; 228; -; -; alloys with the crucible
aluminium; metal; indium; 156; -; -; wets the crucible through its oxide skin
aluminium; metal; zinc; 381; -; -; alloys with the crucible, eutectic at 381 °C
aluminium; metal; magnesium; 437; -; -; alloys with the crucible, eutectic near 437 °C
aluminium; metal; germanium; 420; -; -; alloys with the crucible, eutectic near 420 °C
aluminium; metal; gold; 525; -; -; alloys with the crucible, eutectic near 525 °C
aluminium; metal; copper; 548; -; -; alloys with the crucible, eutectic at 548 °C
aluminium; metal; silver; 567; -; -; alloys with the crucible, eutectic at 567 °C
aluminium; metal; silicon; 577; -; -; alloys with the crucible, eutectic at 577 °C
aluminium; specimen; alkali metal, alkali hydroxide, phosphoric acid, acid; -; -; -; dissolves the crucible
aluminium; specimen; alkali carbonate, phosphate; 400; -; -; attacks the crucible
aluminium; specimen; peroxide; -; -; -; oxidises the crucible violently
alumina; specimen; alkali hydroxide, peroxide; 300; -; -; dissolves alumina as aluminate
alumina; specimen; alkali carbonate; 850; -; -; the melt dissolves alumina
alumina; specimen; borate, vanadate; 600; -; -; the melt dissolves alumina
alumina; specimen; lead oxide, bismuth oxide; 600; -; -; the melt dissolves alumina
alumina; specimen; fluoride; 700; -; -; dissolves alumina
alumina; specimen; alkali glass; 1000; -; -; the melt dissolves alumina
alumina; specimen; copper oxide; 1000; -; -; forms aluminate and creeps
alumina; specimen; iron oxide; 1300; -; -; forms spinel and a melt
alumina; specimen; slag; 1200; -; -; the melt dissolves alumina
alumina; specimen; reactive metal, alkali metal; 500; -; -; reduces alumina
alumina; specimen; carbon; 1500; hydrogen, vacuum; -; reduces alumina to volatile suboxide
platinum; gas; halogen; 300; -; -; forms volatile platinum halide
platinum; gas; hydrogen sulfide, carburising; 600; -; -; takes up sulfur or carbon and becomes brittle
platinum; metal; gallium, mercury, indium, tin, bismuth; -; -; -; alloys that melt low pierce crucible and sensor
platinum; metal; lead, cadmium, thallium; 290; -; -; alloys that melt low pierce crucible and sensor
platinum; metal; zinc, selenium, tellurium; 200; -; -; alloys that melt low pierce crucible and sensor
platinum; metal; arsenic, antimony; 590; -; -; alloys that melt low pierce crucible and sensor
platinum; metal; aluminium, magnesium; 550; -; -; alloys, with much heat, and pierces crucible and sensor
platinum; metal; germanium, silicon, boron; 770; -; -; alloys that melt low pierce crucible and sensor
platinum; metal; silver, gold, copper; 900; -; -; the melt alloys with the crucible
platinum; metal; iron, nickel, cobalt, manganese; 1100; -; -; diffuses into the crucible and the melt dissolves it
platinum; specimen; reactive metal, alkali metal; -; -; -; alloys with the crucible
platinum; specimen; carbide, silicide, phosphide; 600; -; -; forms silicide, phosphide or carbon in the grain boundaries
platinum; specimen; phosphate, sulfate; 500; -; carbon; carbon sets phosphorus or sulfur free, which melt platinum
platinum; specimen; phosphate, sulfate; 500; reducing; -; phosphorus or sulfur is set free and melts platinum
platinum; specimen; sulfide; 500; inert, reducing, vacuum; -; takes up sulfur and becomes brittle
platinum; specimen; alkali hydroxide, peroxide, cyanide; 350; -; -; the melt attacks platinum
platinum; specimen; lead oxide, bismuth oxide; 400; inert, reducing, vacuum; -; the oxide is reduced and the metal pierces crucible and sensor
platinum; specimen; lead oxide, bismuth oxide; 400; -; organic; carbon reduces the oxide and the metal pierces crucible and sensor
platinum; specimen; reducible oxide; 300; reducing; -; the oxide is reduced and the metal alloys with the crucible
platinum; specimen; silica, silicate, slag; 900; reducing; -; silicon is set free and forms a low melt with platinum
platinum; specimen; silica, silicate, slag; 1000; -; carbon; carbon sets silicon free, which melts platinum
platinum; specimen; organic, carbon; 900; inert, reducing, vacuum; -; carbon goes into the grain boundaries
graphite; gas; oxidising; 400; -; -; burns the crucible
graphite; gas; carbon dioxide, steam; 700; -; -; gasifies the crucible
graphite; gas; hydrogen; 1500; -; -; gasifies the crucible
graphite; specimen; nitrate, peroxide, oxidiser; 300; -; -; burns the crucible, violently
graphite; specimen; carbonate, alkali carbonate; 700; -; -; carbon dioxide from the specimen gasifies the crucible
graphite; specimen; reducible oxide, copper oxide, iron oxide, lead oxide, bismuth oxide, vanadate; 600; -; -; carbon reduces the specimen
graphite; specimen; reactive metal; 800; -; -; forms carbide
graphite; metal; silicon, iron, nickel, cobalt, manganese, chromium, vanadium, molybdenum, tungsten, tantalum; 1100; -; -; forms carbide or dissolves carbon
graphite; metal; aluminium; 1000; -; -; forms aluminium carbide
copper; gas; oxidising; 200; -; -; oxidises the crucible, which shows as a gain
copper; gas; ammonia, hydrogen sulfide, halogen, hydrogen halide, sulfur dioxide; -; -; -; corrodes the crucible
copper; metal; aluminium, zinc, tin, bismuth, antimony, lead, gallium, mercury, indium; 150; -; -; alloys with the crucible
copper; specimen; acid, phosphoric acid, peroxide, phosphide; -; -; -; dissolves or oxidises the crucible
copper; specimen; sulfide; 150; -; -; forms copper sulfide
gold; gas; halogen; 150; -; -; forms gold halide
gold; metal; mercury, gallium, indium; -; -; -; forms an amalgam or a low melt
gold; metal; tin, bismuth, lead, cadmium, tellurium; 210; -; -; alloys that melt low pierce the crucible
gold; metal; germanium, silicon; 360; -; -; eutectic near 361 °C
gold; metal; zinc, aluminium, antimony; 400; -; -; alloys with the crucible
gold; metal; silver, copper; 750; -; -; alloys with the crucible
gold; specimen; cyanide; -; oxidising; -; dissolves gold
gold; specimen; reactive metal, alkali metal; -; -; -; alloys with the crucible
quartz glass; gas; hydrogen fluoride; -; -; -; etches silica
quartz glass; gas; hydrogen; 1000; -; -; reduces silica to volatile suboxide
quartz glass; specimen; alkali hydroxide, peroxide; 200; -; -; dissolves silica
quartz glass; specimen; alkali carbonate, borate, lead oxide, bismuth oxide, vanadate, alkali glass; 500; -; -; dissolves silica
quartz glass; specimen; fluoride; 300; -; -; etches silica
quartz glass; specimen; phosphoric acid; 250; -; -; dissolves silica
quartz glass; specimen; lime; 900; -; -; forms silicate and makes the glass devitrify
quartz glass; specimen; iron oxide, copper oxide, reducible oxide; 900; -; -; forms silicate
quartz glass; specimen; reactive metal, alkali metal; 300; -; -; reduces silica to silicon
quartz glass; metal; aluminium; 600; -; -; reduces silica to silicon
zirconia; gas; reducing; 1500; -; -; takes oxygen from the crucible
zirconia; gas; vacuum; 1700; -; -; takes oxygen from the crucible
zirconia; specimen; carbon; 1500; -; -; forms carbide
zirconia; specimen; alkali hydroxide, alkali carbonate, peroxide; 600; -; -; the melt attacks zirconia
zirconia; specimen; phosphate, phosphoric acid, slag, alkali glass; 1000; -; -; dissolves the stabiliser
zirconia; specimen; reactive metal; 1000; -; -; takes oxygen from the crucible
zirconia; metal; aluminium; 900; -; -; reduces zirconia
yttria; specimen; acid, phosphoric acid; -; -; -; dissolves yttria
yttria; specimen; halide, slag, alkali glass; 700; -; -; the melt dissolves yttria
yttria; specimen; carbon; 1600; -; -; forms carbide
tungsten; gas; oxidising; 400; -; -; volatile tungsten oxide forms
tungsten; gas; steam; 700; -; -; oxidises the crucible
tungsten; gas; carbon dioxide; 1200; -; -; oxidises the crucible
tungsten; gas; halogen; -; -; -; forms volatile halide
tungsten; metal; iron, nickel, cobalt, silicon, boron; 1100; -; -; alloys with the crucible
tungsten; specimen; oxidiser, nitrate, peroxide; 300; -; -; oxidises the crucible
tungsten; specimen; carbon; 1000; -; -; forms carbide
steel; gas; hydrogen; 200; -; -; embrittles and leaks through the wall
steel; gas; hydrogen halide, halogen, hydrogen sulfide; -; -; -; corrodes the crucible
steel; metal; gallium, mercury, indium, tin, lead, bismuth, zinc, cadmium, aluminium, magnesium; 150; -; -; the melt attacks steel
steel; specimen; acid, phosphoric acid, alkali hydroxide; -; -; -; corrodes the crucible
steel; specimen; peroxide; -; -; -; steel catalyses the decomposition
tantalum; gas; nitriding, hydrogen, oxidising; 200; -; -; takes the gas up and becomes brittle
boron nitride; gas; oxidising; 900; -; -; oxidises the crucible to boron oxide
magnesia; specimen; lead oxide, borate, silica; 1000; -; -; dissolves magnesia
nickel; gas; oxidising; 300; -; -; oxidises the crucible
nickel; gas; hydrogen sulfide, sulfur dioxide, halogen; -; -; -; corrodes the crucible
nickel; metal; tin, lead, zinc, bismuth, aluminium; 200; -; -; alloys with the crucible
`;

const columns = ['crucible', 'against', 'what', 'above', 'inGas', 'beside', 'why'] as const;

function against(cell: string): CrucibleRule['against'] {
  if (cell === 'gas' || cell === 'specimen' || cell === 'metal') return cell;
  throw new Error(`unknown kind of rule: ${cell}`);
}

const rules: readonly CrucibleRule[] = tableRows(table, columns).map((row) => ({
  crucible: row.crucible,
  against: against(row.against),
  what: cellList(row.what),
  above: cellNumber(row.above),
  inGas: cellList(row.inGas),
  beside: row.beside === '' ? null : row.beside,
  why: row.why,
  source: sources.commonPractice,
}));

/** Alloys of platinum with rhodium are bound by the rules of platinum. */
const sameAs: Readonly<Record<string, string>> = { 'platinum rhodium': 'platinum' };

/** The rules of a crucible material by its name in `crucibles.ts`. */
export function crucibleRules(name: string): readonly CrucibleRule[] {
  const bound = sameAs[name] ?? name;
  return rules.filter((rule) => rule.crucible === bound);
}

export const allCrucibleRules = rules;
