import { differenceLane } from '../../engine/curves/difference';
import { compareNumbers } from '../../presentation/diff/compareNumbers';
import { comparedOf } from '../../presentation/diff/compared';
import { rowMoved, differenceText } from '../../presentation/diff/shownRows';
import { defaultTolerance } from '../../presentation/diff/tolerance';
import type { Since } from '../../presentation/plot/ledger';
import type { Against } from '../../presentation/plot/plotState';
import { unitOf } from '../../presentation/plot/plotCurves';
import type { ViewChoices } from '../../protocol/view';
import type { RunCurves } from '../../engine/curves/runCurves';
import type { Committed } from '../revisionsBeside';
import type { Ground } from './picture';

/** A revision beside a picture: differences of the numbers, and its curves where they are to be laid over. */
export interface AgainstGround {
  readonly against: Against;
  readonly curves: RunCurves | null;
  readonly differences: RunCurves['lanes'];
}

/** The key before the ids of curves of the revision compared with. */
const key = 'against:';

export function againstOf(committed: Committed, name: string, ground: Ground, choices: ViewChoices): AgainstGround {
  const since = new Map<string, Since>();
  const { side } = committed;
  if (side !== null) {
    const diff = compareNumbers(side.compared, comparedOf(ground.snapshot), defaultTolerance);
    for (const row of diff.rows) {
      if (row.new === null) continue;
      const moved = rowMoved(row);
      const text =
        row.status === 'added' ? 'new' : row.difference === null ? (moved ? 'changed' : '') : differenceText(row);
      if (moved || row.difference !== null) since.set(row.id, { text: row.status === 'equal' ? '—' : text, moved });
    }
  }
  const drawn = choices.against !== null && side !== null && ground.curves !== null;
  const curves = drawn ? committed.engine.curvesOf(side.snapshot, { key, run: ground.curves! }) : null;
  const differences =
    curves === null
      ? []
      : ground.curves!.lanes.flatMap((lane) => {
          const made = differenceLane(ground.curves!, curves, lane.id, choices.abscissa, unitOf(lane, choices.units));
          return made === null || lane.id === 'temperature' ? [] : [made];
        });
  return { against: { name, curves, differences, since }, curves, differences };
}
