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

/** Where a label may stand about its point: rows of its height up or down, px beside it; nearest first. */
const rows = [-1, 1, 0, -0.5, 0.5, -1.5, 1.5, -2, 2, -2.5, 2.5, -3, 3, -3.5, 3.5, -4, 4, -5, 5, -6, 6];
const beside = [7, 34, 70];

/**
 * Places labels beside their points inside `bounds`, none on another and, where there is room, none on a point of
 * `points`. From left to right; each tries its right and its left side near by, then farther up, down and out. Where
 * nothing is free it stands where it covers least.
 */
export function placedLabels(
  wanted: readonly WantedLabel[],
  bounds: Box,
  points: readonly Box[] = [],
): ReadonlyMap<string, Box> {
  const done = new Map<string, Box>();
  const labels: Box[] = [];
  for (const label of [...wanted].sort((a, b) => a.x - b.x || a.y - b.y)) {
    const all = beside.flatMap((away) => rows.flatMap((row) => [place(label, row, away), place(label, row, -away)]));
    const inside = all.filter((box) => within(box, bounds));
    const box =
      inside.find((one) => [...labels, ...points].every((other) => overlap(one, other) === 0)) ??
      // Better over a point than over another label.
      inside.find((one) => labels.every((other) => overlap(one, other) === 0)) ??
      least(inside.length > 0 ? inside : all.map((one) => pushedInto(one, bounds)), labels);
    labels.push(box);
    done.set(label.id, box);
  }
  return done;
}

function place({ x, y, width, height }: WantedLabel, row: number, away: number): Box {
  const top = y - height / 2 + row * (height + 2);
  return { left: away > 0 ? x + away : x + away - width, top, width, height };
}

function least(boxes: readonly Box[], others: readonly Box[]): Box {
  const covered = (box: Box): number => others.reduce((sum, other) => sum + overlap(box, other), 0);
  return boxes.reduce((a, b) => (covered(b) < covered(a) ? b : a));
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

/** Area that two boxes share, px². */
export function overlap(a: Box, b: Box): number {
  const width = Math.min(a.left + a.width, b.left + b.width) - Math.max(a.left, b.left);
  const height = Math.min(a.top + a.height, b.top + b.height) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}
