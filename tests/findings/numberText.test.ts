import assert from 'node:assert/strict';
import { decimalText, numberText, significantText } from '../../server/src/findings/numberText';

describe('a number in a message', () => {
  it('has at most the decimals asked for, and no trailing zeros', () => {
    assert.equal(numberText(742.318, 1), '742.3');
    assert.equal(numberText(10, 1), '10');
    assert.equal(numberText(-872.04, 1), '-872');
    assert.equal(numberText(14.797, 2), '14.8');
    assert.equal(numberText(100, 0), '100');
  });

  it('does not vanish where it is small', () => {
    assert.equal(numberText(0.004, 2), '0.004');
    assert.equal(numberText(-0.0000312, 1), '-3e-5');
    assert.equal(numberText(0.3, 0), '0.3');
  });

  it('has significant digits where its size is not known before, and no fewer than its integer part', () => {
    assert.equal(significantText(19.8765, 3), '19.9');
    assert.equal(significantText(9.999, 2), '10');
    assert.equal(significantText(0.00123456, 3), '0.00123');
    assert.equal(significantText(1234.5, 2), '1235');
    assert.equal(significantText(1.5e-7, 3), '1.5e-7');
    assert.equal(significantText(2e20, 3), '2e20');
  });

  it('never shows a minus zero', () => {
    assert.equal(numberText(-0, 3), '0');
    assert.equal(significantText(-0, 3), '0');
    assert.equal(decimalText(-0.001, 2), '0.00');
  });

  it('keeps the zeros of numbers that are compared', () => {
    assert.equal(decimalText(14.8, 2), '14.80');
  });

  it('says so where there is no number', () => {
    assert.equal(numberText(Number.NaN, 3), 'no number');
    assert.equal(significantText(Number.NEGATIVE_INFINITY, 3), 'no number');
    assert.equal(decimalText(Number.POSITIVE_INFINITY, 1), 'no number');
  });

  it('reads back to within half of its last digit', () => {
    let x = 0.000137;
    for (let i = 0; i < 60; i++, x *= 1.7) {
      const significant = Number(significantText(x, 4));
      assert.ok(
        Math.abs(significant - x) <= Math.max(0.5e-3 * x, x >= 1000 ? 0.5 : 0),
        `${x} was written ${significant}`,
      );
      const decimals = Number(numberText(x, 3));
      assert.ok(Math.abs(decimals - x) <= 0.5001e-3 + 1e-5 * (x > 1e15 ? x : 0), `${x} was written ${decimals}`);
    }
  });
});
