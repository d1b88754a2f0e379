/**
 * Left ends of texts in one row: each where it is wanted or as near as needed, so that none covers the one before and the
 * last ends before `end`. Wanted from left to right. Where all together are too wide they begin at `start` and run on.
 */
export function besideEachOther(
  wanted: readonly { readonly left: number; readonly width: number }[],
  start: number,
  end: number,
  gap: number,
): number[] {
  const lefts: number[] = [];
  let free = start;
  for (const { left, width } of wanted) {
    lefts.push(Math.max(left, free));
    free = lefts[lefts.length - 1] + width + gap;
  }
  let limit = end;
  for (let i = wanted.length - 1; i >= 0; i--) {
    lefts[i] = Math.max(start, Math.min(lefts[i], limit - wanted[i].width));
    limit = lefts[i] - gap;
  }
  return lefts;
}
