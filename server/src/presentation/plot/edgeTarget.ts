import type { Amount } from '../../language/model';
import { fixedNumber, plainNumber } from '../plainNumber';
import { foundDecimals, writtenEnd, type Which, type WrittenEnd } from './edges';
import type { PlacedWindow } from './placedWindow';
import type { WrittenPlace } from './places';
import type { PlotCurves } from './plotCurves';
import { numberIn, placeToWrite, writtenAsTyped, writtenAt } from './writtenNumber';

/** Where a person took an edge. */
export interface MovedEdge {
  readonly edge: Which;
  /** s of the file's own time. */
  readonly time: number;
  /** Of the pointer, in the edge's unit; null: a typed value or a key step. */
  readonly perPixel: number | null;
  /** In the edge's unit; null: from `time`. */
  readonly typed: number | null;
}

/** The number to write for a moved edge. */
export interface EdgeTarget {
  /** Digits, in the unit of the text. */
  readonly digits: string;
  /** What they say, in the unit of the edge. */
  readonly value: number;
  /** As it is spoken: `652.3 °C`. */
  readonly spoken: string;
  /** The number of the text it replaces; null: the edge was found by a rule. */
  readonly written: WrittenEnd | null;
}

export type Refused = { readonly refused: string };

/** A written end may lie so far (K, s) outside the data: exports start and stop a little off the programme. */
const beyond = { '°C': 1, min: 1 / 60 };

/**
 * What a move comes to in the text: rounded to the digits the text has or a pixel tells, whichever are coarser; a value
 * that was typed is written as it was typed. Refused, in words, where it would pass the other end or leave the segment.
 */
export function edgeTarget(
  moved: MovedEdge,
  place: WrittenPlace,
  placed: PlacedWindow,
  curves: PlotCurves,
): EdgeTarget | Refused {
  const { unit } = placed;
  const wanted = moved.typed ?? valueAt(moved.time, placed, curves);
  if (wanted === null || !Number.isFinite(wanted)) {
    return { refused: `The run has no temperature there, so no ${unit} can be written.` };
  }
  const written = writtenEnd(moved.edge, placed, place);
  const amount = written?.amount ?? null;
  const number = amount === null ? null : numberIn(amount.text);
  const own = number?.place ?? -foundDecimals[unit];
  const perPixel = moved.perPixel === null ? null : inTextUnit(moved.perPixel, unit, amount, true);
  const inText = inTextUnit(wanted, unit, amount, false);
  const isTyped = moved.typed !== null && moved.perPixel === null;
  const digits = isTyped ? writtenAsTyped(inText) : writtenAt(inText, placeToWrite(own, perPixel));
  const value = fromTextUnit(Number(digits), unit, amount);
  const reason = outside(value, place.name, placed, curves) ?? crossed(value, moved.edge, place, placed);
  if (reason !== null) return { refused: reason };
  return { digits, value, spoken: `${digits} ${amount?.unit?.text ?? unit}`, written };
}

function valueAt(time: number, placed: PlacedWindow, curves: PlotCurves): number | null {
  if (placed.unit === 'min') return (time - placed.origin) / 60;
  return placed.part === null ? null : curves.temperatureAt(placed.part.name, time);
}

/** From the unit of the edge to that of the text (K, s, h), and back. */
function inTextUnit(value: number, unit: '°C' | 'min', amount: Amount | null, isDifference: boolean): number {
  const of = amount?.unit ?? null;
  if (of === null || of.text === unit) return value;
  if (unit === 'min') return (60 * value) / of.factor;
  return (isDifference ? value : value + 273.15 - of.offset) / of.factor;
}

function fromTextUnit(value: number, unit: '°C' | 'min', amount: Amount | null): number {
  const of = amount?.unit ?? null;
  if (of === null || of.text === unit) return value;
  return unit === 'min' ? (value * of.factor) / 60 : value * of.factor + of.offset - 273.15;
}

function crossed(value: number, edge: Which, { name, point }: WrittenPlace, placed: PlacedWindow): string | null {
  if (point !== null) return null;
  const other = placed[edge === 'from' ? 'to' : 'from'].value;
  const way = Math.sign(other - placed[edge].value);
  if (way === 0 || way * (other - value) > 0) return null;
  return `The edge would reach or pass the other end of ${name} at ${plainNumber(other, 6)} ${placed.unit}.`;
}

function outside(value: number, name: string, placed: PlacedWindow, curves: PlotCurves): string | null {
  const { unit, part, origin } = placed;
  if (unit === '°C') {
    if (part === null) return null;
    const [low, high] = [Math.min(part.from, part.to), Math.max(part.from, part.to)];
    if (value >= low - beyond[unit] && value <= high + beyond[unit]) return null;
    return `${part.name} spans ${fixedNumber(low, 1)} to ${fixedNumber(high, 1)} °C: the edge of ${name} would leave it.`;
  }
  const [start, end] = part === null ? [curves.time.from, curves.time.to] : [part.start, part.end];
  const [low, high] = [(start - origin) / 60, (end - origin) / 60];
  if (value >= low - beyond[unit] && value <= high + beyond[unit]) return null;
  return `${part?.name ?? 'The run'} spans ${fixedNumber(low, 2)} to ${fixedNumber(high, 2)} min: the edge of ${name} would leave it.`;
}
