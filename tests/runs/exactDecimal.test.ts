import { strict as assert } from 'node:assert';
import { nearestDouble } from '../../server/src/runs/reading/exactDecimal';
import { seeded, type Random } from '../support/random';

/** Digits split as the scanner splits them: nine, up to nine more, and the nineteenth. */
function compute(digits: string, exponent: number): number {
  const [upper, lower, last] = [digits.slice(0, 9), digits.slice(9, 18), digits.slice(18)].map(Number);
  return nearestDouble(upper, lower, last, digits.length, -exponent);
}

/** The reference is the language's own conversion, correctly rounded by ECMA-262 (StringToNumber). */
function compare(digits: string, exponent: number): boolean {
  const value = compute(digits, exponent);
  if (Number.isNaN(value)) return false;
  assert.equal(value, Number(`${digits}e${exponent}`), `${digits}e${exponent}`);
  return true;
}

function drawDigits(random: Random, length: number): string {
  let digits = String(1 + random.integer(9));
  while (digits.length < length) digits += String(random.integer(10));
  return digits;
}

describe('numbers of 16 to 19 digits', () => {
  it('become the nearest double, or are left to the slow way, and nearly all are proved', () => {
    const random = seeded(3);
    let proved = 0;
    const cases = 40000;
    for (let i = 0; i < cases; i++) {
      if (compare(drawDigits(random, 16 + random.integer(4)), -random.integer(23))) proved++;
    }
    assert.ok(proved > 0.99 * cases, `${proved} of ${cases}`);
  });

  it('are never rounded to the wrong side next to the middle of two doubles', () => {
    const random = seeded(4);
    let proved = 0;
    for (let i = 0; i < 20000; i++) {
      // Between 2^53 and 2^63 the middle between two neighbouring doubles is an integer.
      const power = 53 + random.integer(10);
      const low = 2n ** BigInt(power) + 2n ** BigInt(power - 52) * BigInt(random.integer(2 ** 30));
      const middle = low + 2n ** BigInt(power - 53);
      const digits = String(middle + BigInt(random.integer(3) - 1));
      if (digits.length >= 16 && digits.length <= 19 && compare(digits, 0)) proved++;
    }
    assert.ok(proved > 1000);
  });

  it('are left to the slow way exactly in the middle of two doubles', () => {
    // 2^53 + 1 lies in the middle between 2^53 and 2^53 + 2.
    assert.ok(Number.isNaN(compute('9007199254740993', 0)));
    assert.equal(compute('9007199254740992', 0), 2 ** 53);
    assert.equal(compute('9007199254740994', 0), 2 ** 53 + 2);
  });
});
