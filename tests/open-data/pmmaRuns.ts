/**
 * Published figures of the MaCFP 2021 condensed-phase report, Part I (repository MaCFP/matl-db, commit 14b73ea, MIT), for
 * one batch of black cast PMMA: peak of the mass loss rate over initial mass (1/s), its temperature and the temperature at
 * which the rate reaches a tenth of it on the leading side (K), each with the ± printed (null: none). Files of one
 * laboratory are averaged, as in the report. Which laboratory is which city of the report was found by recomputing.
 */
export interface PmmaLaboratory {
  readonly city: string;
  readonly files: readonly string[];
  /** Heating rate, K/min. */
  readonly rate: number;
  readonly peakRate: readonly [number, number | null];
  readonly maximum: readonly [number, number | null];
  readonly onset: readonly [number, number | null];
}

const series = (name: string, numbers: readonly number[]) => numbers.map((n) => `${name}_${n}.csv`);

export const laboratories: readonly PmmaLaboratory[] = [
  {
    city: 'Blainville-Boisbriand',
    files: series('DBI_Lund/DBI_Lund_TGA_N2_20K', [1, 2, 3]),
    rate: 20,
    peakRate: [5.3e-3, 1.6e-4],
    maximum: [649, 2],
    onset: [589, 5],
  },
  {
    city: 'Chicoutimi',
    files: series('GIDAZE+/GIDAZE+_TGA_N2_10K', [1, 2]),
    rate: 10,
    peakRate: [2.8e-3, null],
    maximum: [638, null],
    onset: [580, null],
  },
  {
    city: 'Drummondville',
    files: series('HKPoly/HKPolyU_TGA_N2_10K', [1, 2]),
    rate: 10,
    peakRate: [2.9e-3, null],
    maximum: [634, 1],
    onset: [581, 3],
  },
  {
    city: 'Gatineau, 5 K/min',
    files: series('LCPP/LCPP_TGA_N2_5K', [1, 2, 3]),
    rate: 5,
    peakRate: [1.3e-3, null],
    maximum: [627, 1],
    onset: [555, 1],
  },
  {
    city: 'Gatineau, 20 K/min',
    files: series('LCPP/LCPP_TGA_N2_20K', [1, 2, 3]),
    rate: 20,
    peakRate: [5.2e-3, null],
    maximum: [647, 2],
    onset: [577, 2],
  },
  {
    city: 'Moncton',
    files: series('Sandia/Sandia_TGA_Ar_10K', [1, 2]),
    rate: 10,
    peakRate: [3.1e-3, 7e-5],
    maximum: [646, 1],
    onset: [580, 1],
  },
  {
    city: 'Rimouski',
    files: ['UClan/UClan_TGA_N2_10K.csv'],
    rate: 10,
    peakRate: [2.8e-3, null],
    maximum: [641, null],
    onset: [584, null],
  },
  {
    city: 'Rouyn-Noranda',
    files: series('UDRI/UDRI_TGA_N2_10K', [1, 2, 3]),
    rate: 10,
    peakRate: [2.7e-3, null],
    maximum: [624, 2],
    onset: [561, 2],
  },
  {
    city: 'Saint John',
    files: ['UMD/UMD_TGA_N2_10K.csv'],
    rate: 10,
    peakRate: [3.0e-3, null],
    maximum: [640, null],
    onset: [591, null],
  },
  {
    city: 'Shawinigan, 5 K/min',
    files: ['UMET/UMET_TGA_N2_5K_1.csv'],
    rate: 5,
    peakRate: [1.6e-3, null],
    maximum: [624, null],
    onset: [579, null],
  },
  {
    city: 'Shawinigan, 10 K/min',
    files: ['UMET/UMET_TGA_N2_10K_1.csv'],
    rate: 10,
    peakRate: [3.1e-3, null],
    maximum: [635, null],
    onset: [588, null],
  },
  {
    city: 'Shawinigan, 20 K/min',
    files: ['UMET/UMET_TGA_N2_20K_1.csv'],
    rate: 20,
    peakRate: [6.2e-3, null],
    maximum: [642, null],
    onset: [595, null],
  },
  {
    city: 'Sherbrooke',
    files: series('UQ/UQ_TGA_N2_10K', [1, 2, 3]),
    rate: 10,
    peakRate: [2.8e-3, null],
    maximum: [639, 1],
    onset: [578, null],
  },
];

/** Heats of reaction of the same report (J/g, per mass lost): both files of a simultaneous run. */
export const heats: readonly { readonly laboratory: string; readonly tail: string; readonly published: number }[] = [
  { laboratory: 'Sandia', tail: 'Ar_1K_1', published: 1180 },
  { laboratory: 'Sandia', tail: 'Ar_10K_1', published: 457 },
  { laboratory: 'Sandia', tail: 'Ar_10K_2', published: 454 },
  { laboratory: 'Sandia', tail: 'Ar_50K_1', published: 207 },
  { laboratory: 'Sandia', tail: 'Ar_50K_2', published: 274 },
  { laboratory: 'Sandia', tail: 'Ar_50K_3', published: 214 },
  { laboratory: 'DBI_Lund', tail: 'N2_20K_1', published: 410 },
  { laboratory: 'DBI_Lund', tail: 'N2_20K_2', published: 498 },
  { laboratory: 'DBI_Lund', tail: 'N2_20K_3', published: 508 },
  { laboratory: 'GIDAZE+', tail: 'N2_10K_1', published: 783 },
  { laboratory: 'GIDAZE+', tail: 'N2_10K_2', published: 852 },
  { laboratory: 'TIFP', tail: 'N2_10K_1', published: 1142 },
  { laboratory: 'TIFP', tail: 'N2_10K_2', published: 970 },
  { laboratory: 'UMD', tail: 'N2_10K', published: 695 },
];
