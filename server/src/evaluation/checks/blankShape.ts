import { samplesIn } from '../../analysis/range';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { fixedLimit } from '../../findings/table';
import type { StatementOutcome } from '../outcome';
import { blocksOf, largestRise, meanAt, medianOf, type Block } from './blocks';
import { blankBlocks } from './blankBlocks';
import { reachedBy } from './blankConditions';
import { subtractedBefore } from './blankTwice';
import { periodAt } from './gasTimeline';
import { milligramsPerUnit, temperatureAt, timelineOf } from './buoyancy';
import type { BlankRun, CheckContext } from './context';
import { at, micrograms, minutes, percent, placeText, plain, segmentAt } from './wording';

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
