import { syntheticRun } from '../../support/syntheticRun';

// Invented data, computed from a formula with a seed; no laboratory measured this.

/** One loss of so many percent at 300 °C. */
export function smallRun(loss = 10, seed = 1): string {
  return syntheticRun({ to: 600, every: 12, seed, noise: 0.001, steps: [{ at: 300, width: 8, loss }] });
}

export interface SmallGloss {
  readonly run?: string;
  /** Upper end of the window, °C. */
  readonly to?: number;
  readonly more?: readonly string[];
}

/** A gloss of that run with its one step. */
export function smallGloss({ run = 'a.csv', to = 450, more = [] }: SmallGloss = {}): string {
  return [
    `run "${run}"`,
    '  sample     "Invented"',
    '  mass       20.000 ± 0.010 mg',
    '  crucible   alumina 85 µL, no lid',
    '  atmosphere nitrogen 50 mL/min',
    '',
    `step First 150..${to} °C`,
    ...more,
    '',
  ].join('\n');
}
