import assert from 'node:assert/strict';
import fc from 'fast-check';
import { convert, convertDifference, fromSI, toSI } from '../../server/src/quantities/convert';
import { matchUnit } from '../../server/src/quantities/matchUnit';
import { parseUnit } from '../../server/src/quantities/parseUnit';
import { shownUnit } from '../../server/src/quantities/shownUnit';
import { unitSymbols } from '../../server/src/quantities/unitSymbols';
import { near, nearRelative } from './near';

const power = fc
  .tuple(fc.constantFrom(...unitSymbols.keys()), fc.option(fc.constantFrom('^2', '^-1', '³', '⁻²', '^9')))
  .map(([symbol, exponent]) => symbol + (exponent ?? ''));
const product = (joiner: string): fc.Arbitrary<string> =>
  fc.array(power, { minLength: 1, maxLength: 3 }).map((powers) => powers.join(joiner));
const unitText = fc
  .tuple(
    fc.oneof(product('·'), fc.constant('1')),
    fc.option(
      fc.oneof(
        power,
        product('*').map((p) => `(${p})`),
      ),
    ),
  )
  .map(([above, below]) => (below === null ? above : `${above}/${below}`))
  .filter((text) => text !== '1');

describe('any unit of the grammar', () => {
  it('has a normal spelling that reads as the same unit and is its own normal spelling', () => {
    fc.assert(
      fc.property(unitText, (text) => {
        const first = parseUnit(text);
        assert.ok(first.ok, text);
        const again = parseUnit(first.value.text);
        assert.ok(again.ok, first.value.text);
        assert.equal(again.value.text, first.value.text);
        assert.deepEqual([...again.value.dimension], [...first.value.dimension]);
        nearRelative(again.value.factor, first.value.factor, 1e-14);
        assert.equal(again.value.offset, first.value.offset);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it('is matched whole in running text', () => {
    fc.assert(
      fc.property(unitText, fc.constantFrom('', ' ', ' + x', ')', ', 3'), (text, after) => {
        const match = matchUnit(`7 ${text}${after}`, 2);
        assert.equal(match?.end, 2 + text.length);
        assert.equal(match?.failure, null);
      }),
      { seed: 12, numRuns: 300 },
    );
  });

  it('takes a value to SI and back', () => {
    fc.assert(
      fc.property(unitText, fc.double({ min: -1e6, max: 1e6, noNaN: true }), (text, value) => {
        const unit = parseUnit(text);
        assert.ok(unit.ok);
        near(fromSI(toSI(value, unit.value), unit.value), value, 1e-9 * Math.max(1, Math.abs(value)));
      }),
      { seed: 13, numRuns: 300 },
    );
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'mgK°C/·*()^-12²⁻%µu. J') }), (text) => {
        const parsed = parseUnit(text);
        if (!parsed.ok) assert.ok(parsed.failure.offset + parsed.failure.length <= text.length);
        for (let i = 0; i <= text.length; i++) matchUnit(text, i);
      }),
      { seed: 14, numRuns: 1000 },
    );
  });
});

describe('conversion', () => {
  const unit = (text: string): Parameters<typeof toSI>[1] => {
    const parsed = parseUnit(text);
    assert.ok(parsed.ok);
    return parsed.value;
  };

  it('knows points and differences: ITS-90 indium 156.5985 °C is 429.7485 K, 10 °C of width are 10 K', () => {
    near(convert(156.5985, unit('°C'), unit('K')) ?? NaN, 429.7485, 1e-9);
    near(convertDifference(10, unit('°C'), unit('K')) ?? NaN, 10, 0);
  });

  it('refuses different dimensions and leaves a value in its own unit untouched', () => {
    assert.equal(convert(1, unit('mg'), unit('K')), null);
    assert.equal(convert(0.1, unit('mg'), unit('mg')), 0.1);
  });

  it('shows results in the units of the trade, else in SI', () => {
    assert.equal(shownUnit([0, 0, 0, 0, 0, 0], 'fraction').text, '%');
    assert.equal(shownUnit([0, 0, 0, 0, 0, 0], 'number').text, '1');
    assert.equal(shownUnit([0, 0, 0, 1, 0, 0], 'temperature').text, '°C');
    assert.equal(shownUnit([0, 0, 0, 1, 0, 0], 'quantity').text, 'K');
    assert.equal(shownUnit([2, 0, -2, -1, 0, 0], 'quantity').text, 'J/(g·K)');
    assert.equal(shownUnit([0, 1, 0, 0, 0, -1], 'quantity').text, 'g/mol');
    assert.equal(shownUnit([0, 1, -1, 0, 0, 0], 'quantity').text, 'kg/s');
    assert.equal(shownUnit([-3, 1, 0, 0, 0, -1], 'quantity').text, 'kg/(m³·mol)');
    assert.equal(shownUnit([0, 0, -1, 0, 0, 0], 'quantity').text, '1/s');
  });
});
