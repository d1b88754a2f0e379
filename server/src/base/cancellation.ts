/** Asked by long work at its pauses. */
export interface Cancellation {
  readonly cancelled: boolean;
}

export const never: Cancellation = { cancelled: false };

/** Thrown out of work that was cancelled; the only exception that is not a bug. */
export class Cancelled extends Error {
  constructor() {
    super('cancelled');
    this.name = 'Cancelled';
  }
}

export function stopIfCancelled(cancellation: Cancellation): void {
  if (cancellation.cancelled) throw new Cancelled();
}
