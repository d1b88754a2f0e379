import assert from 'node:assert/strict';
import { matchUnit } from '../../server/src/quantities/matchUnit';

/** The text matched at the mark `|`, or null. */
function matched(marked: string): string | null {
  const offset = marked.indexOf('|');
  const text = marked.replace('|', '');
  const match = matchUnit(text, offset);
  return match === null ? null : text.slice(offset, match.end);
}

describe('behind a number the longest unit of whole words is taken', () => {
  const cases: readonly (readonly [string, string | null])[] = [
    ['12 |mW/mg', 'mW/mg'],
    ['12 |mW / mg', 'mW'],
    ['12 |mg/n', 'mg'],
    ['12 |mg/name', 'mg'],
    ['12 |mg/min_rate', 'mg'],
    ['12 |mg/(n + 1)', 'mg'],
    ['12 |mg/(g + x)', 'mg'],
    ['2 |1/min', '1/min'],
    ['2 |1/n', null],
    ['10 |K^2', 'K^2'],
    ['10 |K^n', 'K'],
    ['10 |K^2.5', 'K'],
    ['10 |K^2..20 K^2', 'K^2'],
    ['40|..180 °C', null],
    ['10 |% of maximum', '%'],
    ['10|%of', '%'],
    ['3 |minutes', null],
    ['3 |First', null],
    ['12 |J*x', 'J'],
    ['5 |m2', null],
    ['5 |°C within 3 K', '°C'],
    ['5 |Kα', null],
  ];
  for (const [marked, expected] of cases) {
    it(`${marked} gives ${expected ?? 'no unit'}`, () => assert.equal(matched(marked), expected));
  }

  it('a second slash with a unit behind it is one wrong unit, not a division', () => {
    const match = matchUnit('3 J/g/K + x', 2);
    assert.equal(match?.end, 7);
    assert.equal(match?.failure?.reason, 'second-slash');
    assert.equal(match?.failure?.offset, 5);
    assert.equal(matchUnit('3 J/g/x', 2)?.failure, null);
  });

  it('an exponent out of range is reported with the match', () => {
    assert.equal(matchUnit('3 K^12', 2)?.failure?.reason, 'exponent');
  });
});
