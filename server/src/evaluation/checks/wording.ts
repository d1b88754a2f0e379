import { decimalText, numberText, significantText } from '../../findings/numberText';
import type { Anchor, Fix } from '../../findings/finding';
import type { Placed, StatementOutcome } from '../outcome';
import type { PreparedRun } from '../preparedRun';
import type { Segment } from '../../runs/run';

/** Numbers of messages, with their units. */
export const celsius = (value: number): string => `${numberText(value, 1)} °C`;
export const kelvin = (value: number): string => `${significantText(value, 2)} K`;
export const percent = (value: number): string => `${significantText(value, 3)} %`;
export const minutes = (seconds: number): string => `${numberText(seconds / 60, 1)} min`;
/** A short time: seconds, from two minutes on minutes. */
export const seconds = (value: number): string => (value < 120 ? `${significantText(value, 2)} s` : minutes(value));
export const micrograms = (milligrams: number): string => `${significantText(milligrams * 1000, 2)} µg`;
export const count = (value: number): string => numberText(value, 0);
export const plain = (value: number): string => significantText(value, 2);

export function at(outcome: StatementOutcome, token: string): Anchor {
  return { statement: outcome.source.id, token };
}

/** A point of the run for a reader: its temperature in a ramp, its time from the start of a hold, else the file's time. */
export function placeText(run: PreparedRun, segment: Segment | null, time: number): string {
  if (segment === null) return minutes(time);
  const map = segment.direction === 'hold' ? null : run.map(segment);
  return map === null ? `${minutes(time - segment.start)} in ${segment.name}` : celsius(map.temperatureAt(time));
}

/** The segment that holds a time. */
export function segmentAt(segments: readonly Segment[], time: number): Segment | null {
  return segments.find((s) => time >= s.start && time <= s.end) ?? null;
}

/** A fix that writes one clause under a statement. It changes a number, so it is offered, never applied unseen. */
export function insertClause(statement: string, text: string): Fix {
  return { title: `Write "${text}"`, edits: [{ edit: 'insert-clause', statement, text }], safe: false };
}

/**
 * A fix that moves one end of a written window to a temperature (°C) or time (min), as the window counts. None where a
 * rule found the window: there is no end to write.
 */
export function moveEdge(outcome: StatementOutcome, placed: Placed, edge: 'start' | 'end', value: number): Fix[] {
  const { from, to, unit, rule } = placed.shown;
  if (rule !== null) return [];
  // A window in a cooling may be written either way round: its earlier end is the hotter one.
  const first = placed.segment?.direction === 'cooling' ? from >= to : from <= to;
  const places = unit === '°C' ? 0 : 1;
  const ends = first === (edge === 'start') ? [value, to] : [from, value];
  if (ends[0] === ends[1]) return [];
  const text = `${ends.map((e) => (e === value ? decimalText(e, places) : numberText(e, 2))).join('..')} ${unit}`;
  const title = `Move the ${edge} to ${decimalText(value, places)} ${unit}`;
  return [{ title, edits: [{ edit: 'replace', at: at(outcome, 'window'), text }], safe: false }];
}

export function replaceToken(title: string, where: Anchor, text: string): Fix {
  return { title, edits: [{ edit: 'replace', at: where, text }], safe: false };
}

export function insertStatement(title: string, after: string | null, text: string): Fix {
  return { title, edits: [{ edit: 'insert-statement', after, text }], safe: false };
}

export function deleteStatement(title: string, statement: string): Fix {
  return { title, edits: [{ edit: 'delete-statement', statement }], safe: false };
}

/** Quantities a fault of the mass signal reaches. */
export const massQuantities: readonly string[] = [
  'loss',
  'gain',
  'change',
  'remaining',
  'mass_start',
  'mass_end',
  'amount',
  'drift',
];

/** Quantities that have the specimen mass below the line. */
export const perMassQuantities: readonly string[] = [
  'loss',
  'gain',
  'change',
  'remaining',
  'rate',
  'drift',
  'enthalpy',
  'height',
  'delta_cp',
];

/** Quantities a fault of the heat-flow zero line reaches. */
export const heatQuantities: readonly string[] = ['enthalpy', 'area', 'height', 'delta_cp'];
