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
    let afterCr = this.afterCr;
    for (let at = 0; at < piece.length; at++) {
      const byte = piece[at];
      if (byte > CR) {
        if (afterCr) {
          this.cr = true;
          afterCr = false;
        }
        piece[to++] = byte;
      } else if (byte === LF && afterCr) {
        this.crlf = true;
        afterCr = false;
      } else {
        if (afterCr) this.cr = true;
        if (byte === LF) this.lf = true;
        afterCr = byte === CR;
        piece[to++] = afterCr ? LF : byte;
      }
    }
    this.afterCr = afterCr;
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
