import { samplesIn } from '../../analysis/range';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { SignalName } from '../../language/model';
import type { StatementOutcome } from '../outcome';
import { blocksOf, largestRise, meanAt, medianOf, type Block } from './blocks';
import { reachedBy } from './blankConditions';
import { periodAt } from './gasTimeline';
import { milligramsPerUnit, temperatureAt, timelineOf } from './buoyancy';
import type { BlankRun, CheckContext } from './context';
import { at, deleteStatement, micrograms, minutes, percent, placeText, plain, segmentAt } from './wording';

/** Shape of the blanks, and of what is left after they are subtracted. Looks at the run alone. */
export function checkBlankShapes(context: CheckContext): Finding[] {
  return [
    ...differing(context, 'mass'),
    ...differing(context, 'heatflow'),
    ...context.blanks.flatMap((blank) => effectInMass(context, blank)),
    ...subtractedBefore(context),
    ...gainAtStart(context),
  ];
}

/** Length of the stretches that are averaged, s. */
const BLOCK = 30;

function blankBlocks(blank: BlankRun, signal: SignalName, length: number): Block[] {
  const column = blank.signals.get(signal);
  if (column === undefined || blank.time.length === 0) return [];
  const window = { from: blank.time[0], to: blank.time[blank.time.length - 1] };
  return blocksOf(blank.time, column.values, window, length);
}

function differing(context: CheckContext, signal: 'mass' | 'heatflow'): Finding[] {
  const unit = signal === 'mass' ? 'mg' : 'mW';
  const limit = signal === 'mass' ? context.limit('blanks-differ') / 1000 : fixedLimit('blanks-differ', 1);
  const used = context.blanks.filter((b) => reachedBy(b).includes(signal === 'mass' ? 'loss' : 'enthalpy'));
  const blanks = used.filter((b) => b.signals.get(signal)?.unit === unit);
  const findings: Finding[] = [];
  blanks.forEach((blank, index) => {
    for (const other of blanks.slice(0, index)) {
      const own = blankBlocks(blank, signal, BLOCK);
      const before = blankBlocks(other, signal, BLOCK);
      let worst = { off: 0, time: 0 };
      let start: number | null = null;
      for (const block of own) {
        const mean = meanAt(before, block.time);
        if (mean === null) continue;
        start ??= block.mean - mean;
        const off = Math.abs(block.mean - mean - (signal === 'mass' ? start : 0));
        if (off > worst.off) worst = { off, time: block.time };
      }
      if (worst.off <= limit) continue;
      const shown = (value: number) => (signal === 'mass' ? micrograms(value) : `${plain(value)} mW`);
      findings.push(
        makeFinding(
          'blanks-differ',
          { statement: blank.id, token: 'file' },
          `${blank.display} and ${other.display} are up to ${shown(worst.off)} apart in ${signal}, at ${placeText(context.run, segmentAt(context.run.segments, worst.time), worst.time)} (limit ${shown(limit)}).`,
          { related: [{ at: { statement: other.id, token: 'file' }, message: 'the other blank' }] },
        ),
      );
    }
  });
  return findings;
}

/** Rates are compared over this long; the start of a segment settles for this long (s). */
const RATE_BLOCK = 60;
const SETTLING = 600;
const NEIGHBOURS = 8;

function effectInMass(context: CheckContext, blank: BlankRun): Finding[] {
  const column = blank.signals.get('mass');
  if (column === undefined || column.unit !== 'mg') return [];
  const least = fixedLimit('blank-has-effect', 1) / 1000;
  let worst = { change: 0, from: 0, to: 0, sigmas: 0 };
  for (const segment of blank.segments) {
    const blocks = blocksOf(blank.time, column.values, { from: segment.start + SETTLING, to: segment.end }, RATE_BLOCK);
    if (blocks.length < 2 * NEIGHBOURS) continue;
    const steps = blocks.slice(1).map((b, i) => b.mean - blocks[i].mean);
    const excess = steps.map(
      (step, i) => step - medianOf(steps.slice(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1)),
    );
    const scatter = 1.4826 * medianOf(excess.map(Math.abs));
    const limit = context.limit('blank-has-effect') * scatter;
    for (let i = 0; i < excess.length;) {
      let end = i;
      let change = 0;
      let largest = 0;
      while (end < excess.length && Math.abs(excess[end]) > limit && excess[end] * excess[i] > 0) {
        change += excess[end];
        largest = Math.max(largest, Math.abs(excess[end]));
        end++;
      }
      if (Math.abs(change) > Math.max(least, Math.abs(worst.change))) {
        worst = {
          change,
          from: blocks[i].time,
          to: blocks[end].time,
          sigmas: scatter > 0 ? largest / scatter : Infinity,
        };
      }
      i = Math.max(end, i + 1);
    }
  }
  if (worst.change === 0) return [];
  const place = (time: number) => placeText(context.run, segmentAt(context.run.segments, time), time);
  const size = Number.isFinite(worst.sigmas) ? `, ${plain(worst.sigmas)} times the scatter of its rate` : '';
  return [
    makeFinding(
      'blank-has-effect',
      { statement: blank.id, token: 'file' },
      `${blank.display} ${worst.change < 0 ? 'loses' : 'gains'} ${micrograms(Math.abs(worst.change))} between ${place(worst.from)} and ${place(worst.to)}${size} (limit ${micrograms(least)}).`,
    ),
  ];
}

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
function subtractedBefore(context: CheckContext): Finding[] {
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

function gainAtStart(context: CheckContext): Finding[] {
  const { run, program } = context;
  const signal = run.signals.get('mass');
  const segment = run.segments.find((s) => s.direction === 'heating');
  if (program.run === null || !signal?.blank || segment === undefined) return [];
  const map = run.map(segment);
  const curve = signal.curve(segment);
  const [low, high] = [fixedLimit('gain-at-start', 1), fixedLimit('gain-at-start', 2)];
  if (map === null || curve === null || segment.from > high || segment.to < high) return [];
  const window = {
    from: map.timeAt(Math.max(low, segment.from)) ?? segment.start,
    to: map.timeAt(high) ?? segment.end,
  };
  if (periodAt(timelineOf(context), window.from)?.inert !== true) return [];
  const u = signal.blank.standardUncertainty(window.from, window.to)?.u ?? 0;
  const found = largestRise(blocksOf(curve.x, curve.y, window, BLOCK));
  const multiple = context.limit('gain-at-start');
  if (u === 0 || found === null || found.rise <= multiple * u) return [];
  const perUnit = milligramsPerUnit(context) ?? NaN;
  return [
    makeFinding(
      'gain-at-start',
      { statement: program.run.id, token: 'file' },
      `Between ${placeText(run, segment, found.from.time)} and ${placeText(run, segment, found.to.time)} the mass rises by ${micrograms(found.rise * perUnit)} in inert gas, ${plain(found.rise / u)} times the repeatability of the blank (limit ${plain(multiple)}).`,
    ),
  ];
}

/** A heat-flow peak that the empty crucible shows as well. */
export function checkPeakInBlank(context: CheckContext, outcome: StatementOutcome): Finding[] {
  const { analysis, placed, signal } = outcome;
  if (analysis?.of !== 'peak' || placed === null || signal === null) return [];
  const unit = context.run.signals.get(signal)?.unit;
  const height = Math.abs(analysis.peak.height.value);
  for (const blank of context.blanks) {
    const column = blank.signals.get(signal);
    if (column === undefined || column.unit !== unit) continue;
    const found = bulge(blank.time, column.values, placed.window.from, placed.window.to);
    if (found === null) continue;
    const share = (100 * found.height) / height;
    const limit = context.limit('effect-in-blank');
    if (share <= limit || found.height <= fixedLimit('effect-in-blank', 1) * found.noise) continue;
    return [
      makeFinding(
        'effect-in-blank',
        at(outcome, 'window'),
        `${blank.display} shows a peak of ${plain(found.height)} ${unit} at ${minutes(found.time)} (${numberOf(context, found.time)}), ${percent(share)} of ${outcome.name} (limit ${percent(limit)}).`,
        { about: outcome.name },
      ),
    ];
  }
  return [];
}

function numberOf(context: CheckContext, time: number): string {
  return `${plain(temperatureAt(context, time))} °C`;
}

/** The largest distance of a curve's averages from the line between its ends, and the scatter of one average. */
function bulge(x: Float64Array, y: Float64Array, from: number, to: number) {
  const { first, last } = samplesIn(x, { from, to });
  const parts = Math.min(40, Math.floor((last - first) / 4));
  if (parts < 8) return null;
  const blocks = blocksOf(x, y, { from, to }, (to - from) / parts);
  if (blocks.length < 8) return null;
  const ends = Math.max(1, Math.floor(blocks.length / 10));
  const mean = (some: readonly Block[]) => some.reduce((s, b) => s + b.mean / some.length, 0);
  const middle = (some: readonly Block[]) => some.reduce((s, b) => s + b.time / some.length, 0);
  const [head, tail] = [blocks.slice(0, ends), blocks.slice(-ends)];
  const slope = (mean(tail) - mean(head)) / (middle(tail) - middle(head));
  const off = blocks.map((b) => b.mean - mean(head) - slope * (b.time - middle(head)));
  const bends = off.slice(1, -1).map((v, i) => Math.abs(v - (off[i] + off[i + 2]) / 2));
  let best = 0;
  off.forEach((v, i) => {
    if (Math.abs(v) > Math.abs(off[best])) best = i;
  });
  return { height: Math.abs(off[best]), time: blocks[best].time, noise: (1.4826 * medianOf(bends)) / Math.sqrt(1.5) };
}
