import type { SignalName } from '../language/model';
import type { StoredUnit } from '../runs/run';

/** One signal as a file gave it, on its own times (s). */
export interface SourceSignal {
  readonly signal: SignalName;
  readonly unit: StoredUnit;
  readonly time: Float64Array;
  readonly values: Float64Array;
}
