import type { Span } from '../base/span';
import { blanksAt, dateAt, matchAt, nameAt, numberAt, textAt } from '../language/syntax/characters';
import { matchUnit } from '../quantities/matchUnit';

/** A piece of one line, as the grammar cuts it; texts and formulas also where they are not closed yet. */
export interface LineToken {
  readonly kind: 'word' | 'number' | 'date' | 'unit' | 'text' | 'open text' | 'formula' | 'open formula' | 'sign';
  readonly text: string;
  readonly span: Span;
}

/** Signs of more than one character. */
const signs = ['..', '<=', '>=', '+/-'];

/**
 * The tokens of a stretch of one line, whatever stands there: what is being typed has no tree yet. A unit is one only
 * right behind a number, as in the grammar. Comments are the caller's.
 */
export function lineTokens(text: string, start: number, end: number): LineToken[] {
  const tokens: LineToken[] = [];
  for (let at = start; at < end;) {
    const blanks = matchAt(blanksAt, text, at);
    if (blanks !== null) {
      at += blanks[0].length;
      continue;
    }
    const token = tokenAt(text, at, end, tokens.at(-1) ?? null);
    tokens.push(token);
    at = token.span.end;
  }
  return tokens;
}

function tokenAt(text: string, at: number, end: number, before: LineToken | null): LineToken {
  const token = (kind: LineToken['kind'], to: number): LineToken => {
    const span = { start: at, end: Math.min(Math.max(to, at + 1), end) };
    return { kind, text: text.slice(span.start, span.end), span };
  };
  if (text[at] === '"') {
    const whole = matchAt(textAt, text, at);
    const close = at + (whole?.[0].length ?? Infinity);
    return close <= end ? token('text', close) : token('open text', end);
  }
  if (text.startsWith('M(', at)) {
    const close = closing(text, at + 1, end);
    return close === null ? token('open formula', end) : token('formula', close + 1);
  }
  const date = matchAt(dateAt, text, at);
  if (date !== null) return token('date', at + date[0].length);
  const number = matchAt(numberAt, text, at);
  if (number !== null) return token('number', at + number[0].length);
  if (before?.kind === 'number') {
    const unit = matchUnit(text.slice(0, end), at);
    if (unit !== null) return token('unit', unit.end);
  }
  const word = matchAt(nameAt, text, at);
  if (word !== null) return token('word', at + word[0].length);
  const sign = signs.find((s) => text.startsWith(s, at));
  // One code point: half of a pair is no sign.
  return token('sign', at + (sign?.length ?? String.fromCodePoint(text.codePointAt(at)!).length));
}

/** The bracket that closes the one at `open`; null where it is not closed before `end`. */
function closing(text: string, open: number, end: number): number | null {
  let depth = 0;
  for (let at = open; at < end; at += 1) {
    if (text[at] === '(') depth += 1;
    else if (text[at] === ')') {
      depth -= 1;
      if (depth === 0) return at;
    }
  }
  return null;
}
