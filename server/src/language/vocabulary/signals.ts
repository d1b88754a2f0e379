import type { Measure } from './measures';

export interface SignalRecord {
  readonly word: string;
  /** Written with a channel in brackets: `ion(18)`. */
  readonly channel: boolean;
  readonly prose: string;
  /** What a level of it measures. */
  readonly measures: readonly Measure[];
  /** May stand in a column of a file. */
  readonly read: boolean;
  /** May carry a peak or an onset. */
  readonly evaluated: boolean;
  readonly example: string;
}

export const signals: readonly SignalRecord[] = [
  {
    word: 'time',
    channel: false,
    prose: 'The time of the file, as exported; never shifted to zero.',
    measures: ['time'],
    read: true,
    evaluated: false,
    example: 'time',
  },
  {
    word: 'temperature',
    channel: false,
    prose: 'The temperature of the specimen.',
    measures: ['temperature'],
    read: true,
    evaluated: false,
    example: 'temperature',
  },
  {
    word: 'mass',
    channel: false,
    prose: 'The mass of the specimen or its share in the basis, after subtraction of the blanks.',
    measures: ['mass', 'fraction'],
    read: true,
    evaluated: true,
    example: 'mass',
  },
  {
    word: 'rate',
    channel: false,
    prose:
      'The rate of mass loss, -dm/dt over the basis, a loss positive. It is derived from the mass and never read from a file; its smoothing is stated in the result.',
    measures: ['fraction rate', 'mass rate'],
    read: false,
    evaluated: true,
    example: 'rate',
  },
  {
    word: 'heatflow',
    channel: false,
    prose: 'The heat flow to the specimen. Its sign is settled by `endothermic`.',
    measures: ['heat flow', 'specific heat flow', 'voltage'],
    read: true,
    evaluated: true,
    example: 'heatflow',
  },
  {
    word: 'ion',
    channel: true,
    prose: 'The current of one mass-to-charge ratio of a mass spectrometer.',
    measures: ['current'],
    read: true,
    evaluated: true,
    example: 'ion(18)',
  },
  {
    word: 'absorbance',
    channel: true,
    prose: 'The absorbance at one wavenumber in 1/cm of an infrared spectrometer.',
    measures: ['number'],
    read: true,
    evaluated: true,
    example: 'absorbance(2360)',
  },
];

export function signalRecord(signal: string): SignalRecord | null {
  const word = signal.replace(/\(.*$/, '');
  return signals.find((record) => record.word === word) ?? null;
}

/** Words of the signals of which `use` holds. */
export function signalWords(use: (record: SignalRecord) => boolean): readonly string[] {
  return signals.filter(use).map((record) => record.word);
}
