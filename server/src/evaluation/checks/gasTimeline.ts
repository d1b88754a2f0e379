import type { Atmosphere, RunStatement, SegmentName } from '../../language/model';
import { findGas, type Gas } from '../../reference/gases';
import type { Segment } from '../../runs/run';
import { secondsOf } from '../place';

/** One atmosphere of a run and when it flowed. */
export interface GasPeriod {
  readonly atmosphere: Atmosphere;
  /** Token of the clause: `atmosphere`, `atmosphere#2`. */
  readonly token: string;
  /** `nitrogen 80 % + oxygen 20 %`. */
  readonly words: string;
  /** s of the file's own time; the first starts with the run. */
  readonly from: number;
  readonly to: number;
  readonly inert: boolean;
  readonly oxidising: boolean;
  /** mg/mL at 25 °C and 101.325 kPa; null where a gas is not in the table. */
  readonly density: number | null;
}

/** The atmospheres of a run in order of time. A segment the run does not have leaves its period out. */
export function gasTimeline(statement: RunStatement, segments: readonly Segment[], end: number): readonly GasPeriod[] {
  const starts = statement.atmospheres.flatMap((atmosphere, index) => {
    const from = startOf(atmosphere, segments);
    const token = index === 0 ? 'atmosphere' : `atmosphere#${index + 1}`;
    return from === null ? [] : [{ atmosphere, from, token }];
  });
  starts.sort((a, b) => a.from - b.from);
  return starts.map(({ atmosphere, from, token }, index) => ({
    atmosphere,
    token,
    words: gasWords(atmosphere),
    from,
    to: starts.at(index + 1)?.from ?? end,
    ...natureOf(atmosphere),
  }));
}

export function gasWords(atmosphere: Atmosphere): string {
  return atmosphere.gases.map(({ words, percent }) => (percent === null ? words : `${words} ${percent} %`)).join(' + ');
}

/** The gas that flows at a time, and the one before it. */
export function periodAt(timeline: readonly GasPeriod[], time: number): GasPeriod | null {
  return timeline.find((p) => time >= p.from && time < p.to) ?? timeline.at(-1) ?? null;
}

/** Times at which one gas follows another. */
export function gasSwitches(timeline: readonly GasPeriod[]): readonly { before: GasPeriod; after: GasPeriod }[] {
  return timeline.slice(1).map((after, index) => ({ before: timeline[index], after }));
}

function startOf(atmosphere: Atmosphere, segments: readonly Segment[]): number | null {
  if (atmosphere.from === null) return Number.NEGATIVE_INFINITY;
  if ('time' in atmosphere.from) return secondsOf(atmosphere.from.time);
  return segmentNamed(segments, atmosphere.from.segment)?.start ?? null;
}

function segmentNamed(segments: readonly Segment[], name: SegmentName): Segment | undefined {
  return segments.find((s) => s.direction === name.direction && s.index === name.index);
}

function natureOf({ gases }: Atmosphere): Pick<GasPeriod, 'inert' | 'oxidising' | 'density'> {
  const known = gases.map(({ words, percent }) => ({ gas: findGas(words), share: (percent ?? 100) / 100 }));
  const has = (gas: Gas | null, trait: Gas['traits'][number]): boolean => gas?.traits.includes(trait) ?? false;
  const densities = known.map(({ gas, share }) => (gas === null || gas.density === null ? null : gas.density * share));
  return {
    inert: known.every(({ gas }) => has(gas, 'inert')),
    oxidising: known.some(({ gas }) => has(gas, 'oxidising')),
    density: densities.every((d) => d !== null) ? densities.reduce((a, b) => a + b, 0) : null,
  };
}
