import type { LineEnds } from '../base/host';

const CR = 13;
const LF = 10;

/** Makes every line end an LF, in place, piece by piece, and remembers which kinds it met. */
export class LineEndNormaliser {
  private lf = false;
  private cr = false;
  private crlf = false;
  /** The last piece ended in a CR, which was already given out as LF: an LF right after it belongs to it. */
  private afterCr = false;

  push(piece: Uint8Array): Uint8Array {
    if (piece.length === 0) return piece;
    const bytes = Buffer.from(piece.buffer, piece.byteOffset, piece.length);
    if (!this.afterCr && !bytes.includes(CR)) {
      this.lf ||= bytes.includes(LF);
      return piece;
    }
    let to = 0;
    for (const byte of piece) {
      if (byte === LF) {
        if (this.afterCr) this.crlf = true;
        else {
          this.lf = true;
          piece[to++] = LF;
        }
        this.afterCr = false;
        continue;
      }
      if (this.afterCr) this.cr = true;
      this.afterCr = byte === CR;
      piece[to++] = byte === CR ? LF : byte;
    }
    return piece.subarray(0, to);
  }

  finish(): LineEnds {
    if (this.afterCr) this.cr = true;
    const kinds = [this.lf, this.cr, this.crlf].filter(Boolean).length;
    if (kinds === 0) return 'none';
    if (kinds > 1) return 'mixed';
    return this.lf ? 'lf' : this.cr ? 'cr' : 'crlf';
  }
}
