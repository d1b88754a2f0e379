/** Powers of ten that are exact doubles. */
export const exactPowers = Float64Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));

/** Splits a double into two halves of 26 bits whose products are exact (Dekker, Numer. Math. 18 (1971) 224). */
const splitter = 134217729;

/**
 * The double nearest to (`head`·10^`tailDigits` + `tail`)·10^`exponent`, or NaN where this arithmetic cannot prove which
 * double that is (the caller then takes the slow way).
 *
 * `head` < 10^15 and `tail` < 10^`tailDigits` ≤ 10^4 are integers, |`exponent`| ≤ 22. The value is computed as an
 * unevaluated sum of two doubles with a bound on its error; rounding is monotone, so when both ends of the error
 * interval round to the same double, that double is correctly rounded. Up to 15 digits one multiplication or division
 * by an exact power is correct by itself (Clinger, PLDI 1990) and needs none of this.
 */
export function nearestDouble(head: number, tail: number, tailDigits: number, exponent: number): number {
  // The integer of up to 19 digits as high + low, exactly.
  const scale = exactPowers[tailDigits];
  const product = head * scale;
  const productRest = productError(head, scale, product);
  const high = product + tail;
  const carried = high - product;
  const low = product - (high - carried) + (tail - carried) + productRest;

  const power = exactPowers[exponent < 0 ? -exponent : exponent];
  let value: number;
  let rest: number;
  let bound: number;
  if (exponent < 0) {
    value = high / power;
    const back = value * power;
    const backRest = productError(value, power, back);
    const left = high - back - backRest + low;
    rest = left / power;
    bound = (Math.abs(high - back) + Math.abs(backRest) + Math.abs(low)) / power;
  } else {
    value = high * power;
    const valueRest = productError(high, power, value);
    rest = valueRest + low * power;
    bound = Math.abs(valueRest) + Math.abs(low * power);
  }
  // Each of the few operations above is off by at most 2^-53 of a term in `bound`; 2^-48 is far more than their sum.
  bound *= 3.552713678800501e-15;
  const above = value + (rest + bound);
  return above === value + (rest - bound) ? above : NaN;
}

/** `a * b` minus its rounded value `product`, exactly. */
function productError(a: number, b: number, product: number): number {
  const aScaled = splitter * a;
  const aHigh = aScaled - (aScaled - a);
  const aLow = a - aHigh;
  const bScaled = splitter * b;
  const bHigh = bScaled - (bScaled - b);
  const bLow = b - bHigh;
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
}
