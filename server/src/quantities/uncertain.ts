/**
 * A value with its first-order gradient over named influences (JCGM 100:2008, 5.1.2 and 5.2): each part is
 * sensitivity × standard uncertainty, signed, of one influence. Two values that share an influence are correlated
 * through it. The unit is the caller's.
 */
export interface Uncertain {
  readonly value: number;
  readonly parts: readonly Part[];
}

export interface Part {
  /** Names the physical input, the same in every file that uses it: `mass of NAME`, `element O`, `noise of …`. */
  readonly input: string;
  /** Sensitivity × standard uncertainty, signed, in the unit of the value. */
  readonly u: number;
  /** Degrees of freedom of the influence; null: many (JCGM 100 G.4.2). */
  readonly dof: number | null;
  /**
   * Influences estimated together from the same observations carry the same name: they count as one in the effective
   * degrees of freedom (Willink, Metrologia 44 (2007) 340). Absent: the influence stands alone.
   */
  readonly group?: string;
}
