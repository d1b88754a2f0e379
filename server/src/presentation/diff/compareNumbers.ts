import type { ComparedGloss } from './compared';
import type { GlossDiff } from './model';
import { diffRows, verdictRows } from './rows';
import type { Tolerance } from './tolerance';

/** Two sets of numbers of one gloss, without a cause: also those of a saved results file. */
export function compareNumbers(older: ComparedGloss, newer: ComparedGloss, tolerance: Tolerance): GlossDiff {
  // What a side could not compute has neither come nor gone.
  const troubled = newer.failure !== null || older.failure !== null;
  const rows = diffRows(older, newer, tolerance);
  return {
    gloss: newer.gloss,
    was: older.gloss === newer.gloss ? null : older.gloss,
    status: 'both',
    rows: troubled ? rows.map((r) => ({ ...r, status: 'cannot compute' as const })) : rows,
    verdicts: troubled ? [] : verdictRows(older, newer),
    changes: [],
    program: older.program === newer.program ? null : { old: older.program, new: newer.program },
    trouble:
      newer.failure !== null
        ? { side: 'new', reason: newer.failure }
        : older.failure !== null
          ? { side: 'old', reason: older.failure }
          : null,
  };
}
