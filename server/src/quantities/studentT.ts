/**
 * Student's t distribution with ν degrees of freedom, ν > 0 and not necessarily whole (JCGM 100, G.3).
 * Relative accuracy about 1e-10 for ν from 0.5 to 1e6.
 */

/** Probability of |t| at most `t`, for t of 0 or more. */
export function studentCoverage(t: number, dof: number): number {
  // P = 1 - I_y(ν/2, 1/2) with y = ν/(ν+t²) (Abramowitz and Stegun 26.7.1), taken by its mirror image.
  return incompleteBeta((t * t) / (dof + t * t), dof / (dof + t * t), 0.5, dof / 2);
}

/** The t for which |t'| ≤ t has probability `coverage`, 0 < coverage < 1: 2.776 for 0.95 and 4. */
export function studentQuantile(coverage: number, dof: number): number {
  let low = 0;
  let high = 1;
  while (studentCoverage(high, dof) < coverage && high < 1e150) high *= 2;
  // Newton's steps, and bisection where one would leave the bracket: always converges.
  let t = (low + high) / 2;
  for (let i = 0; i < 200 && high - low > 1e-14 * high; i++) {
    const off = studentCoverage(t, dof) - coverage;
    if (off < 0) low = t;
    else high = t;
    const next = t - off / (2 * studentDensity(t, dof));
    const step = Math.abs(next - t);
    t = next > low && next < high ? next : (low + high) / 2;
    if (t === next && step <= 1e-14 * t) break;
  }
  return t;
}

/** Density of t (JCGM 100, G.3). */
function studentDensity(t: number, dof: number): number {
  const norm = lnGamma((dof + 1) / 2) - lnGamma(dof / 2) - Math.log(dof * Math.PI) / 2;
  return Math.exp(norm - ((dof + 1) / 2) * Math.log1p((t * t) / dof));
}

/**
 * Regularised incomplete beta function I_x(a, b), by its continued fraction (DLMF 8.17.22). y is 1 - x, given apart
 * because near x = 1 the difference has no digits left.
 */
function incompleteBeta(x: number, y: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  // The fraction converges quickly below (a+1)/(a+b+2); above, by symmetry (DLMF 8.17.4).
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(y, x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log(y) + lnGamma(a + b) - lnGamma(a) - lnGamma(b)) / a;
  return front / betaFraction(x, a, b);
}

/** The denominator 1 + d₁/(1 + d₂/(1 + …)), by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 0;
  let f = 1;
  for (let n = 1; n <= 500; n++) {
    const m = Math.floor(n / 2);
    const term =
      n % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + term * d;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = 1 + term / c;
    if (Math.abs(c) < tiny) c = tiny;
    f *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return f;
}

/** ln Γ(x) for x > 0: Stirling's series (DLMF 5.11.1) above 12, below by the recurrence. */
function lnGamma(x: number): number {
  let shift = 0;
  let y = x;
  while (y < 12) shift += Math.log(y++);
  const r = 1 / (y * y);
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / y;
  return (y - 0.5) * Math.log(y) - y + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
