import { findGas, type Gas } from './gases';
import { volatileMetals } from './metalVapour';
import { products } from './products';
import { sources, type Sourced } from './sources';
import type { Specimen } from './specimen';
import { findSpecimen } from './specimens';
import { lookupForm } from './words';

export type CautionCode =
  | 'caution-hazard-not-stated'
  | 'caution-energetic'
  | 'caution-unknown-specimen'
  | 'caution-sealed-crucible'
  | 'caution-flammable-gas'
  | 'caution-oxygen-after-organics'
  | 'caution-toxic-gas'
  | 'caution-cryogenic'
  | 'caution-metal-vapour';

/** A reminder. It replaces no risk assessment and says so. */
export interface Caution extends Sourced {
  readonly code: CautionCode;
  /** Clause of `run` it is about; null: the run as a whole. */
  readonly clause: 'contains' | 'hazard' | 'crucible' | 'atmosphere' | null;
  /** The words of the gloss, and what they lead to expect. */
  readonly about: readonly string[];
  /** Two or three sentences; the last one defers to local codes and licensed practice. */
  readonly message: string;
}

/** What a run gloss says of itself, and the temperatures of the data (°C; null: not known). */
export interface CautionFacts {
  /** `sample none`: an empty crucible, about whose specimen there is nothing to say. */
  readonly emptyCrucible: boolean;
  readonly hazards: readonly string[];
  readonly contains: readonly string[];
  /** Words of the crucible and what follows the comma (`no lid`, `sealed`). */
  readonly crucible: readonly string[];
  /** One list of gas words for each `atmosphere`, in the order of time. */
  readonly atmospheres: readonly (readonly string[])[];
  readonly minTemperature: number | null;
  readonly maxTemperature: number | null;
}

interface Known {
  readonly words: string;
  readonly row: Specimen;
}

const deference = 'Local codes and licensed, trained people decide, not this reminder.';

/**
 * The cautions that a run calls for, from what its gloss says (common practice; the list of occasions is the language's:
 * hazard not stated, energetic or unknown specimen, sealed crucible, flammable gas, oxygen after organics, toxic or
 * corrosive gas, cryogenic start, metal vapour).
 */
export function cautions(facts: CautionFacts): readonly Caution[] {
  const known = facts.contains.flatMap((words) => {
    const row = findSpecimen(words);
    return row === null ? [] : [{ words, row }];
  });
  const gases = facts.atmospheres.map((list) => list.flatMap((words) => findGas(words) ?? []));
  const list: (Caution | null)[] = [
    sealed(facts.crucible),
    flammable(facts.atmospheres),
    cold(facts.minTemperature),
    toxic(facts, facts.emptyCrucible ? [] : known),
  ];
  if (!facts.emptyCrucible) {
    list.push(
      hazardNotStated(facts.hazards),
      unknownSpecimen(facts.contains),
      energetic(known, facts.hazards),
      oxygen(known, gases),
      metalVapour(known, facts.maxTemperature),
    );
  }
  return list.filter((caution) => caution !== null);
}

function hazardNotStated(hazards: readonly string[]): Caution | null {
  if (hazards.length > 0) return null;
  return caution(
    'caution-hazard-not-stated',
    null,
    [],
    'Nothing is said about hazards of the specimen: a record holds a line on them even when none is known, with its source.',
  );
}

function unknownSpecimen(contains: readonly string[]): Caution | null {
  const unknown = contains.filter((words) => findSpecimen(words) === null);
  if (contains.length > 0 && unknown.length === 0) return null;
  const what =
    contains.length === 0
      ? 'It is not said what the specimen contains'
      : `The tables do not know ${unknown.map((words) => `"${words}"`).join(', ')}`;
  return caution(
    'caution-unknown-specimen',
    'contains',
    unknown,
    `${what}, so nothing can be said about energy, products or the crucible. What is unknown is first tried with a few milligrams at most and the extraction running.`,
  );
}

function energetic(known: readonly Known[], hazards: readonly string[]): Caution | null {
  const named = known.filter(({ row }) => row.traits.includes('energetic')).map(({ words }) => words);
  // An oxidiser mixed with what burns is energetic though neither part is.
  const oxidisers = known.filter(({ row }) => row.traits.includes('oxidiser'));
  const fuels = known.filter(({ row }) =>
    row.traits.some((t) => t === 'organic' || t === 'carbon' || t === 'reactive metal'),
  );
  const mixture = named.length === 0 && oxidisers.length > 0 && fuels.length > 0 ? [...oxidisers, ...fuels] : [];
  const stated = hazards.filter(saysEnergetic);
  const about = [...named, ...mixture.map(({ words }) => words), ...stated];
  if (about.length === 0) return null;
  return caution(
    'caution-energetic',
    named.length + mixture.length > 0 ? 'contains' : 'hazard',
    about,
    `${about.join(', ')}: may release energy violently. Such a specimen starts at a milligram or less, open or vented, behind shielding, and only where the site is licensed for it; confinement, heating rate and traces of metal or acid change how violent it is.`,
  );
}

/** A hazard line that speaks of energy and does not deny it. */
function saysEnergetic(hazard: string): boolean {
  const says =
    /explo|energetic|detonat|self.?reactive|self.?accelerat|shock.?sensitive|friction.?sensitive|pyrotechnic|propellant|runaway/i;
  return says.test(hazard) && !/\b(?:no|not|non|none|nothing|never)\b/i.test(hazard);
}

function sealed(crucible: readonly string[]): Caution | null {
  const about = crucible.filter((words) => {
    const form = lookupForm(words);
    if (/\b(?:pierced|pinhole|hole|vented|open|unsealed|not|no lid|without)\b/.test(form)) return false;
    return /\b(?:sealed|hermetic|hermetically|closed|gas tight|gastight|cold welded|welded|screwed|clamped|pressure)\b/.test(
      form,
    );
  });
  if (about.length === 0) return null;
  return caution(
    'caution-sealed-crucible',
    'crucible',
    about,
    `A closed crucible (${about.join(', ')}) is a small pressure vessel and opens at a moment nobody chose. Estimate the pressure before closing it, stay below its rating, keep face and fingers away and let it become cold before extracting it.`,
  );
}

function flammable(atmospheres: readonly (readonly string[])[]): Caution | null {
  const about = unique(atmospheres.flat().filter((words) => findGas(words)?.traits.includes('flammable') ?? false));
  if (about.length === 0) return null;
  return caution(
    'caution-flammable-gas',
    'atmosphere',
    about,
    `${about.join(', ')}: burns, and some of these gases are poisonous. Only a mixture the site permits, from an interlocked supply, through leak-checked lines, with purging before and after, the exhaust led away and no oxygen in the same lines.`,
  );
}

/** Oxygen after an inert part meets vapours and char; pure oxygen is no gas for organic bulk at any time. */
function oxygen(known: readonly Known[], gases: readonly (readonly Gas[])[]): Caution | null {
  const burns = known
    .filter(({ row }) => row.traits.some((t) => t === 'organic' || t === 'carbon'))
    .map(({ words }) => words);
  if (burns.length === 0) return null;
  const oxidising = gases.map((list) => list.some((gas) => gas.traits.includes('oxidising')));
  const later = oxidising.some((is, i) => is && i > 0 && oxidising.slice(0, i).includes(false));
  const pure = gases.some((list) => list.some((gas) => gas.name === 'oxygen') && list.length === 1);
  if (!later && !pure) return null;
  return caution(
    'caution-oxygen-after-organics',
    'atmosphere',
    burns,
    `Oxygen meets ${burns.join(', ')} and what it gave off. Purge long enough with inert gas before the switch, keep the specimen small, the lines free of condensate, oil and grease, and the seals fit for oxygen.`,
  );
}

function toxic(facts: CautionFacts, known: readonly Known[]): Caution | null {
  const max = facts.maxTemperature;
  const freed = known.flatMap(({ words, row }) => {
    if (row.decomposes !== null && max !== null && max < row.decomposes) return [];
    const bad = row.products.filter((name) => products.get(name)?.flags.some((flag) => flag !== 'flammable') ?? false);
    return bad.length === 0 ? [] : [`${bad.join(', ')} from ${words}`];
  });
  const purge = unique(facts.atmospheres.flat()).filter(
    (words) => findGas(words)?.traits.some((trait) => trait === 'toxic' || trait === 'corrosive') ?? false,
  );
  const about = [...purge, ...unique(freed)];
  if (about.length === 0) return null;
  return caution(
    'caution-toxic-gas',
    freed.length > 0 ? 'contains' : 'atmosphere',
    about,
    `To be expected: ${about.join('; ')}. Extraction runs and is confirmed before heating, the exhaust of a coupled analyser included; corrosive gas also attacks balance, windings and sensor, so a small specimen and more protective flow help.`,
  );
}

function cold(minTemperature: number | null): Caution | null {
  if (minTemperature === null || minTemperature >= 0) return null;
  return caution(
    'caution-cryogenic',
    null,
    [],
    'The run starts below 0 °C. Cooling liquids freeze skin, displace the air that is breathed and build pressure where they are trapped, and oxygen condenses on cold organic matter: ventilate, monitor, protect.',
  );
}

function metalVapour(known: readonly Known[], max: number | null): Caution | null {
  const about = known.flatMap(({ words, row }) =>
    volatileMetals
      .filter(({ metal, onePascal }) => row.metals.includes(metal) && max !== null && max > onePascal)
      .map(
        ({ metal, onePascal }) =>
          `${metal === lookupForm(words) ? words : `${metal} in ${words}`} above ${onePascal} °C`,
      ),
  );
  if (about.length === 0) return null;
  return caution(
    'caution-metal-vapour',
    'contains',
    about,
    `${about.join(', ')}: the vapour travels to the coldest noble metal it finds, which is the sensor, and may be poisonous. Use a lid, a lower temperature or a shield, or decline the specimen.`,
  );
}

function caution(code: CautionCode, clause: Caution['clause'], about: readonly string[], text: string): Caution {
  return { code, clause, about, message: `${text} ${deference}`, source: sources.commonPractice };
}

function unique(words: readonly string[]): readonly string[] {
  return [...new Set(words)];
}
