export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface WantedLabel {
  readonly id: string;
  /** The marked point, px. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a label may stand about its point: side and steps of its height up or down, nearest first. */
const steps = [-1, 1, 0, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6];
const away = 7;

/**
 * Places labels beside their points inside `bounds`, none on another, none on a `taken` box. Points from left to right;
 * each tries its right and its left side, then farther up and down; one that fits nowhere takes its first place.
 */
export function placedLabels(
  wanted: readonly WantedLabel[],
  bounds: Box,
  taken: readonly Box[] = [],
): ReadonlyMap<string, Box> {
  const done = new Map<string, Box>();
  const full = [...taken];
  for (const label of [...wanted].sort((a, b) => a.x - b.x || a.y - b.y)) {
    const candidates = steps.flatMap((step) => [candidate(label, step, 1), candidate(label, step, -1)]);
    const inside = candidates.filter((box) => within(box, bounds));
    const free = inside.find((box) => full.every((other) => !touches(box, other)));
    const box = free ?? pushedInto(inside[0] ?? candidates[0], bounds);
    full.push(box);
    done.set(label.id, box);
  }
  return done;
}

function candidate(label: WantedLabel, step: number, side: 1 | -1): Box {
  const { x, y, width, height } = label;
  const top = y - height / 2 + step * (height + 2);
  return { left: side > 0 ? x + away : x - away - width, top, width, height };
}

function within(box: Box, bounds: Box): boolean {
  return (
    box.left >= bounds.left &&
    box.top >= bounds.top &&
    box.left + box.width <= bounds.left + bounds.width &&
    box.top + box.height <= bounds.top + bounds.height
  );
}

function pushedInto(box: Box, bounds: Box): Box {
  const left = Math.max(bounds.left, Math.min(box.left, bounds.left + bounds.width - box.width));
  const top = Math.max(bounds.top, Math.min(box.top, bounds.top + bounds.height - box.height));
  return { ...box, left, top };
}

export function touches(a: Box, b: Box): boolean {
  return a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;
}
