import { extentOf } from '../../analysis/extent';

/** A stretch between two turns of the temperature: sample indices, both inclusive; a turn belongs to both its legs. */
export interface Leg {
  readonly from: number;
  readonly to: number;
  /** 1 up, -1 down, 0 where the whole record stays within the reversal. */
  readonly direction: 1 | -1 | 0;
}

/** A turn back for less than this is a fault of the furnace or the specimen, unless it is large. */
const shortest = 60;
const large = 30;

export interface Legs {
  readonly legs: readonly Leg[];
  /** The temperature with ways back that do not count bridged by straight lines. */
  readonly temperature: Float64Array;
}

/**
 * Cuts a record at its turns. A turn counts when the temperature has gone back by `reversal` (K), and when it goes back
 * for a minute, or by 30 K (fast cycles). Without `time` every reversal counts.
 */
export function findLegs(temperature: Float64Array, time: Float64Array | null, reversal: number): Legs {
  const turns = turningPoints(temperature, reversal);
  if (turns.direction === 0) return { legs: [{ from: 0, to: temperature.length - 1, direction: 0 }], temperature };
  const ends = [0, ...turns.at, temperature.length - 1];
  const legs: Leg[] = [];
  for (let k = 0; k + 1 < ends.length; k++) {
    const direction = k % 2 === 0 ? turns.direction : turns.direction === 1 ? -1 : 1;
    legs.push({ from: ends[k], to: ends[k + 1], direction });
  }
  return time === null ? { legs, temperature } : withoutShort(legs, temperature, time);
}

/** Extremes that are followed by a way back of at least `reversal`, and the direction before the first. */
function turningPoints(temperature: Float64Array, reversal: number): { at: number[]; direction: 1 | -1 | 0 } {
  const way = extentOf(temperature);
  if (way.finite && (way.leastStep >= 0 || way.mostStep <= 0)) {
    if (!(way.most - way.least >= reversal)) return { at: [], direction: 0 };
    return { at: [], direction: way.leastStep >= 0 ? 1 : -1 };
  }
  const at: number[] = [];
  let first: 1 | -1 | 0 = 0;
  let direction = 0;
  let low = 0;
  let high = 0;
  for (let i = 1; i < temperature.length; i++) {
    const value = temperature[i];
    if (value > temperature[high]) high = i;
    if (value < temperature[low]) low = i;
    if (direction !== 1 && value - temperature[low] >= reversal) {
      if (direction === 0) first = 1;
      else at.push(low);
      direction = 1;
      high = i;
    } else if (direction !== -1 && temperature[high] - value >= reversal) {
      if (direction === 0) first = -1;
      else at.push(high);
      direction = -1;
      low = i;
    }
  }
  return { at, direction: first };
}

/**
 * Takes out jumps, then joins a leg that is too short with its neighbours. Legs around a jump do not share a sample: the
 * record breaks there.
 */
function withoutShort(legs: readonly Leg[], temperature: Float64Array, time: Float64Array): Legs {
  const kept = withoutJumps(legs, temperature, time);
  let bridged = temperature;
  const lasts = ({ from, to }: Leg): number => time[to] - time[from];
  while (kept.length > 1) {
    let worst = -1;
    let support = -1;
    kept.forEach((leg, k) => {
      if (Math.abs(bridged[leg.to] - bridged[leg.from]) >= large || movingTime(leg, bridged, time) >= shortest) return;
      // Of several in a row, the one beside the longest: it is a way back from that.
      const beside = Math.max(lasts(kept[k - 1] ?? kept[k + 1]), lasts(kept[k + 1] ?? kept[k - 1]));
      if (beside > support) {
        worst = k;
        support = beside;
      }
    });
    if (worst < 0) break;
    const first = Math.max(0, worst - 1);
    const last = Math.min(kept.length - 1, worst + 1);
    if (worst > first && worst < last) {
      if (bridged === temperature) bridged = temperature.slice();
      bridge(kept[worst], kept[first].from, kept[last].to, time, bridged);
    }
    const direction = kept[worst === 0 ? 1 : first].direction;
    kept.splice(first, last - first + 1, { from: kept[first].from, to: kept[last].to, direction });
  }
  return { legs: kept, temperature: bridged };
}

/** How long a leg moves: twice the time of its middle half, so that resting at its ends does not count. */
function movingTime({ from, to }: Leg, temperature: Float64Array, time: Float64Array): number {
  const way = temperature[to] - temperature[from];
  const gone = (i: number): number => (temperature[i] - temperature[from]) / way;
  const timeOf = (part: number, i: number): number =>
    time[i] + ((part - gone(i)) / (gone(i + 1) - gone(i))) * (time[i + 1] - time[i]);
  let start = to - 1;
  while (start > from && gone(start) > 0.25) start--;
  let end = start;
  while (end < to - 1 && gone(end + 1) < 0.75) end++;
  return 2 * (timeOf(0.75, end) - timeOf(0.25, start));
}

/**
 * Puts a straight line over a short way back: either over the dip that it begins (until the temperature before it is
 * reached again), or over the spike that it ends, whichever is shorter; and over as much time again on both sides, so that
 * the line has the slope of the ramp.
 */
function bridge(
  { from, to, direction }: Leg,
  first: number,
  last: number,
  time: Float64Array,
  bridged: Float64Array,
): void {
  let dipEnd = to;
  while (dipEnd < last && direction * (bridged[dipEnd] - bridged[from]) > 0) dipEnd++;
  let spikeStart = from;
  while (spikeStart > first && direction * (bridged[to] - bridged[spikeStart]) > 0) spikeStart--;
  const isDip = time[dipEnd] - time[from] <= time[to] - time[spikeStart];
  let a = isDip ? from : spikeStart;
  let b = isDip ? dipEnd : to;
  const margin = time[b] - time[a];
  for (const start = time[a]; a > first && start - time[a] < margin;) a--;
  for (const end = time[b]; b < last && time[b] - end < margin;) b++;
  const start = bridged[a];
  const slope = (bridged[b] - start) / (time[b] - time[a]);
  for (let i = a + 1; i < b; i++) bridged[i] = start + slope * (time[i] - time[a]);
}

/** A leg that is one large step from sample to sample is no movement: a placeholder row, two records in one file. */
function withoutJumps(legs: readonly Leg[], temperature: Float64Array, time: Float64Array): Leg[] {
  const kept = [...legs];
  for (let k = 0; k < kept.length && kept.length > 1; k++) {
    const { from, to } = kept[k];
    const way = Math.abs(temperature[to] - temperature[from]);
    if (way < large || time[to] - time[from] >= shortest) continue;
    let at = from;
    for (let i = from; i < to; i++) {
      if (Math.abs(temperature[i + 1] - temperature[i]) > Math.abs(temperature[at + 1] - temperature[at])) at = i;
    }
    if (Math.abs(temperature[at + 1] - temperature[at]) < 0.8 * way) continue;
    if (k > 0) kept[k - 1] = { ...kept[k - 1], to: at };
    if (k + 1 < kept.length) kept[k + 1] = { ...kept[k + 1], from: at + 1 };
    kept.splice(k--, 1);
  }
  return kept;
}
