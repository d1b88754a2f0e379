import type { Position, Range } from 'vscode-languageserver-types';
import type { Span } from '../base/span';

/** How a client counts characters of a line (LSP 3.17, `PositionEncodingKind`). */
export type PositionEncoding = 'utf-16' | 'utf-8';

/**
 * The one place where offsets become positions of the protocol and back. Offsets are UTF-16 from the start of the text,
 * a BOM not counted; positions count it where the client's text has one. Lines end at LF, CRLF or CR (LSP 3.17, "Text
 * Documents").
 */
export class TextPositions {
  private readonly starts: readonly number[];
  private readonly bom: number;

  constructor(
    private readonly text: string,
    private readonly encoding: PositionEncoding = 'utf-16',
  ) {
    this.starts = lineStarts(text);
    this.bom = text.startsWith('\uFEFF') ? 1 : 0;
  }

  get lines(): number {
    return this.starts.length;
  }

  position(offset: number): Position {
    return this.at(offset + this.bom);
  }

  range(span: Span): Range {
    return { start: this.position(span.start), end: this.position(span.end) };
  }

  /** The whole text. */
  all(): Range {
    return { start: { line: 0, character: 0 }, end: this.at(this.text.length) };
  }

  /** What lies outside the text is clipped to it. */
  offset(position: Position): number {
    return Math.max(this.raw(position) - this.bom, 0);
  }

  span(range: Range): Span {
    return { start: this.offset(range.start), end: this.offset(range.end) };
  }

  /** Offset in the text as the client has it, its BOM counted. */
  raw(position: Position): number {
    const line = Math.min(Math.max(position.line, 0), this.starts.length);
    if (line >= this.starts.length) return this.text.length;
    const start = this.starts[line];
    const end = this.lineEnd(line);
    if (this.encoding === 'utf-16') return Math.min(start + Math.max(position.character, 0), end);
    let bytes = 0;
    let at = start;
    while (at < end && bytes < position.character) {
      const code = this.text.codePointAt(at)!;
      bytes += utf8Length(code);
      at += code > 0xffff ? 2 : 1;
    }
    return at;
  }

  /** Offsets of a line without its end, a BOM not counted. */
  lineSpan(line: number): Span {
    if (line >= this.starts.length) return { start: this.text.length - this.bom, end: this.text.length - this.bom };
    return { start: Math.max(this.starts[line] - this.bom, 0), end: Math.max(this.lineEnd(line) - this.bom, 0) };
  }

  lineOf(offset: number): number {
    return this.at(offset + this.bom).line;
  }

  private at(raw: number): Position {
    const offset = Math.min(Math.max(raw, 0), this.text.length);
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle] <= offset) low = middle;
      else high = middle - 1;
    }
    const start = this.starts[low];
    if (this.encoding === 'utf-16') return { line: low, character: offset - start };
    let bytes = 0;
    for (let at = start; at < offset;) {
      const code = this.text.codePointAt(at)!;
      bytes += utf8Length(code);
      at += code > 0xffff ? 2 : 1;
    }
    return { line: low, character: bytes };
  }

  private lineEnd(line: number): number {
    let end = line + 1 < this.starts.length ? this.starts[line + 1] : this.text.length;
    if (line + 1 < this.starts.length) {
      if (this.text[end - 1] === '\n') end -= 1;
      if (end > this.starts[line] && this.text[end - 1] === '\r') end -= 1;
    }
    return end;
  }
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    if (c === 13) {
      if (text.charCodeAt(i + 1) === 10) i += 1;
      starts.push(i + 1);
    } else if (c === 10) starts.push(i + 1);
  }
  return starts;
}

function utf8Length(code: number): number {
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
