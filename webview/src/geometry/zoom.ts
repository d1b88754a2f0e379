import type { Range } from '../../../server/src/protocol/view';

/** The range `factor` times as wide (below 1: closer) in which `centre` stays where it is on the screen. */
export function zoomAbout(range: Range, centre: number, factor: number): Range {
  return { from: centre - (centre - range.from) * factor, to: centre + (range.to - centre) * factor };
}

export function panned(range: Range, by: number): Range {
  return { from: range.from + by, to: range.to + by };
}

/** Grown by `share` of its width on either side; a range without width gets one about its value. */
export function padded(range: Range, share: number): Range {
  const width = range.to - range.from;
  const by = width > 0 ? width * share : Math.max(Math.abs(range.from) * share, 0.5);
  return { from: range.from - by, to: range.to + by };
}

/** Kept inside `limits` and not narrower than `narrowest`: moved rather than cut, so that a pan at the end does not zoom. */
export function held(range: Range, limits: Range, narrowest: number): Range {
  const widest = limits.to - limits.from;
  const width = Math.min(widest, Math.max(narrowest, range.to - range.from));
  const middle = (range.from + range.to) / 2;
  const from = Math.min(limits.to - width, Math.max(limits.from, middle - width / 2));
  return { from, to: from + width };
}

/** The factor of one turn of the wheel: 120 units of an ordinary notch are a quarter closer or farther. */
export function wheelFactor(delta: number): number {
  return 1.25 ** Math.min(4, Math.max(-4, delta / 120));
}

/** The range between two places of a drag; null where it was too short to be meant. */
export function dragged(a: number, b: number, pixels: number): Range | null {
  return pixels < 5 || a === b ? null : { from: Math.min(a, b), to: Math.max(a, b) };
}

/** Moves `range` only as far as needed to show `target`; a wider target is shown from its middle outward. */
export function shows(range: Range, target: Range): Range {
  const width = range.to - range.from;
  if (target.from >= range.from && target.to <= range.to) return range;
  const margin = Math.min(0.1 * width, Math.max(0, (width - (target.to - target.from)) / 2));
  if (target.to - target.from > width) return zoomAbout(target, (target.from + target.to) / 2, 1.2);
  const from = target.from < range.from ? target.from - margin : target.to + margin - width;
  return { from, to: from + width };
}

/** Whether no part of `target` is in `range`. */
export function outOfView(range: Range, target: Range): boolean {
  return target.to < range.from || target.from > range.to;
}
