// The one file that knows the charting library. Its line type builds an object a sample and strokes a curve as one path:
// at four samples a pixel that took twice the time there is. Pre-parsed data must also ascend, or stretches are left out
// without a word, and its own thinning moves extremes (tried with 4.6.1). So a type of our own draws monotone stretches
// as they are; the library keeps canvas, scales and clipping, the axis limits are ours, and nothing is thinned here.
import { Chart, DatasetController, Element, LinearScale, type CartesianScaleTypeRegistry } from 'chart.js';
import type { Range } from '../../../server/src/protocol/view';
import type { Sample } from '../state/blocks';
import { strokeStretch } from './stretchLine';

export interface Curve {
  /** Ascending in x. */
  readonly samples: readonly Sample[];
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

export interface CurvesOfLane {
  readonly curves: readonly Curve[];
  readonly x: Range;
  readonly y: Range;
  readonly width: number;
  readonly height: number;
  readonly devicePixelRatio: number;
  /** Draws what lies below the curves, px from the corner of the canvas. */
  readonly below: (context: CanvasRenderingContext2D) => void;
}

/** The curves of one lane on one canvas. */
export interface LaneChart {
  draw(lane: CurvesOfLane): void;
  destroy(): void;
}

interface StretchDataset {
  data: never[];
  curve: Curve;
}

declare module 'chart.js' {
  interface ChartTypeRegistry {
    stretch: {
      chartOptions: object;
      datasetOptions: StretchDataset;
      defaultDataPoint: never;
      metaExtensions: object;
      parsedDataType: { x: number; y: number };
      scales: keyof CartesianScaleTypeRegistry;
    };
  }
}

/** The library asks for a kind of element a sample; there are none of it. */
class NoElement extends Element {
  static readonly id = 'noElement';
  static override readonly defaults = {};
}

class StretchController extends DatasetController<'stretch'> {
  static readonly id = 'stretch';
  static readonly defaults = { datasetElementType: false, dataElementType: NoElement.id };
  static readonly overrides = { scales: { x: { type: 'linear' }, y: { type: 'linear' } } };

  /** There are no elements to move: the samples are placed when they are drawn. */
  override update(): void {
    return;
  }

  override draw(): void {
    const { curve } = this.getDataset() as unknown as StretchDataset;
    const { xScale, yScale } = this.getMeta();
    const { ctx, chartArea } = this.chart;
    if (xScale === undefined || yScale === undefined) return;
    ctx.save();
    ctx.strokeStyle = curve.colour;
    ctx.lineWidth = curve.width;
    ctx.lineJoin = 'bevel';
    // Pieces of a plain line meet without a notch; dashes keep their ends.
    ctx.lineCap = curve.dash.length === 0 ? 'round' : 'butt';
    ctx.setLineDash([...curve.dash]);
    strokeStretch(ctx, curve.samples, { ...chartArea, x: xScale, y: yScale }, curve.dash.length > 0);
    ctx.restore();
  }
}

Chart.register(NoElement, StretchController, LinearScale);

export function laneChart(canvas: HTMLCanvasElement): LaneChart {
  // Axes are drawn elsewhere: here they only place samples.
  const axis = {
    type: 'linear' as const,
    display: false,
    min: 0,
    max: 1,
    ticks: { display: false },
    afterBuildTicks: (scale: { ticks: unknown[] }): void => {
      scale.ticks = [];
    },
  };
  let below: CurvesOfLane['below'] = () => undefined;
  const chart = new Chart<'stretch', never[]>(canvas, {
    type: 'stretch',
    data: { datasets: [] },
    plugins: [{ id: 'below', beforeDatasetsDraw: ({ ctx }) => below(ctx) }],
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      responsive: false,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: 0 },
      scales: { x: { ...axis }, y: { ...axis } },
    },
  });
  let size = '';
  return {
    draw({ curves, x, y, width, height, devicePixelRatio, below: drawBelow }) {
      below = drawBelow;
      const { datasets } = chart.data;
      datasets.length = Math.min(datasets.length, curves.length);
      curves.forEach((curve, i) => {
        // The same object in the same place: for another one the library would build its records anew.
        if (datasets[i] === undefined) datasets[i] = { data: [], curve };
        else datasets[i].curve = curve;
      });
      const { x: xScale, y: yScale } = chart.scales;
      const wanted = `${width}/${height}/${devicePixelRatio}/${curves.length}`;
      if (wanted !== size) {
        size = wanted;
        chart.options.devicePixelRatio = devicePixelRatio;
        chart.resize(width, height);
        chart.update('none');
      }
      // A zoom moves the limits and nothing else: an update would merge all options again, for most of the time there is.
      Object.assign(xScale, { min: x.from, max: x.to });
      Object.assign(yScale, { min: y.from, max: y.to });
      chart.draw();
    },
    destroy: () => chart.destroy(),
  };
}
