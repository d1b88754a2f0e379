import type { Atmosphere } from '../language/model';
import type { Program } from '../language/program';
import type { Segment } from '../runs/run';
import { findSegment, secondsOf } from './place';
import type { PreparedRun } from './preparedRun';

/** One gas of the plan, from a time on. */
export interface GasEvent {
  /** s, the file's own time. */
  readonly time: number;
  readonly atmosphere: Atmosphere;
  readonly text: string;
}

/** The gases of a run in the order in which they flow. Events whose segment the run lacks are left out. */
export function gasEvents(program: Program, run: PreparedRun): GasEvent[] {
  const events: GasEvent[] = [];
  for (const atmosphere of program.run?.statement.atmospheres ?? []) {
    const time = startOf(atmosphere, run);
    if (time !== null) events.push({ time, atmosphere, text: gasText(atmosphere) });
  }
  return events.sort((a, b) => a.time - b.time);
}

/** The gas that flows through most of a segment; null where none is stated. */
export function runGases(program: Program, run: PreparedRun): (segment: Segment) => string | null {
  const events = gasEvents(program, run);
  return (segment) => {
    const middle = (segment.start + segment.end) / 2;
    let gas: string | null = null;
    for (const event of events) if (event.time <= middle) gas = event.text;
    return gas;
  };
}

export function gasText(atmosphere: Atmosphere): string {
  return atmosphere.gases.map((g) => (g.percent === null ? g.words : `${g.words} ${g.percent} %`)).join(' + ');
}

function startOf(atmosphere: Atmosphere, run: PreparedRun): number | null {
  if (atmosphere.from === null) return -Infinity;
  if ('time' in atmosphere.from) return secondsOf(atmosphere.from.time);
  return findSegment(run, atmosphere.from.segment)?.start ?? null;
}
