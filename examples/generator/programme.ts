/** A ramp to a temperature (°C) at a rate (K/min, positive), or a hold (min). */
export type Part = { readonly to: number; readonly rate: number } | { readonly hold: number };

interface Leg {
  /** s. */
  readonly start: number;
  readonly end: number;
  /** °C at the start. */
  readonly from: number;
  /** K/min, negative in cooling. */
  readonly rate: number;
}

/** The programme as set. Times in s from the start of the record. */
export class Programme {
  readonly legs: readonly Leg[];

  constructor(
    readonly start: number,
    parts: readonly Part[],
  ) {
    const legs: Leg[] = [];
    let time = 0;
    let at = start;
    for (const part of parts) {
      const rate = 'hold' in part ? 0 : part.to > at ? part.rate : -part.rate;
      const minutes = 'hold' in part ? part.hold : (part.to - at) / rate;
      legs.push({ start: time, end: time + 60 * minutes, from: at, rate });
      time += 60 * minutes;
      if (!('hold' in part)) at = part.to;
    }
    this.legs = legs;
  }

  get duration(): number {
    return this.legs[this.legs.length - 1].end;
  }

  legAt(time: number): Leg {
    return this.legs.find((leg) => time < leg.end) ?? this.legs[this.legs.length - 1];
  }

  /** °C. */
  set(time: number): number {
    const leg = this.legAt(time);
    return leg.from + (leg.rate * (time - leg.start)) / 60;
  }

  /**
   * Answer of a first-order element to the heating rate: the sum over all corners passed of the change of rate times
   * `shape(time since)`.
   */
  answer(time: number, shape: (since: number, change: number) => number): number {
    let sum = 0;
    let before = 0;
    for (const leg of this.legs) {
      if (leg.start > time) break;
      const change = leg.rate - before;
      if (change !== 0) sum += shape(time - leg.start, change);
      before = leg.rate;
    }
    return sum;
  }

  /** K/min as seen by an element with the time constant `lag` in s. */
  laggedRate(time: number, lag: number): number {
    return this.answer(time, (since, change) => change * (1 - Math.exp(-since / lag)));
  }
}
