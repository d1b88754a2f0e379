import type { ExportTheme } from '../../../server/src/protocol/messages';
import { figureSvg } from '../../../server/src/presentation/plot/figureSvg';
import type { FigureColours } from '../../../server/src/presentation/plot/palette';
import { css } from '../colour/colour';
import type { Palette } from '../colour/palette';
import type { Look } from '../look';

export interface Figure {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Heads of lanes, abscissa and caption of a picture, px: what the lanes' own heights do not hold. */
const perLane = 46;
const around = 150;

/**
 * What is in view as a drawing: the same range, lanes, ordinates and construction, in the colours asked for. It is drawn
 * from the samples of the view, first, least, greatest and last of each column, so that no extreme is lost.
 */
export function figure(
  { state, kept, frame, blocks, colours }: Look,
  theme: ExportTheme,
  transparent: boolean,
): Figure {
  const width = Math.round(Math.min(1600, Math.max(720, frame.width)));
  const lanes = frame.lanes.reduce((sum, { box }) => sum + box.plotBottom - box.plotTop + perLane, 0);
  const height = Math.round(lanes + around);
  const samples = new Map([...blocks].map(([id, { drawn }]) => [id, drawn]));
  const svg = figureSvg(state, samples, frame.x, {
    theme: theme === 'current' ? ofEditor(colours) : theme,
    width,
    height,
    transparent,
    // Nothing selected draws no construction, as on the screen.
    selected: kept.selected ?? '',
    laneOrder: frame.lanes.map(({ lane }) => lane.id),
    hiddenLanes: kept.hiddenLanes,
    ordinates: Object.fromEntries(frame.lanes.map(({ lane, y }) => [lane.id, y])),
  });
  return { svg, width, height };
}

function ofEditor(colours: Palette): FigureColours {
  const { ground, ink, muted, edge, grid, accent, warning, error } = colours;
  return {
    paper: css(ground),
    ink: css(ink),
    muted: css(muted),
    edge: css(edge),
    grid: css(grid),
    accent: css(accent),
    warning: css(warning),
    error: css(error),
  };
}
