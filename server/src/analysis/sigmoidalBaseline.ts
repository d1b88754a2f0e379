import type { Baseline, Line } from './baseline';
import type { Term } from './functional';
import { firstAfter } from './range';
import type { IntegralGrid } from './windowIntegral';

/** Iterated until the area moves by less than this, relative. */
const SETTLED = 1e-9;
const ROUNDS = 200;
/** Nodes on which the fraction passed is iterated; the integral of the samples between nodes is kept exactly. */
const NODES = 600;

/**
 * The baseline that follows the conversion: two straight lines, one of the level stretch at each limit, blended by the
 * fraction of area passed, b = (1 - f) before + f after with f(t) the area up to t over the whole area. Starts from the
 * straight blend and iterates until the area moves by less than 1e-9 relative (ISO 11357-1, virtual baseline weighted
 * with conversion, from memory; language reference, `baseline sigmoidal`).
 *
 * Fraction and area depend on one another, so noise enters twice. With S the change of the area passed, r the change of
 * curve minus lines at fixed fraction and g = after - before, S' + (g / A) S = r + (g / A) f S(end), a linear equation
 * which `PassedArea` solves.
 */
export function sigmoidalBaseline(before: Line, after: Line, grid: IntegralGrid): Baseline {
  const nodes = coarseNodes(grid);
  const n = nodes.x.length;
  const { x, passed: total } = nodes;
  const low = Float64Array.from(x, (t) => before.at(t));
  const gap = Float64Array.from(x, (t, j) => after.at(t) - low[j]);
  const fraction = Float64Array.from(x, (t) => (t - x[0]) / (x[n - 1] - x[0]));
  const cumulative = new Float64Array(n);
  let area = NaN;
  let converged = false;
  for (let round = 0; round < ROUNDS && !converged; round++) {
    let under = 0;
    for (let j = 1; j < n; j++) {
      const here = low[j] + fraction[j] * gap[j];
      const there = low[j - 1] + fraction[j - 1] * gap[j - 1];
      under += ((here + there) / 2) * (x[j] - x[j - 1]);
      cumulative[j] = total[j] - under;
    }
    const next = cumulative[n - 1];
    if (!(Math.abs(next) > 0) || !Number.isFinite(next)) break;
    converged = Math.abs(next - area) <= SETTLED * Math.abs(next);
    area = next;
    for (let j = 0; j < n; j++) fraction[j] = cumulative[j] / area;
  }
  let lowest = 0;
  let highest = 1;
  for (const f of fraction) {
    lowest = Math.min(lowest, f);
    highest = Math.max(highest, f);
  }

  function fractionAt(t: number): number {
    if (t <= x[0]) return 0;
    if (t >= x[n - 1]) return 1;
    const j = firstAfter(x, t);
    return fraction[j - 1] + ((t - x[j - 1]) / (x[j] - x[j - 1])) * (fraction[j] - fraction[j - 1]);
  }

  const passed = new PassedArea(before, after, grid, nodes.node, { x, gap, fraction, area });

  function at(t: number): number {
    const f = fractionAt(t);
    return (1 - f) * before.at(t) + f * after.at(t);
  }

  return {
    kind: 'sigmoidal',
    at,
    slopeAt(t) {
      const step = (x[n - 1] - x[0]) / n;
      return (at(t + step) - at(t - step)) / (2 * step);
    },
    termsAt(t) {
      const f = fractionAt(t);
      // A change of the fraction at t: what passed up to t, less its share of what passed in all.
      const gapHere = after.at(t) - before.at(t);
      const moved = [...scaled(passed.upTo(t), gapHere / area), ...scaled(passed.whole(), (-f * gapHere) / area)];
      return [...blended(before.termsAt(t), after.termsAt(t), f), ...moved];
    },
    slopeTermsAt: (t) => blended(before.slopeTerms(), after.slopeTerms(), fractionAt(t)),
    before,
    after,
    // The fraction was iterated on averages; the area is that of the readings.
    area: area + grid.excess,
    areaTerms: () => passed.whole(),
    converged,
    fraction: { lowest, highest },
  };
}

function blended(before: readonly Term[], after: readonly Term[], fraction: number): readonly Term[] {
  return [
    ...before.map(({ times, of }) => ({ times: times * (1 - fraction), of })),
    ...after.map(({ times, of }) => ({ times: times * fraction, of })),
  ];
}

function scaled(terms: readonly Term[], factor: number): readonly Term[] {
  return terms.map(({ times, of }) => ({ times: times * factor, of }));
}

interface Settled {
  readonly x: Float64Array;
  readonly gap: Float64Array;
  readonly fraction: Float64Array;
  readonly area: number;
}

/** Changes of the area passed, as functionals of the samples. */
class PassedArea {
  private end: readonly Term[] | null = null;

  constructor(
    private readonly before: Line,
    private readonly after: Line,
    private readonly grid: IntegralGrid,
    private readonly nodeOf: Float64Array,
    private readonly settled: Settled,
  ) {}

  /** Of the whole area. */
  whole(): readonly Term[] {
    if (this.end === null) {
      const { own, back } = this.solve(this.settled.x.length - 1);
      this.end = scaled(own, 1 / (1 - back));
    }
    return this.end;
  }

  /** Of the area up to `t`, which feels the whole through the fraction. */
  upTo(t: number): readonly Term[] {
    const { own, back } = this.solve(Math.max(1, firstAfter(this.settled.x, t) - 1));
    return [...own, ...scaled(this.whole(), back)];
  }

  /** The solution at node `end`: `own` from the samples up to there, `back` times the change of the whole area. */
  private solve(end: number): { own: readonly Term[]; back: number } {
    const { x, gap, fraction, area } = this.settled;
    // The growth of a change passed at node j until the end: exp(-integral of g / A from there on).
    const weight = new Float64Array(end + 1).fill(1);
    for (let j = end - 1; j >= 0; j--) {
      weight[j] = weight[j + 1] * Math.exp((-(gap[j] + gap[j + 1]) / 2 / area) * (x[j + 1] - x[j]));
    }
    let back = 0;
    const moments = { before: [0, 0], after: [0, 0] };
    const middle = x[end >> 1];
    for (let j = 0; j <= end; j++) {
      const width = ((j > 0 ? x[j] - x[j - 1] : 0) + (j < end ? x[j + 1] - x[j] : 0)) / 2;
      back += weight[j] * (gap[j] / area) * fraction[j] * width;
      moments.before[0] += weight[j] * (1 - fraction[j]) * width;
      moments.before[1] += weight[j] * (1 - fraction[j]) * width * (x[j] - middle);
      moments.after[0] += weight[j] * fraction[j] * width;
      moments.after[1] += weight[j] * fraction[j] * width * (x[j] - middle);
    }
    const own: Term[] = [{ times: 1, of: this.grid.functional((k) => this.between(weight, this.nodeOf[k], end)) }];
    for (const [line, [flat, tilt]] of [
      [this.before, moments.before],
      [this.after, moments.after],
    ] as const) {
      own.push(...scaled(line.termsAt(middle), -flat), ...scaled(line.slopeTerms(), -tilt));
    }
    return { own, back };
  }

  private between(weight: Float64Array, node: number, end: number): number {
    if (node > end) return 0;
    const j = Math.min(end - 1, Math.floor(node));
    return weight[j] + (node - j) * (weight[j + 1] - weight[j]);
  }
}

interface CoarseNodes {
  readonly x: Float64Array;
  /** Integral of the curve from the first limit to each node. */
  readonly passed: Float64Array;
  /** Position of each sample of the grid among the nodes, counted in nodes. */
  readonly node: Float64Array;
}

function coarseNodes({ x, y }: IntegralGrid): CoarseNodes {
  const stride = Math.max(1, Math.ceil((x.length - 1) / NODES));
  const n = Math.ceil((x.length - 1) / stride) + 1;
  const nodes = { x: new Float64Array(n), passed: new Float64Array(n), node: new Float64Array(x.length) };
  let passed = 0;
  for (let k = 0; k < x.length; k++) {
    if (k > 0) passed += ((y[k] + y[k - 1]) / 2) * (x[k] - x[k - 1]);
    if (k % stride === 0 || k === x.length - 1) {
      const j = Math.ceil(k / stride);
      nodes.x[j] = x[k];
      nodes.passed[j] = passed;
    }
  }
  for (let k = 0; k < x.length; k++) {
    const j = Math.min(n - 2, Math.floor(k / stride));
    nodes.node[k] = j + (x[k] - nodes.x[j]) / (nodes.x[j + 1] - nodes.x[j]);
  }
  return nodes;
}
