import { studentQuantile } from './studentT';

/** k by whole degrees of freedom, once asked for: every result shows one. */
const table: (number | undefined)[] = [];

/**
 * Coverage factor k for a coverage of 95 %: Student's t at the effective degrees of freedom truncated to a whole number
 * (JCGM 100, G.6.4 c), 2 when they are many (`null`, or so many that t is below 2: more than 60; JCGM 100, G.6.6).
 */
export function coverageFactor(dof: number | null): number {
  if (dof === null) return 2;
  const whole = Math.max(1, truncated(dof));
  // Beyond 60 degrees of freedom t is below 2 anyway.
  return whole > 60 ? 2 : (table[whole] ??= Math.max(2, studentQuantile(0.95, whole)));
}

/** What is a whole number but for its last bits is that number: 9.999999999999998 comes out of a sum of ten ones. */
function truncated(dof: number): number {
  return Math.floor(dof * (1 + 1e-12));
}
