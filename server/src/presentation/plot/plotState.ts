import type { Snapshot } from '../../engine/snapshot';
import type { Freshness, Generation, Part, ViewChoices, ViewState } from '../../protocol/view';
import { bandsOf } from './bands';
import { conditionsOf, gasChangesOf, titleOf } from './headline';
import { canShareHeatFlow, lanesOf, type LaidOver } from './lanes';
import { ledgerColumns, ledgerOf, type Since } from './ledger';
import type { PlotCurves, PlotLane } from './plotCurves';
import { viewFindings, type TextUris } from './viewFindings';

export interface PlotInput {
  readonly generation: Generation;
  readonly freshness: Freshness;
  readonly choices: ViewChoices;
  /** Of the gloss in the view: a run, or a method that is shown with a run. */
  readonly role: 'run' | 'method';
  readonly editable: boolean;
  /** Of the run's gloss; null where there is nothing evaluated to show. */
  readonly snapshot: Snapshot | null;
  /** Curves of that snapshot; null where no run was read. */
  readonly curves: PlotCurves | null;
  /** Addresses of the texts of the snapshot. */
  readonly uris: TextUris;
  /** Glosses of the same method, those laid over with their curves (key and direction set for it). */
  readonly companions: readonly { readonly uri: string; readonly name: string }[];
  readonly overlays: readonly Overlay[];
  /** The revision compared with; null: none. */
  readonly against: Against | null;
  /** For a method: the run glosses that name it. */
  readonly runs: readonly { readonly uri: string; readonly name: string }[];
  readonly offers: ViewState['offers'];
}

export interface Overlay {
  readonly uri: string;
  readonly name: string;
  /** null: not drawn, because of `reason`. */
  readonly curves: PlotCurves | null;
  readonly reason: string | null;
}

export interface Against {
  /** `HEAD`, a commit. */
  readonly name: string;
  readonly curves: PlotCurves | null;
  readonly differences: readonly PlotLane[];
  readonly since: ReadonlyMap<string, Since>;
}

/** At most so many runs are laid over one. */
export const mostOverlays = 10;

/**
 * One state of the curves view, whole: everything drawn is in it or asked for with its generation. Texts are made here,
 * with the formatter of every other output.
 */
export function plotState(input: PlotInput): ViewState {
  const { snapshot, curves, choices, role } = input;
  const overlays = input.overlays.slice(0, mostOverlays);
  const laidOver: LaidOver[] = overlays.flatMap(({ name, curves: of }) =>
    of === null ? [] : [{ name, of: 'overlay' as const, curves: of }],
  );
  const { against } = input;
  if (against !== null && against.curves !== null) {
    laidOver.push({ name: against.name, of: 'against', curves: against.curves });
  }
  const common = {
    generation: input.generation,
    freshness: input.freshness,
    role,
    texts: [input.uris.gloss, ...(input.uris.method === null ? [] : [input.uris.method])],
    editable: input.editable,
    choices,
    companions: input.companions,
    runs: input.runs,
    offers: input.offers,
  };
  if (snapshot === null) {
    return {
      ...common,
      title: '',
      conditions: [],
      parts: [],
      lanes: [],
      bands: [],
      gasChanges: [],
      ledger: { columns: ledgerColumns, rows: [] },
      findings: [],
      overlays: overlays.map((o) => overlayOf(o, null)),
    };
  }
  const { units, abscissa, hiddenParts } = choices;
  return {
    ...common,
    title: titleOf(snapshot, role),
    conditions: conditionsOf(snapshot, curves),
    parts: curves === null ? [] : partsOf(curves, hiddenParts),
    lanes:
      curves === null
        ? []
        : lanesOf({ curves, laidOver, differences: against?.differences ?? [], abscissa, units, hiddenParts }),
    bands: curves === null ? [] : bandsOf({ snapshot, curves, role, units }),
    gasChanges: curves === null ? [] : gasChangesOf(snapshot, curves),
    ledger: ledgerOf(snapshot, against?.since, against?.name ?? null),
    findings: viewFindings(snapshot, input.uris),
    overlays: overlays.map((o) => overlayOf(o, curves)),
  };
}

function partsOf(curves: PlotCurves, hiddenParts: readonly string[]): Part[] {
  return curves.parts.map(({ name, start, end, from, to }) => ({
    name,
    shown: !hiddenParts.includes(name),
    start,
    end,
    from,
    to,
  }));
}

/** What is to be said of a run laid over: why it, or a lane of it, is not drawn. */
function overlayOf({ uri, name, curves, reason }: Overlay, own: PlotCurves | null): ViewState['overlays'][number] {
  if (reason !== null || own === null) return { uri, name, reason };
  if (curves === null) return { uri, name, reason: 'no run was read' };
  return { uri, name, reason: canShareHeatFlow(own, curves) ? null : notShared };
}

const notShared = 'its heat flow, for one of the two runs does not declare its endothermic direction';
