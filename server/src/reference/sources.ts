/** Where the rows of the tables come from. Every row names one of these or a reference of its own. */
export const sources = {
  iupac2021: 'Prohaska et al., Pure Appl. Chem. 94 (2022) 573, table 1 (abridged), read in a public transcription',
  commonPractice: 'common practice',
  handbookFromMemory: 'handbook value, from memory',
  vapourPressure: 'Alcock, Itkin, Horrigan, Can. Metall. Q. 23 (1984) 309, temperature of 1 Pa, from memory',
} as const;

/** A row that says where it comes from. */
export interface Sourced {
  readonly source: string;
}
