/** A stretch of a row in px. */
export interface Stretch {
  readonly left: number;
  readonly right: number;
}

export interface WantedTab {
  readonly id: string;
  /** Edges of the band in px, and the width its name needs. */
  readonly left: number;
  readonly right: number;
  readonly width: number;
}

export interface PlacedTab {
  readonly id: string;
  readonly row: number;
  readonly left: number;
  readonly width: number;
}

const gap = 3;

/**
 * Lays the tabs of a lane in rows, so that no two overlap and none covers what is `taken` in row 0 (the lane's own name
 * and reading). A tab starts at the left edge of its band, or where the view begins; where the band is cut by the right
 * border the tab ends there. Bands out of view have no tab.
 */
export function laidTabs(wanted: readonly WantedTab[], taken: readonly Stretch[], view: Stretch): PlacedTab[] {
  const rows: Stretch[][] = [[...taken]];
  const visible = wanted.filter((tab) => tab.right >= view.left && tab.left <= view.right);
  return [...visible]
    .sort((a, b) => a.left - b.left || b.right - a.right || (a.id < b.id ? -1 : 1))
    .map((tab) => {
      const width = Math.min(tab.width, view.right - view.left);
      const left = Math.max(view.left, Math.min(tab.left, view.right - width));
      const place = { left, right: left + width };
      let row = rows.findIndex((row) => row.every((other) => isClear(place, other)));
      if (row < 0) row = rows.push([]) - 1;
      rows[row].push(place);
      return { id: tab.id, row, left, width };
    });
}

function isClear(a: Stretch, b: Stretch): boolean {
  return a.right + gap <= b.left || b.right + gap <= a.left;
}
