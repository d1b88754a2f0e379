import assert from 'node:assert/strict';
import { atomicWeights } from '../../server/src/reference/atomicWeights';

/**
 * Standard atomic weights 2021 before abridging, from the table of the IUPAC commission at ciaaw.org: an interval, or a
 * value and its uncertainty. Another list than the one the program holds.
 */
const unabridged: Readonly<Record<string, readonly [low: number, high: number]>> = {
  H: [1.00784, 1.00811],
  Li: [6.938, 6.997],
  B: [10.806, 10.821],
  C: [12.0096, 12.0116],
  N: [14.00643, 14.00728],
  O: [15.99903, 15.99977],
  Mg: [24.304, 24.307],
  Si: [28.084, 28.086],
  S: [32.059, 32.076],
  Cl: [35.446, 35.457],
  Ar: [39.792, 39.963],
  Br: [79.901, 79.907],
  Tl: [204.382, 204.385],
  Pb: [206.14, 207.94],
  ...around({
    He: [4.002602, 2e-6],
    Be: [9.0121831, 5e-7],
    F: [18.998403162, 5e-9],
    Ne: [20.1797, 6e-4],
    Na: [22.98976928, 2e-8],
    Al: [26.9815384, 3e-7],
    P: [30.973761998, 5e-9],
    K: [39.0983, 1e-4],
    Ca: [40.078, 4e-3],
    Sc: [44.955907, 4e-6],
    Ti: [47.867, 1e-3],
    V: [50.9415, 1e-4],
    Cr: [51.9961, 6e-4],
    Mn: [54.938043, 2e-6],
    Fe: [55.845, 2e-3],
    Co: [58.933194, 3e-6],
    Ni: [58.6934, 4e-4],
    Cu: [63.546, 3e-3],
    Zn: [65.38, 0.02],
    Ga: [69.723, 1e-3],
    Ge: [72.63, 8e-3],
    As: [74.921595, 6e-6],
    Se: [78.971, 8e-3],
    Kr: [83.798, 2e-3],
    Rb: [85.4678, 3e-4],
    Sr: [87.62, 0.01],
    Y: [88.905838, 2e-6],
    Zr: [91.224, 2e-3],
    Nb: [92.90637, 1e-5],
    Mo: [95.95, 0.01],
    Ru: [101.07, 0.02],
    Rh: [102.90549, 2e-5],
    Pd: [106.42, 0.01],
    Ag: [107.8682, 2e-4],
    Cd: [112.414, 4e-3],
    In: [114.818, 1e-3],
    Sn: [118.71, 7e-3],
    Sb: [121.76, 1e-3],
    Te: [127.6, 0.03],
    I: [126.90447, 3e-5],
    Xe: [131.293, 6e-3],
    Cs: [132.90545196, 6e-8],
    Ba: [137.327, 7e-3],
    La: [138.90547, 7e-5],
    Ce: [140.116, 1e-3],
    Pr: [140.90766, 1e-5],
    Nd: [144.242, 3e-3],
    Sm: [150.36, 0.02],
    Eu: [151.964, 1e-3],
    Gd: [157.25, 0.03],
    Tb: [158.925354, 7e-6],
    Dy: [162.5, 1e-3],
    Ho: [164.930329, 5e-6],
    Er: [167.259, 3e-3],
    Tm: [168.934219, 5e-6],
    Yb: [173.045, 0.01],
    Lu: [174.9668, 1e-4],
    Hf: [178.486, 6e-3],
    Ta: [180.94788, 2e-5],
    W: [183.84, 0.01],
    Re: [186.207, 1e-3],
    Os: [190.23, 0.03],
    Ir: [192.217, 2e-3],
    Pt: [195.084, 9e-3],
    Au: [196.96657, 4e-6],
    Hg: [200.592, 3e-3],
    Bi: [208.9804, 1e-5],
    Th: [232.0377, 4e-4],
    Pa: [231.03588, 1e-5],
    U: [238.02891, 3e-5],
  }),
};

function around(values: Record<string, readonly [number, number]>): Record<string, readonly [number, number]> {
  return Object.fromEntries(Object.entries(values).map(([symbol, [v, u]]) => [symbol, [v - u, v + u] as const]));
}

describe('the table of atomic weights', () => {
  it('holds all 118 elements, 84 of them with a standard atomic weight', () => {
    assert.equal(atomicWeights.size, 118);
    assert.deepEqual(
      [...atomicWeights]
        .filter(([, row]) => row !== null)
        .map(([symbol]) => symbol)
        .sort(),
      Object.keys(unabridged).sort(),
    );
  });

  for (const [symbol, [low, high]] of Object.entries(unabridged)) {
    it(`${symbol}: weight ± covers the unabridged ${low} to ${high}, with no more than one unit of the last digit to spare`, () => {
      const row = atomicWeights.get(symbol);
      assert.ok(row);
      const slack = 1e-9;
      assert.ok(row.weight - row.plusMinus <= low + slack && high <= row.weight + row.plusMinus + slack);
      const needed = Math.max(row.weight - low, high - row.weight);
      const digit = 10 ** Math.floor(Math.log10(row.plusMinus * 1.0001));
      assert.ok(row.plusMinus - needed < digit + slack, `${row.plusMinus} for ${needed}`);
    });
  }

  it('every row names its source', () => {
    for (const row of atomicWeights.values()) assert.ok(row === null || row.source.includes('Prohaska'));
  });
});
