import type { KeptView } from '../../../server/src/protocol/messages';
import type { Range } from '../../../server/src/protocol/view';
import type { Cursor } from '../control/cursor';
import type { Edges } from '../control/edges';
import { narrowest, visibleRange } from '../draw/frame';
import { bandAt } from '../geometry/bands';
import { looseLimits } from '../geometry/abscissa';
import { held } from '../geometry/zoom';
import type { Actions, Look } from '../look';
import { marksOf, type PlacedMark } from '../parts/marks';
import type { Plot } from '../parts/plot';
import { say } from '../words';
import { plotKeys } from './keys';
import { pointerInput } from './pointer';

export interface PlotInputOutside {
  look(): Look | null;
  /** What is kept to be seen, drawn or not. */
  kept(): KeptView;
  readonly actions: Actions;
  readonly cursor: Cursor;
  readonly edges: Edges;
}

/** Joins what a hand does on the plot with what it means. */
export function plotInput(plot: Plot, outside: PlotInputOutside): void {
  const { actions, cursor } = outside;
  const frame = (): Look['frame'] | null => outside.look()?.frame ?? null;
  const wanted = ({ data }: Look['frame']): Range => visibleRange(outside.kept().visible, data);
  const lookAt = (visible: Range | null): void => {
    const now = frame();
    if (now === null) return;
    actions.keep({
      do: 'look',
      visible: visible === null ? null : held(visible, looseLimits(now.data), narrowest(now.data)),
    });
  };
  const visit = (lane: string, x: number): void => {
    const now = outside.look();
    const placed = now === null ? null : bandAt(now.frame.bands, lane, x, now.kept.selected);
    if (placed !== null) actions.activate(placed.band.statement);
  };
  let mark = -1;
  pointerInput(plot.surface, plot.rubber, {
    frame,
    wanted,
    wantedOrdinate: ({ lane, y }) => outside.kept().ordinates[lane.id] ?? y,
    look: lookAt,
    ordinate: (lane, range) => actions.keep({ do: 'ordinate', lane, range }),
    hover: (x) => cursor.hover(x),
    click: visit,
  });
  plotKeys(plot.surface, {
    frame,
    wanted,
    look: lookAt,
    cursorAt: () => cursor.at,
    walk: (steps, from) => cursor.walk(steps, from),
    walkTo: (x) => cursor.to(x, null),
    turn: (by, from) => cursor.turn(by, from),
    mark(by) {
      const marks = allMarks(outside.look());
      if (marks.length === 0) return actions.tell(say('noMarks'));
      mark = (mark + by + marks.length) % marks.length;
      const { at, part, words } = marks[mark];
      cursor.to(at, part);
      actions.tell(words);
    },
    enter() {
      const now = outside.look();
      if (now === null || cursor.at === null) return;
      const at = cursor.at;
      const lane = now.frame.lanes.find(
        ({ lane: { id } }) => bandAt(now.frame.bands, id, at, now.kept.selected) !== null,
      );
      if (lane !== undefined) visit(lane.lane.id, at);
    },
    hideCursor: () => cursor.hide(),
  });
}

/** Marks of the selected statement from left to right. */
function allMarks(look: Look | null): PlacedMark[] {
  if (look === null) return [];
  const marks = look.frame.lanes.flatMap((lane) => marksOf(look, lane));
  return marks.sort((a, b) => a.at - b.at);
}
