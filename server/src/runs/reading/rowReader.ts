import type { Host } from '../../base/host';
import { longestRecord, recordEnd } from './quotedRecord';
import type { RowBuffer } from './rowBuffer';
import { scanRows, splitFields, takeFields, type RowLayout } from './scanRows';

const LF = 10;
const nothing = new Uint8Array(0);

/**
 * Takes the text of a table piece by piece, wherever it is split, and fills a buffer: the byte scanner where lines are
 * regular, the host's full parser where quotes need it.
 */
export class RowReader {
  private rest: Uint8Array = nothing;
  /** Line of the first byte not yet read, from 1. */
  line = 1;

  /** `skip` lines are passed over first; no line from `stop` on is read. */
  constructor(
    private readonly host: Host,
    private readonly layout: RowLayout,
    readonly buffer: RowBuffer,
    private skip: number,
    private readonly stop = Infinity,
  ) {}

  /** `piece` is not kept. */
  async push(piece: Uint8Array): Promise<void> {
    let from = this.passOver(piece);
    const to = piece.lastIndexOf(LF) + 1;
    if (this.skip > 0 || this.line >= this.stop) return;
    if (from >= to) {
      this.keep(piece.subarray(from));
      return;
    }
    if (this.rest.length > 0) {
      const lineEnd = piece.indexOf(LF, from) + 1;
      const seam = joined(this.rest, piece.subarray(from, lineEnd));
      this.rest = nothing;
      from = lineEnd;
      const read = await this.lines(seam, 0, seam.length, false);
      if (read < seam.length) {
        // A quoted cell goes on: everything at hand is joined once.
        const all = joined(seam.subarray(read), piece.subarray(from));
        const end = all.lastIndexOf(LF) + 1;
        this.rest = all.slice(await this.lines(all, 0, end, false));
        return;
      }
    }
    this.keep(piece.subarray(await this.lines(piece, from, to, false)));
  }

  /** Reads what is left; the last line needs no line end. */
  async finish(): Promise<void> {
    if (this.rest.length === 0 || this.line >= this.stop) return;
    const last = this.rest[this.rest.length - 1] === LF ? this.rest : joined(this.rest, Uint8Array.of(LF));
    this.rest = nothing;
    await this.lines(last, 0, last.length, true);
  }

  private keep(bytes: Uint8Array): void {
    this.rest = joined(this.rest, bytes);
  }

  private passOver(piece: Uint8Array): number {
    let at = 0;
    while (this.skip > 0) {
      const end = piece.indexOf(LF, at);
      if (end < 0) return piece.length;
      at = end + 1;
      this.skip--;
      this.line++;
    }
    return at;
  }

  /** Reads whole lines and returns where it stopped: `to`, or the start of a record that goes on behind it. */
  private async lines(bytes: Uint8Array, from: number, to: number, final: boolean): Promise<number> {
    const { host, layout, buffer } = this;
    const decode = (part: Uint8Array): string => host.decode(part);
    let at = from;
    let end = this.stop === Infinity ? to : this.before(bytes, from, to);
    while (at < end) {
      const stopped = scanRows(bytes, at, end, this.line, layout, buffer, decode);
      at = stopped.at;
      this.line = stopped.line;
      if (!stopped.quoted) break;
      const record = recordEnd(bytes, at, end, layout.separator);
      if (record.wellFormed && record.end < 0 && !final) return at;
      if (record.wellFormed && record.end > 0) at = await this.quoted(bytes, at, record.end, end);
      else at = this.plain(bytes, at);
    }
    if (end < to) {
      this.line = this.stop;
      end = to;
    }
    return end;
  }

  /** Where line `stop` begins. */
  private before(bytes: Uint8Array, from: number, to: number): number {
    let at = from;
    for (let line = this.line; line < this.stop && at < to; line++) at = bytes.indexOf(LF, at) + 1;
    return at;
  }

  /** The record from `at` to `end` and those right after it that hold quotes too, through the full parser. */
  private async quoted(bytes: Uint8Array, at: number, end: number, to: number): Promise<number> {
    const { separator } = this.layout;
    while (end < to && end - at < longestRecord) {
      const quote = bytes.indexOf(34, end);
      if (quote < 0 || quote > bytes.indexOf(LF, end)) break;
      const next = recordEnd(bytes, end, to, separator);
      if (next.end < 0 || !next.wellFormed) break;
      end = next.end;
    }
    const text = this.host.decode(bytes.subarray(at, end));
    const delimiter = separator < 0 ? null : String.fromCharCode(separator);
    const { records, lines } = await this.host.parseDelimited(text, { delimiter });
    records.forEach((fields, k) => takeFields(fields, this.line + lines[k] - 1, this.layout, this.buffer));
    for (let i = at; i < end; i++) if (bytes[i] === LF) this.line++;
    return end;
  }

  /** One line whose quotes do not add up: they are plain characters. */
  private plain(bytes: Uint8Array, at: number): number {
    const end = bytes.indexOf(LF, at);
    const text = this.host.decode(bytes.subarray(at, end));
    takeFields(splitFields(text, this.layout.separator), this.line, this.layout, this.buffer);
    this.line++;
    return end + 1;
  }
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
