import type { RunCurves } from '../engine/curves/runCurves';
import { samples } from '../engine/curves/samples';
import type { Snapshot } from '../engine/snapshot';
import { figureSvg, type FigureBlocks } from '../presentation/plot/figureSvg';
import { plotState } from '../presentation/plot/plotState';
import type { ReportFigure } from '../presentation/report/model';
import { defaultChoices, type Abscissa, type ViewState } from '../protocol/view';

/** px. On paper 18 cm wide: the text of the picture is then of 8 to 9 points. */
const width = 700;
/** px of a lane, and of what stands above and below all of them. */
const laneHeight = 130;
const aroundLanes = 140;

/** The pictures of a report: over temperature with every construction; over time too, where the programme has parts. */
export function reportFigures(snapshot: Snapshot, curves: RunCurves, revision: string): ReportFigure[] {
  const over: Abscissa[] = curves.parts.length > 1 ? ['temperature', 'time'] : ['temperature'];
  return over.map((abscissa) => {
    const state = stateOf(snapshot, curves, abscissa);
    const height = aroundLanes + laneHeight * state.lanes.length;
    const svg = figureSvg(state, blocksOf(state, curves), null, { theme: 'print', width, height, revision });
    const directed = state.lanes.flatMap((lane) => (lane.direction === null ? [] : [lane.direction]));
    const heat = state.lanes.some((lane) => lane.name.toLowerCase().includes('heat'));
    const direction = directed.length > 0 ? directed[0] : heat ? 'endothermic direction not stated' : '';
    const words = ['original samples, none smoothed but the rate as its method says', direction];
    return { svg, caption: `Curves over ${abscissa}: ${words.filter((w) => w !== '').join('; ')}.` };
  });
}

function stateOf(snapshot: Snapshot, curves: RunCurves, abscissa: Abscissa): ViewState {
  return plotState({
    generation: { uri: '', version: 0, revision: 0 },
    freshness: { state: 'current', text: '', error: null },
    choices: { ...defaultChoices, abscissa },
    role: 'run',
    editable: false,
    snapshot,
    curves,
    uris: { gloss: '', method: null },
    companions: [],
    overlays: [],
    against: null,
    runs: [],
    offers: [],
  });
}

function blocksOf(state: ViewState, curves: RunCurves): FigureBlocks {
  const blocks = new Map<string, { readonly x: number; readonly y: number }[]>();
  for (const lane of state.lanes) {
    for (const { id } of lane.curves) {
      const curve = curves.curve(id);
      const x = curve?.drawn(state.choices.abscissa)?.axis.x;
      if (curve === null || x === undefined || x.length === 0) continue;
      const drawn = samples(curve, state.choices.abscissa, x[0], x[x.length - 1], width, lane.unit);
      blocks.set(
        id,
        Array.from({ length: drawn.count }, (_, i) => ({ x: drawn.x[i], y: drawn.y[i] })),
      );
    }
  }
  return blocks;
}
