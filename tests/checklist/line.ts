/** A test by its file below `tests`, without `.test.ts`, and its title as the source has it. */
export type Named = readonly [file: string, title: string];

/** What must hold before a release, and what shows that it does. */
export interface Line {
  readonly id: string;
  readonly claim: string;
  /** Tests that fail where the claim does not hold. */
  readonly tests?: readonly Named[];
  /** Measurements for the times in the claim, by file and name of the row: no test is timed. */
  readonly benches?: readonly Named[];
  /** What a person does; for what no machine here can do. */
  readonly byHand?: string;
  /** What of the claim is not shown, and how far the attempt came. */
  readonly missing?: string;
}
