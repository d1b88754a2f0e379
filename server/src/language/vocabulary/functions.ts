import type { FunctionName } from '../model';

export interface FunctionRecord {
  readonly name: FunctionName;
  readonly form: string;
  readonly least: number;
  /** null: any number. */
  readonly most: number | null;
  /** What comes out, from what goes in. */
  readonly rule:
    /** Arguments of one kind and basis; the same comes out. */
    | 'same'
    /** Arguments of one kind and basis; a difference of that kind comes out. */
    | 'spread'
    /** As `spread`, divided by the mean. */
    | 'relative'
    | 'absolute value'
    | 'square root'
    /** A plain number in, a plain number out. */
    | 'plain'
    /** A temperature in °C to kelvin above absolute zero. */
    | 'kelvin';
  readonly prose: string;
  readonly example: string;
}

export const functions: readonly FunctionRecord[] = [
  {
    name: 'mean',
    form: 'mean(x, …)',
    least: 1,
    most: null,
    rule: 'same',
    prose: 'The arithmetic mean of values of one kind and basis.',
    example: 'mean(12.1 %, 12.4 %, 12.2 %)',
  },
  {
    name: 'sd',
    form: 'sd(x, y, …)',
    least: 2,
    most: null,
    rule: 'spread',
    prose: 'The standard deviation of a sample of n values, with n - 1; its own uncertainty is s/√(2(n - 1)).',
    example: 'sd(12.1 %, 12.4 %, 12.2 %)',
  },
  {
    name: 'rsd',
    form: 'rsd(x, y, …)',
    least: 2,
    most: null,
    rule: 'relative',
    prose: 'The standard deviation over the mean, a plain number. It has no meaning for temperatures in °C.',
    example: 'rsd(12.1 %, 12.4 %, 12.2 %)',
  },
  {
    name: 'min',
    form: 'min(x, …)',
    least: 1,
    most: null,
    rule: 'same',
    prose: 'The smallest of values of one kind and basis.',
    example: 'min(12.1 %, 12.4 %)',
  },
  {
    name: 'max',
    form: 'max(x, …)',
    least: 1,
    most: null,
    rule: 'same',
    prose: 'The largest of values of one kind and basis.',
    example: 'max(12.1 %, 12.4 %)',
  },
  {
    name: 'abs',
    form: 'abs(x)',
    least: 1,
    most: 1,
    rule: 'absolute value',
    prose: 'The value without its sign.',
    example: 'abs(3 K - 5 K)',
  },
  {
    name: 'sqrt',
    form: 'sqrt(x)',
    least: 1,
    most: 1,
    rule: 'square root',
    prose: 'The square root; the unit must be a square.',
    example: 'sqrt(4 K^2)',
  },
  {
    name: 'ln',
    form: 'ln(x)',
    least: 1,
    most: 1,
    rule: 'plain',
    prose: 'The natural logarithm of a plain number or a fraction.',
    example: 'ln(20 / 5)',
  },
  {
    name: 'exp',
    form: 'exp(x)',
    least: 1,
    most: 1,
    rule: 'plain',
    prose: 'e to the power of a plain number or a fraction.',
    example: 'exp(-0.5)',
  },
  {
    name: 'absolute',
    form: 'absolute(T)',
    least: 1,
    most: 1,
    rule: 'kelvin',
    prose: 'A temperature as kelvin above absolute zero, for use in products and quotients.',
    example: 'absolute(25 °C)',
  },
];

export function functionRecord(name: string): FunctionRecord | null {
  return functions.find((record) => record.name === name) ?? null;
}

/** What looks like a function and is not one: its argument is read as a formula. */
export const molarMassRecord = {
  name: 'M',
  form: 'M(FORMULA)',
  prose:
    'The molar mass of a formula from the abridged standard atomic weights of IUPAC 2021, with the uncertainty of each element.',
  example: 'M(CaMg(CO3)2)',
} as const;
