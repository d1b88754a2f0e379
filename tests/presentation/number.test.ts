import assert from 'node:assert/strict';
import fc from 'fast-check';
import { formatWithUncertainty, roundToUncertainty } from '../../server/src/presentation/number';

describe('rounding by the second digit of the uncertainty', () => {
  const cases: readonly (readonly [value: number, u: number | null, text: string])[] = [
    // JCGM 100, H.1.4 and 7.2.6: 50 000 838 nm, u = 31.66 nm; R = 127.732 ohm, u = 0.071 ohm (table H.3).
    [50000838, 31.664, '50000838 ± 32'],
    [127.73217, 0.07107, '127.732 ± 0.071'],
    [14.8, 0.04, '14.800 ± 0.040'],
    [14.8, 0.0996, '14.80 ± 0.10'],
    [14.8, 0.0994, '14.800 ± 0.099'],
    [838, 320, '840 ± 320'],
    [-0.001, 32, '0 ± 32'],
    [-0.004, 0.19, '0.00 ± 0.19'],
    [-12.345, 0.5, '-12.35 ± 0.50'],
    [0.99, 0.0099, '0.9900 ± 0.0099'],
    [1.7266e-5, 1.755e-6, '1.73e-5 ± 0.18e-5'],
    [1.5e20, 2e19, '1.50e20 ± 0.20e20'],
    [156.63412, 0, '156.634'],
    [12, 0, '12'],
    [1e-7, 0, '1e-7'],
    [156.63412, null, '156.6'],
    [156.63412, Infinity, '156.6'],
    [0, 0, '0'],
  ];
  for (const [value, u, text] of cases) {
    it(`${value} with u = ${u ?? 'unknown'} is ${text}`, () => assert.equal(formatWithUncertainty(value, u), text));
  }

  it('the unit follows a blank, none for a plain number', () => {
    assert.equal(formatWithUncertainty(14.8, 0.04, '%'), '14.800 ± 0.040 %');
    assert.equal(formatWithUncertainty(14.8, 0.04, '1'), '14.800 ± 0.040');
  });

  it('for any number both texts end at the same place, u has two digits and the value moves by half a place at most', () => {
    const wide = (min: number, max: number): fc.Arbitrary<number> =>
      fc.tuple(fc.double({ min: 1, max: 9.99, noNaN: true }), fc.integer({ min, max })).map(([m, e]) => m * 10 ** e);
    fc.assert(
      fc.property(wide(-9, 9), fc.boolean(), wide(-9, 9), (size, minus, u) => {
        if (size / u > 1e12) return;
        const value = minus ? -size : size;
        const rounded = roundToUncertainty(value, u);
        const uText = rounded.uncertainty ?? '';
        const digits = uText.replace(/e.*$/, '').replace('.', '').replace(/^0+/, '');
        assert.match(digits, /^[1-9]\d0*$/);
        const [valuePlaces, uPlaces] = [rounded.value, uText].map((t) => /\.(\d+)/.exec(t)?.[1]?.length ?? 0);
        assert.equal(valuePlaces, uPlaces);
        assert.equal(/e.*$/.exec(rounded.value)?.[0], /e.*$/.exec(uText)?.[0]);
        const place = 10 ** (Math.floor(Math.log10(Number(uText) * (1 + 1e-12))) - 1);
        assert.ok(Math.abs(Number(rounded.value) - value) <= 0.5 * place * (1 + 1e-6) + 1e-15 * size);
        assert.ok(Math.abs(Number(uText) - u) <= 0.05 * u * 1.0001);
      }),
      { seed: 111, numRuns: 2000 },
    );
  });
});
