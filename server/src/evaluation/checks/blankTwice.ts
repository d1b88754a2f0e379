import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { reachedBy } from './blankConditions';
import { blankBlocks } from './blankBlocks';
import { blocksOf, meanAt, type Block } from './blocks';
import { milligramsPerUnit } from './buoyancy';
import type { CheckContext } from './context';
import { deleteStatement, percent, plain } from './wording';

/** Stretches for the comparison of corrected mass and blank, s, and how many of them are needed. */
const LONG_BLOCK = 120;
const FEWEST_BLOCKS = 8;
/** Level: language.md 4, %/K. */
const LEVEL = 0.005;
/** A blank that bends less than this (mg) over a level stretch cannot be told from drift. */
const LEAST_BEND = 0.001;

/**
 * Where nothing happens the corrected mass should not know the blank. If the export was corrected already it is the blank
 * upside down: compared on level stretches of ramps, once as it is and once without its straight part, because a slow
 * loss is straight and a blank is not.
 */
export function subtractedBefore(context: CheckContext): Finding[] {
  const { run } = context;
  const perUnit = milligramsPerUnit(context);
  const blanks = context.blanks.filter((b) => reachedBy(b).includes('loss') && b.signals.get('mass')?.unit === 'mg');
  if (run.signals.get('mass')?.unit !== 'mg' || perUnit === null || blanks.length === 0) return [];
  const series = blanks.map((blank) => blankBlocks(blank, 'mass', LONG_BLOCK));
  const pairs: { readonly own: readonly number[]; readonly blank: readonly number[] }[] = [];
  for (const stretch of levelStretches(context)) {
    const own: number[] = [];
    const blank: number[] = [];
    for (const block of stretch) {
      const means = series.map((s) => meanAt(s, block.time));
      if (means.some((m) => m === null)) continue;
      own.push(block.mean);
      blank.push(means.reduce<number>((sum, m) => sum + (m ?? 0), 0) / means.length);
    }
    if (own.length >= FEWEST_BLOCKS) pairs.push({ own, blank });
  }
  const limit = -context.limit('blank-twice');
  const whole = correlate(
    pairs.map(({ own, blank }) => ({ own: withoutPolynomial(own, 0), blank: withoutPolynomial(blank, 0) })),
  );
  const bent = correlate(
    pairs.map(({ own, blank }) => ({ own: withoutPolynomial(own, 1), blank: withoutPolynomial(blank, 1) })),
  );
  const full = (slope: number) => slope > -1.4 && slope < -0.6;
  if (whole === null || bent === null || bent.swing < LEAST_BEND) return [];
  if (whole.r > limit || bent.r > limit || !full(whole.slope) || !full(bent.slope)) return [];
  return blanks.map((blank) =>
    makeFinding(
      'blank-twice',
      { statement: blank.id, token: 'file' },
      `On the level stretches the corrected mass follows the blank upside down, with a correlation of ${plain(whole.r)} (limit ${plain(limit)}) and ${percent(-100 * whole.slope)} of its size: the export seems to be corrected already.`,
      { only: reachedBy(blank), fixes: [deleteStatement('Delete this blank', blank.id)] },
    ),
  );
}

function levelStretches(context: CheckContext): Block[][] {
  const { run } = context;
  const signal = run.signals.get('mass');
  const stretches: Block[][] = [];
  for (const segment of run.segments) {
    const curve = signal?.curve(segment) ?? null;
    if (curve === null || segment.rate === null) continue;
    const blocks = blocksOf(curve.x, curve.y, { from: segment.start, to: segment.end }, LONG_BLOCK);
    const limit = ((LEVEL / 100) * run.mass.reference * Math.abs(segment.rate)) / 60;
    let stretch: Block[] = [];
    blocks.forEach((block, i) => {
      const before = blocks.at(i - 1);
      const level =
        i > 0 && before !== undefined && Math.abs(block.mean - before.mean) <= limit * (block.time - before.time);
      if (!level && stretch.length > 0) {
        stretches.push(stretch);
        stretch = [];
      }
      stretch.push(block);
    });
    stretches.push(stretch);
  }
  return stretches.filter((s) => s.length >= FEWEST_BLOCKS);
}

function correlate(pairs: readonly { own: readonly number[]; blank: readonly number[] }[]) {
  let oo = 0;
  let bb = 0;
  let ob = 0;
  let n = 0;
  for (const { own, blank } of pairs) {
    own.forEach((o, i) => {
      oo += o * o;
      bb += blank[i] * blank[i];
      ob += o * blank[i];
    });
    n += own.length;
  }
  if (n === 0 || oo === 0 || bb === 0) return null;
  return { r: ob / Math.sqrt(oo * bb), slope: ob / bb, swing: Math.sqrt(bb / n) };
}

/** Evenly spaced values less their mean (0) or their straight line (1). */
function withoutPolynomial(values: readonly number[], degree: 0 | 1): number[] {
  const n = values.length;
  const mean = values.reduce((s, v) => s + v / n, 0);
  const half = (n - 1) / 2;
  let squares = 0;
  let slope = 0;
  values.forEach((v, i) => {
    squares += (i - half) ** 2;
    slope += (i - half) * (v - mean);
  });
  return values.map((v, i) => v - mean - (degree === 1 && squares > 0 ? (slope / squares) * (i - half) : 0));
}
