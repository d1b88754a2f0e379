import type { Curve } from './curve';

/** Means of the readings of a range, less its first reading, and sums of products about these means. */
export interface Moments {
  readonly count: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
}

/** Readings in a block. Blocks begin with the curve, wherever a range begins. */
const SIZE = 64;

const known = new WeakMap<Curve, (Moments | null)[]>();

/**
 * Moments of the readings `first` to `last` (exclusive), put together from those of blocks, which are made once for a
 * curve, and of the readings beside them: a range of any length costs its blocks and two blocks more. Joined by the update of
 * Chan, Golub and LeVeque (Am. Stat. 37 (1983) 242, from memory), always about a mean, so that it does not matter where
 * time starts. In units of x and y.
 */
export function momentsOf(curve: Curve, first: number, last: number): Moments {
  let blocks = known.get(curve);
  if (blocks === undefined) {
    blocks = new Array<Moments | null>(Math.ceil(curve.x.length / SIZE)).fill(null);
    known.set(curve, blocks);
  }
  let count = 0;
  let mx = 0;
  let my = 0;
  let xx = 0;
  let xy = 0;
  for (let i = first; i < last;) {
    const end = Math.min(last, i + SIZE - (i % SIZE));
    const whole = end - i === SIZE;
    const part = whole ? (blocks[i / SIZE] ??= direct(curve, i, end)) : direct(curve, i, end);
    const all = count + part.count;
    const dx = curve.x[i] - curve.x[first] + part.x - mx;
    const dy = curve.y[i] - curve.y[first] + part.y - my;
    const share = part.count / all;
    xx += part.xx + dx * dx * count * share;
    xy += part.xy + dx * dy * count * share;
    mx += dx * share;
    my += dy * share;
    count = all;
    i = end;
  }
  return { count, x: mx, y: my, xx, xy };
}

function direct({ x, y }: Curve, first: number, last: number): Moments {
  const count = last - first;
  const x0 = x[first];
  const y0 = y[first];
  let sx = 0;
  let sy = 0;
  for (let i = first; i < last; i++) {
    sx += x[i] - x0;
    sy += y[i] - y0;
  }
  const mx = sx / count;
  const my = sy / count;
  let xx = 0;
  let xy = 0;
  for (let i = first; i < last; i++) {
    const dx = x[i] - x0 - mx;
    xx += dx * dx;
    xy += dx * (y[i] - y0 - my);
  }
  return { count, x: mx, y: my, xx, xy };
}
