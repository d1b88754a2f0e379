import { coverageFactor } from '../../server/src/quantities/coverageFactor';
import { studentCoverage, studentQuantile } from '../../server/src/quantities/studentT';
import assert from 'node:assert/strict';
import { near, nearRelative } from './near';

/** JCGM 100:2008, table G.2 (from memory): ν, then t for 68.27, 90, 95, 95.45, 99 and 99.73 %. */
const tableG2: readonly (readonly number[])[] = [
  [1, 1.84, 6.31, 12.71, 13.97, 63.66, 235.8],
  [2, 1.32, 2.92, 4.3, 4.53, 9.92, 19.21],
  [3, 1.2, 2.35, 3.18, 3.31, 5.84, 9.22],
  [4, 1.14, 2.13, 2.78, 2.87, 4.6, 6.62],
  [5, 1.11, 2.02, 2.57, 2.65, 4.03, 5.51],
  [6, 1.09, 1.94, 2.45, 2.52, 3.71, 4.9],
  [7, 1.08, 1.89, 2.36, 2.43, 3.5, 4.53],
  [8, 1.07, 1.86, 2.31, 2.37, 3.36, 4.28],
  [9, 1.06, 1.83, 2.26, 2.32, 3.25, 4.09],
  [10, 1.05, 1.81, 2.23, 2.28, 3.17, 3.96],
  [11, 1.05, 1.8, 2.2, 2.25, 3.11, 3.85],
  [12, 1.04, 1.78, 2.18, 2.23, 3.05, 3.76],
  [13, 1.04, 1.77, 2.16, 2.21, 3.01, 3.69],
  [14, 1.04, 1.76, 2.14, 2.2, 2.98, 3.64],
  [15, 1.03, 1.75, 2.13, 2.18, 2.95, 3.59],
  [16, 1.03, 1.75, 2.12, 2.17, 2.92, 3.54],
  [17, 1.03, 1.74, 2.11, 2.16, 2.9, 3.51],
  [18, 1.03, 1.73, 2.1, 2.15, 2.88, 3.48],
  [19, 1.03, 1.73, 2.09, 2.14, 2.86, 3.45],
  [20, 1.03, 1.72, 2.09, 2.13, 2.85, 3.42],
  [25, 1.02, 1.71, 2.06, 2.11, 2.79, 3.33],
  [30, 1.02, 1.7, 2.04, 2.09, 2.75, 3.27],
  [40, 1.01, 1.68, 2.02, 2.06, 2.7, 3.2],
  [50, 1.01, 1.68, 2.01, 2.05, 2.68, 3.16],
  [100, 1.005, 1.66, 1.984, 2.025, 2.626, 3.077],
];
const coverages = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];

describe("Student's t", () => {
  it('gives the table G.2 of JCGM 100 to its printed digits', () => {
    for (const [dof, ...ts] of tableG2) {
      ts.forEach((t, i) => {
        const digit = dof === 100 ? 0.0005 : t > 100 ? 0.05 : 0.005;
        near(studentQuantile(coverages[i]!, dof!), t, digit * 1.02, `ν = ${dof}, ${coverages[i]}:`);
      });
    }
  });

  it('has the closed forms of one, two and four degrees of freedom (Abramowitz and Stegun 26.7.3, 26.7.4)', () => {
    for (const p of [0.1, 0.5, 0.6827, 0.95, 0.9973, 0.99999]) {
      nearRelative(studentQuantile(p, 1), Math.tan((Math.PI * p) / 2), 1e-9);
      nearRelative(studentQuantile(p, 2), p * Math.sqrt(2 / (1 - p * p)), 1e-9);
    }
    for (const t of [0.1, 1, 2.776, 10]) {
      const cosine2 = 4 / (4 + t * t);
      const sine = Math.sqrt(1 - cosine2);
      near(studentCoverage(t, 4), sine * (1 + cosine2 / 2), 1e-13);
    }
  });

  it('tends to the normal distribution: 1.959964 for 95 % at a million degrees of freedom', () => {
    near(studentQuantile(0.95, 1e6), 1.9599664, 1e-6);
  });

  it('grows with the coverage and falls with the degrees of freedom, whole or not', () => {
    let last = Infinity;
    for (let dof = 0.5; dof < 40; dof += 0.7) {
      const t = studentQuantile(0.95, dof);
      assert.ok(t < last);
      last = t;
      near(studentCoverage(t, dof), 0.95, 1e-12);
    }
  });
});

describe('the coverage factor at 95 %', () => {
  it('is t at the truncated effective degrees of freedom: 16.75 counts as 16, t = 2.12 (JCGM 100, G.6.4)', () => {
    near(coverageFactor(16.75), 2.12, 0.005);
    assert.equal(coverageFactor(16.75), coverageFactor(16));
    near(coverageFactor(4), 2.776, 0.0005);
    near(coverageFactor(1), 12.706, 0.0005);
  });

  it('is 2 for many, and never below', () => {
    assert.equal(coverageFactor(null), 2);
    assert.equal(coverageFactor(61), 2);
    assert.equal(coverageFactor(1e9), 2);
    assert.ok(coverageFactor(60) > 2 && coverageFactor(60) < 2.001);
  });

  it('does not lose a degree of freedom to rounding', () => {
    assert.equal(coverageFactor(9.999999999999998), coverageFactor(10));
    assert.equal(coverageFactor(0.7), coverageFactor(1));
  });
});
