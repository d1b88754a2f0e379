import { crucibleRules, type CrucibleRule } from './crucibleRules';
import { crucibles, findCrucible, type Crucible } from './crucibles';
import { findGas, type Gas, type GasTrait, type GasUse } from './gases';
import { products } from './products';
import type { Specimen, SpecimenTrait } from './specimen';
import { findSpecimen } from './specimens';
import type { Sourced } from './sources';
import { tooHot } from './workingLimit';

/** A pair known to react under the conditions of the run. */
export interface CompatibilityProblem extends Sourced {
  /** `product`: a gas that the specimen sets free. */
  readonly kind: 'gas' | 'specimen' | 'product';
  readonly crucible: string;
  /** The words of the gloss that are meant. */
  readonly words: string;
  /** What of it is the trouble: `hydrogen chloride`, `lead oxide`, `zinc`. */
  readonly culprit: string;
  /** °C from which it is to be expected; null: at any temperature. */
  readonly above: number | null;
  readonly why: string;
  /** Materials of the table without a problem in this run. */
  readonly instead: readonly string[];
}

/** Words that are in no table, or too wide; `words` is empty where nothing was written at all. */
export interface NotAssessed {
  readonly what: 'crucible' | 'gas' | 'specimen';
  readonly words: string;
}

export interface Compatibility {
  readonly problems: readonly CompatibilityProblem[];
  /** Empty: everything was compared. Otherwise silence of `problems` means nothing. */
  readonly notAssessed: readonly NotAssessed[];
}

interface KnownGas {
  readonly words: string;
  readonly gas: Gas;
  readonly upTo: number;
}

interface KnownSpecimen {
  readonly words: string;
  readonly specimen: Specimen;
}

/**
 * Compares a crucible with the gases, with what the specimen contains and with what that sets free, up to the highest
 * temperature of the run (°C). Words that are not in the tables are reported as not assessed, never passed over; what is
 * known is still compared. `crucible` null: none was written.
 */
export function compatibility(
  crucible: string | null,
  gases: readonly GasUse[],
  specimenWords: readonly string[],
  maxTemperature: number,
): Compatibility {
  const notAssessed: NotAssessed[] = [];
  const material = crucible === null ? null : findCrucible(crucible);
  if (material === null) notAssessed.push({ what: 'crucible', words: crucible ?? '' });
  const known: KnownGas[] = [];
  if (gases.length === 0) notAssessed.push({ what: 'gas', words: '' });
  for (const { words, upTo } of gases) {
    const gas = findGas(words);
    if (gas === null) notAssessed.push({ what: 'gas', words });
    else known.push({ words, gas, upTo: Math.min(upTo ?? maxTemperature, maxTemperature) });
  }
  const specimen: KnownSpecimen[] = [];
  if (specimenWords.length === 0) notAssessed.push({ what: 'specimen', words: '' });
  for (const words of specimenWords) {
    const found = findSpecimen(words);
    if (found === null || found.traits.includes('vague')) notAssessed.push({ what: 'specimen', words });
    if (found !== null) specimen.push({ words, specimen: found });
  }
  if (material === null) return { problems: [], notAssessed };
  const found = problemsOf(material, known, specimen, maxTemperature);
  const better = found.length === 0 ? [] : replacements(material, known, specimen, maxTemperature);
  return { problems: found.map((problem) => ({ ...problem, instead: better })), notAssessed };
}

type Problem = Omit<CompatibilityProblem, 'instead'>;

function problemsOf(
  crucible: Crucible,
  gases: readonly KnownGas[],
  specimen: readonly KnownSpecimen[],
  maxTemperature: number,
): readonly Problem[] {
  return crucibleRules(crucible.name).flatMap((rule) => {
    if (rule.against === 'gas')
      return [...byGas(crucible, rule, gases), ...byProduct(crucible, rule, gases, specimen, maxTemperature)];
    return bySpecimen(crucible, rule, gases, specimen, maxTemperature);
  });
}

function byGas(crucible: Crucible, rule: CrucibleRule, gases: readonly KnownGas[]): readonly Problem[] {
  return gases.flatMap(({ words, gas, upTo }) => {
    const culprit = gas.traits.find((trait) => rule.what.includes(trait));
    if (culprit === undefined || (rule.above !== null && upTo <= rule.above)) return [];
    return [problem('gas', crucible, words, gas.name, rule.above, rule)];
  });
}

/** A product corrodes as the purge gas does: from its own temperature on, which is that of the specimen's decomposition. */
function byProduct(
  crucible: Crucible,
  rule: CrucibleRule,
  gases: readonly KnownGas[],
  specimen: readonly KnownSpecimen[],
  maxTemperature: number,
): readonly Problem[] {
  // Hydrogen sulfide and ammonia burn where there is oxygen all the time.
  const burnt = gases.length > 0 && gases.every(({ gas }) => gas.traits.includes('oxidising'));
  return specimen.flatMap(({ words, specimen: { products: freed, decomposes } }) => {
    const above = highest(rule.above, decomposes);
    if (above !== null && maxTemperature <= above) return [];
    const culprit = freed.find((name) => {
      const gas = findGas(products.get(name)?.gas ?? '');
      if (gas === null || (burnt && gas.traits.includes('reducing'))) return false;
      return gas.traits.some((trait) => rule.what.includes(trait));
    });
    return culprit === undefined ? [] : [problem('product', crucible, words, culprit, above, rule)];
  });
}

function bySpecimen(
  crucible: Crucible,
  rule: CrucibleRule,
  gases: readonly KnownGas[],
  specimen: readonly KnownSpecimen[],
  maxTemperature: number,
): readonly Problem[] {
  const { beside, inGas } = rule;
  if (beside !== null && !specimen.some((s) => s.specimen.traits.includes(beside as SpecimenTrait))) return [];
  const inThese = gases.filter(({ gas }) => gas.traits.some((trait: GasTrait) => inGas.includes(trait)));
  if (inGas.length > 0 && inThese.length === 0) return [];
  const hottest = inGas.length > 0 ? Math.max(...inThese.map((g) => g.upTo)) : maxTemperature;
  return specimen.flatMap(({ words, specimen: row }) => {
    const held: readonly string[] = rule.against === 'metal' ? row.metals : row.traits;
    const culprit = held.find((name) => rule.what.includes(name));
    if (culprit === undefined) return [];
    // An alloy melts, and then attacks, before the metals in it do.
    const alloyed = rule.against === 'metal' && row.metals.length > 1 && row.melts !== null;
    const above = alloyed && rule.above !== null ? Math.min(rule.above, row.melts) : rule.above;
    if (above !== null && hottest <= above) return [];
    return [problem('specimen', crucible, words, culprit, above, rule)];
  });
}

function problem(
  kind: Problem['kind'],
  crucible: Crucible,
  words: string,
  culprit: string,
  above: number | null,
  rule: CrucibleRule,
): Problem {
  return { kind, crucible: crucible.name, words, culprit, above, why: rule.why, source: rule.source };
}

function replacements(
  crucible: Crucible,
  gases: readonly KnownGas[],
  specimen: readonly KnownSpecimen[],
  maxTemperature: number,
): readonly string[] {
  const fit = crucibles.filter(
    (other) =>
      !other.rare &&
      other !== crucible &&
      tooHot(other.name, gases, maxTemperature) === null &&
      problemsOf(other, gases, specimen, maxTemperature).length === 0,
  );
  return fit.map((other) => other.name);
}

function highest(a: number | null, b: number | null): number | null {
  if (a === null) return b;
  return b === null ? a : Math.max(a, b);
}
