import type { Range } from '../../../server/src/protocol/view';

/** A linear map between values and pixels. */
export interface Scale {
  px(value: number): number;
  value(px: number): number;
  readonly perPixel: number;
}

/** `start` is the pixel of `range.from`, `end` that of `range.to`; `end` below `start` turns the axis upward. */
export function scale(range: Range, start: number, end: number): Scale {
  const perPixel = (range.to - range.from) / (end - start);
  return {
    px: (value) => start + (value - range.from) / perPixel,
    value: (px) => range.from + (px - start) * perPixel,
    perPixel,
  };
}
