import type { Span } from '../base/span';
import type { LineColumns } from './lineColumns';
import { displayWidth, oneLine } from './width';

/** The line a span starts on, with marks below the span; a span over several lines is marked to the end of its first. */
export function sourceExcerpt(positions: LineColumns, span: Span, paint: (marks: string) => string): string[] {
  const start = positions.at(span.start);
  const end = positions.at(span.end);
  const text = positions.line(start.line);
  if (text.trim() === '') return [];
  const last = end.line === start.line ? end.column - 1 : text.length;
  const number = String(start.line);
  const before = displayWidth(oneLine(text.slice(0, start.column - 1)));
  const marked = Math.max(1, displayWidth(oneLine(text.slice(start.column - 1, last))));
  return [
    `  ${number} | ${oneLine(text)}`,
    `  ${' '.repeat(number.length)} | ${' '.repeat(before)}${paint('^'.repeat(marked))}`,
  ];
}
