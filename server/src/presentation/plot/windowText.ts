import { foundDecimals, type Which } from './edges';
import type { EdgeTarget } from './edgeTarget';
import type { PlacedWindow } from './placedWindow';
import { tokenText, type Texts, type Written, type WrittenPlace } from './places';
import type { PlotCurves } from './plotCurves';
import { numberIn, writtenAt } from './writtenNumber';

/**
 * The place of a statement with one edge moved, as it is written in an override: the method's own text with one number
 * changed, or, where a rule found the ends, both as numbers. Its segment is written out where it is in the method.
 */
export function movedPlaceText(
  place: WrittenPlace,
  placed: PlacedWindow,
  edge: Which,
  target: EdgeTarget,
  texts: Texts,
  curves: PlotCurves,
): string {
  const segment = tokenText(place.holder, 'segment', texts);
  const within = segment === '' ? '' : ` in ${segment}`;
  if (place.point !== null) return `at ${withNumber(tokenText(place.holder, 'at', texts), target)}${within}`;
  if (target.written === null)
    return `${frozenWindow(placed, edge, target)}${within}${neededSegment(place, placed, curves)}`;
  const token = tokenText(place.holder, target.written.span, texts);
  const window = tokenText(place.holder, 'window', texts);
  const moved = withNumber(token, target);
  const text =
    target.written.span === 'window.from'
      ? moved + window.slice(token.length)
      : window.slice(0, window.length - token.length) + moved;
  return `${text}${within}`;
}

/** `842.3..955.1 °C`: both ends found by a rule, the moved one as it was put. */
export function frozenWindow(placed: PlacedWindow, edge: Which, target: EdgeTarget): string {
  const { unit } = placed;
  const end = (which: Which): string =>
    which === edge ? target.digits : writtenAt(placed[which].value, -foundDecimals[unit]);
  return `${end('from')}..${end('to')} ${unit}`;
}

/**
 * ` in hold 1` where a written window needs it and the rule did not: minutes count from the start of a segment that is
 * named, and of several ramps one must be named.
 */
export function neededSegment(place: WrittenPlace, placed: PlacedWindow, curves: PlotCurves): string {
  if (place.segment !== null || placed.part === null) return '';
  const heatings = curves.parts.filter((p) => p.rate !== null && p.rate > 0);
  return placed.unit === 'min' || heatings.length > 1 ? ` in ${placed.part.name}` : '';
}

/** What stands in an override between its name and its place: of a crossing its signal and level, which belong to it. */
export function headBetween(written: Written, texts: Texts): string {
  if (written.statement.kind !== 'crossing') return '';
  const { tokens } = written.node;
  const [signal, level] = [tokens.get('signal'), tokens.get('level')];
  if (signal === undefined || level === undefined) return '';
  const text = (written.file === 'method' ? texts.method : texts.gloss)?.tree.text ?? '';
  return ` ${text.slice(signal.start, level.end)}`;
}

/** A token with its number changed and all else kept. */
export function withNumber(token: string, target: EdgeTarget): string {
  const number = numberIn(token);
  if (number === null) return token;
  return token.slice(0, number.start) + digitsIn(target, number.minus) + token.slice(number.end);
}

/** The digits with the minus the text writes. */
export function digitsIn({ digits }: EdgeTarget, minus: string): string {
  return digits.startsWith('-') ? minus + digits.slice(1) : digits;
}
