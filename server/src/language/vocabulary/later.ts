/** Words of the trade that a later release of the language will read. Used now, they say so instead of being unknown. */
export const laterWords: readonly { readonly word: string; readonly prose: string }[] = [
  { word: 'instrument', prose: 'A gloss for an instrument and its calibrations.' },
  { word: 'standard', prose: 'The reference material of a calibration.' },
  { word: 'valid', prose: 'How long a calibration holds.' },
  { word: 'study', prose: 'A gloss over several runs.' },
  { word: 'use', prose: 'A run that a study takes in.' },
  { word: 'kinetics', prose: 'Activation energies from several rates.' },
  { word: 'predict', prose: 'Conversion at another programme.' },
  { word: 'capacity', prose: 'Specific heat capacity from three runs.' },
  { word: 'induction', prose: 'Oxidation induction time.' },
  { word: 'purity', prose: 'Purity from the melting curve.' },
  { word: 'gas', prose: 'Evolved gas, its calibration and its amount.' },
];

export function isLaterWord(word: string): boolean {
  return laterWords.some((later) => later.word === word);
}
