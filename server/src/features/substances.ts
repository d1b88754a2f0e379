import type { FindingCode } from '../findings/codes';
import { explanationText, limitText } from '../findings/page';
import { findingRecord } from '../findings/table';
import { plainNumber } from '../presentation/plainNumber';
import { plusMinus } from '../presentation/shown';
import { standardUncertainty } from '../quantities/standardUncertainty';
import { molarMass } from '../quantities/molarMass';
import { atomicWeights } from '../reference/atomicWeights';
import type { Crucible } from '../reference/crucibles';
import type { Gas } from '../reference/gases';
import type { Specimen } from '../reference/specimen';
import { link, plain, prose, rows, title, type Block } from './prose';

const degrees = (celsius: number): string => `${plainNumber(celsius, 5)} °C`;

/** A purge gas as the tables have it. */
export function gasBlocks(gas: Gas): readonly Block[] {
  return [
    title(gas.name),
    ...(gas.note === '' || gas.note === '-' ? [] : [prose(gas.note)]),
    rows(
      ['is', gas.traits.join(', ')],
      ['molar mass', gas.molarMass === null ? null : `${plainNumber(gas.molarMass, 6)} g/mol`],
      ['density', gas.density === null ? null : `${plainNumber(gas.density, 4)} mg/cm³ at 25 °C and 101.325 kPa`],
      [
        'conducts heat',
        gas.relativeConductivity === null
          ? null
          : `${plainNumber(gas.relativeConductivity, 3)} times as well as nitrogen`,
      ],
      ['source', gas.source],
    ),
  ];
}

/** A crucible material with its working limits. Supplier data come first, and it says so. */
export function crucibleBlocks(crucible: Crucible): readonly Block[] {
  return [
    title(crucible.name),
    rows(
      ['up to', `${degrees(crucible.limit.inert)} in inert gas, ${degrees(crucible.limit.air)} in air`],
      ['good for', crucible.goodFor],
      ['mind', crucible.sideEffects],
      ['source', `${crucible.source}; data of the supplier and local experience come first`],
    ),
  ];
}

/** What is known of a specimen by name. */
export function specimenBlocks(specimen: Specimen): readonly Block[] {
  return [
    title(specimen.name),
    rows(
      ['formula', specimen.formulas.join(', ')],
      ['is', specimen.traits.join(', ')],
      ['begins to melt at', specimen.melts === null ? null : degrees(specimen.melts)],
      ['gives off', specimen.products.join(', ')],
      ['from', specimen.decomposes === null ? null : `${degrees(specimen.decomposes)} (the low end of what is quoted)`],
      ['source', specimen.source],
    ),
  ];
}

/** A formula with its molar mass, the mass of each element in it, or why it cannot be read. */
export function formulaBlocks(formula: string): readonly Block[] {
  const read = molarMass(formula, atomicWeights);
  if (!read.ok) return [title(`M(${formula})`), plain(`No molar mass: ${read.failure.message}.`)];
  const { value, elements } = read.value;
  return [
    title(`M(${formula}) = ${plusMinus(value.value, standardUncertainty(value))} g/mol`),
    rows(
      ...elements.map(({ symbol, count, mass }): [string, string] => [
        symbol,
        `${plainNumber(count, 6)} × ${plainNumber(mass / count, 6)} g/mol, ${plainNumber((100 * mass) / value.value, 4)} % of the mass`,
      ]),
    ),
    prose('Abridged standard atomic weights of IUPAC 2021; their ± as limits of a rectangular distribution.'),
  ];
}

/** A finding's code: what it means, what decides it, whether it can be accepted. */
export function codeBlocks(code: FindingCode, page: string | null): readonly Block[] {
  const record = findingRecord(code);
  const effect =
    record.effect === 'fails'
      ? 'The value fails.'
      : record.effect === 'apparent'
        ? 'The value becomes apparent.'
        : 'The value stands.';
  const accepted = record.allowable ? `\`allow ${code} because "…"\` accepts it.` : 'It cannot be allowed.';
  return [
    title(record.title),
    prose(explanationText(record)),
    rows(...record.limits.map((limit): [string, string] => [limit.meaning, limitText(limit)])),
    prose(`${severity[record.severity]} ${effect} ${accepted}`),
    ...(page === null ? [] : [link('All about it', page)]),
  ];
}

const severity = { error: 'An error.', warning: 'A warning.', note: 'A note.' } as const;
