/** Powers of ten that are exact doubles. */
export const exactPowers = Float64Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));

/** Splits a double into two halves of 26 bits whose products are exact (Dekker, Numer. Math. 18 (1971) 224). */
const splitter = 134217729;

/**
 * The double nearest to the integer of `digits` digits (16 to 19) over 10^`places`, or NaN where this arithmetic cannot
 * prove which double that is (the caller then takes the slow way).
 *
 * The integer comes in parts: `upper` its first nine digits, `lower` its next seven to nine, `last` the nineteenth (0 where
 * there is none); `places` is 0 to 22. The value is computed as an unevaluated sum of two doubles with a bound on its
 * error; rounding is monotone, so when both ends of the error interval round to the same double, that double is correctly
 * rounded. Up to 15 digits one division by an exact power is correct by itself (Clinger, PLDI 1990) and needs none of
 * this. One short function without others in it: it is called for every second number of many files, and numbers that go
 * from function to function are stored apart.
 */
export function nearestDouble(upper: number, lower: number, last: number, digits: number, places: number): number {
  // The integer as high + low, exactly: products of 15 and at most 34 bits, then two sums with their rests.
  const scale = exactPowers[digits - 9];
  const tail = digits === 19 ? lower * 10 + last : lower;
  const large = (upper >>> 15) * 32768 * scale;
  const small = (upper & 32767) * scale;
  const product = large + small;
  const high = product + tail;
  const low = small - (product - large) + (tail - (high - product));

  const power = exactPowers[places];
  const value = high / power;
  // `value * power` as two doubles (Dekker's product), to see what the quotient leaves over.
  const valueHigh = splitter * value - (splitter * value - value);
  const valueLow = value - valueHigh;
  const powerHigh = splitter * power - (splitter * power - power);
  const powerLow = power - powerHigh;
  const back = value * power;
  const backRest = valueLow * powerLow - (back - valueHigh * powerHigh - valueLow * powerHigh - valueHigh * powerLow);
  const rest = (high - back - backRest + low) / power;
  // Each of the few operations above is off by at most 2^-53 of one of these terms; 2^-48 is far more than their sum.
  const bound = ((Math.abs(high - back) + Math.abs(backRest) + Math.abs(low)) / power) * 3.552713678800501e-15;
  const above = value + (rest + bound);
  return above === value + (rest - bound) ? above : NaN;
}
