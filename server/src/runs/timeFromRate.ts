import { findLegs } from './segmentation/legs';
import { isLone } from './segmentation/samples';

/**
 * Times (s, from 0) for a file without a time column, from a stated heating rate (K/min, its size only): each turn of 3 K
 * starts a new ramp of that rate. A sample that does not go further in the direction of its ramp gets the time of the one
 * before it, a lone foreign temperature or a gap gets NaN: both are dropped where a curve is made.
 */
export function timeFromRate(temperature: Float64Array, rate: number): Float64Array {
  const times = new Float64Array(temperature.length).fill(NaN);
  const perKelvin = 60 / Math.abs(rate);
  const used = new Int32Array(temperature.length);
  let count = 0;
  for (let i = 0; i < temperature.length; i++) {
    if (Number.isFinite(temperature[i]) && !isLone(temperature, i)) used[count++] = i;
  }
  if (count === 0) return times;
  const values = Float64Array.from(used.subarray(0, count), (i) => temperature[i]);
  let time = 0;
  for (const { from, to, direction } of findLegs(values, null, 3).legs) {
    const sign = direction === 0 ? 1 : direction;
    let reached = sign * values[from];
    for (let k = from; k <= to; k++) {
      const beyond = sign * values[k] - reached;
      if (beyond > 0) {
        time += beyond * perKelvin;
        reached += beyond;
      }
      times[used[k]] = time;
    }
  }
  return times;
}
