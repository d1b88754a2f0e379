import type { Place, PlaceWindow } from '../model';
import { readAmount, readRange } from './amounts';
import { minusAt, numberAt } from './characters';
import type { LineReader } from './reader';
import { readSegment } from './signals';

/**
 * A window and the segment it is in. Notes `window` (with `window.from`, `window.to`, or `window.at`,
 * `window.within`) and `segment`. `due`: whether a place must stand here.
 */
export function readPlace(reader: LineReader, due: boolean): Place | null {
  if (reader.peek(/[-\u2212\d.]/y) || reader.peekName() === 'around') {
    const window = reader.peekName() === 'around' ? readAround(reader) : readWindow(reader);
    if (window === null) return null;
    const segment = reader.word('in') ? readSegment(reader) : null;
    return reader.problem === null ? { window, segment } : null;
  }
  if (reader.word('in')) {
    const segment = readSegment(reader);
    return segment === null ? null : { window: null, segment };
  }
  if (due || !reader.atEnd()) {
    return reader.expected('a window, such as `640..800 °C` or `around 930 °C`, or a segment `in hold 1`');
  }
  return { window: null, segment: null };
}

function readWindow(reader: LineReader): PlaceWindow | null {
  const range = readRange(reader, 'window', 'a window, such as `640..800 °C`');
  return range === null ? null : { rule: 'range', range };
}

function readAround(reader: LineReader): PlaceWindow | null {
  reader.skipBlanks();
  const start = reader.at;
  reader.word('around');
  if (!reader.peek(minusAt) && !reader.peek(numberAt)) return reader.expected('a temperature, such as `around 930 °C`');
  const at = readAmount(reader, 'signed');
  if (at === null) return null;
  reader.note('window.at', at.span);
  const within = reader.word('within') ? readAmount(reader, 'unsigned') : null;
  if (reader.problem !== null) return null;
  if (within !== null) reader.note('window.within', within.span);
  reader.note('window', reader.since(start));
  return { rule: 'around', at: at.value, within: within?.value ?? null };
}
