import assert from 'node:assert/strict';
import { decimalText, numberText } from '../../server/src/findings/numberText';

describe('a number in a message', () => {
  it('has the digits asked for, and no trailing zeros', () => {
    assert.equal(numberText(19.8765, 3), '19.9');
    assert.equal(numberText(0.5, 3), '0.5');
    assert.equal(numberText(9.999, 2), '10');
    assert.equal(numberText(0.00123456, 3), '0.00123');
  });

  it('never loses a digit of the integer part', () => {
    assert.equal(numberText(1234.5, 2), '1235');
    assert.equal(numberText(-872, 1), '-872');
    assert.equal(numberText(5821, 3), '5821');
  });

  it('never shows a minus zero or an empty fraction', () => {
    assert.equal(numberText(-0, 3), '0');
    assert.equal(decimalText(-0.001, 2), '0.00');
    assert.equal(numberText(100.0, 3), '100');
  });

  it('writes very small and very large numbers with an exponent', () => {
    assert.equal(numberText(1.5e-7, 3), '1.5e-7');
    assert.equal(numberText(2e20, 3), '2e20');
    assert.equal(numberText(-3.25e-9, 2), '-3.3e-9');
  });

  it('says so where there is no number', () => {
    assert.equal(numberText(Number.NaN, 3), 'no number');
    assert.equal(decimalText(Number.POSITIVE_INFINITY, 1), 'no number');
  });

  it('reads back to within half of its last digit', () => {
    let x = 0.000137;
    for (let i = 0; i < 60; i++, x *= 1.7) {
      const back = Number(numberText(x, 4));
      assert.ok(Math.abs(back - x) <= Math.max(0.5e-3 * x, x >= 1000 ? 0.5 : 0), `${x} was written ${back}`);
    }
  });
});
