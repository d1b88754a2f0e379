// The one file that knows the charting library. Known traps (tried with 4.6.1): pre-parsed data must ascend in x, or
// stretches are left out without a word; its own thinning moves extremes. So every data set is one monotone stretch,
// the axis limits are ours, and nothing is thinned here.
import { Chart, LineController, LineElement, LinearScale, PointElement } from 'chart.js';
import type { Range } from '../../../server/src/protocol/view';
import type { Sample } from '../state/blocks';

Chart.register(LineController, LineElement, LinearScale, PointElement);

export interface Curve {
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
}

/** The curves of one lane on one canvas. */
export interface LaneChart {
  draw(lane: CurvesOfLane): void;
  destroy(): void;
}

function noTicks(axis: { ticks: unknown[] }): void {
  axis.ticks = [];
}

export function laneChart(canvas: HTMLCanvasElement): LaneChart {
  const chart = new Chart<'line', Sample[]>(canvas, {
    type: 'line',
    data: { datasets: [] },
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      responsive: false,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: 0 },
      scales: {
        // Axes are drawn elsewhere: here they only place samples.
        x: { type: 'linear', display: false, min: 0, max: 1, ticks: { display: false }, afterBuildTicks: noTicks },
        y: { type: 'linear', display: false, min: 0, max: 1, ticks: { display: false }, afterBuildTicks: noTicks },
      },
      elements: { point: { radius: 0, hitRadius: 0, hoverRadius: 0 }, line: { tension: 0, borderJoinStyle: 'round' } },
    },
  });
  let size = '';
  return {
    draw({ curves, x, y, width, height, devicePixelRatio }) {
      chart.data.datasets = curves.map((curve, i) => ({
        // The same object for the same place, so that the library keeps its own records of it.
        ...(chart.data.datasets[i] ?? {}),
        data: curve.samples as Sample[],
        borderColor: curve.colour,
        borderWidth: curve.width,
        borderDash: curve.dash.length === 0 ? undefined : [...curve.dash],
      }));
      const { x: xAxis, y: yAxis } = chart.options.scales ?? {};
      Object.assign(xAxis ?? {}, { min: x.from, max: x.to });
      Object.assign(yAxis ?? {}, { min: y.from, max: y.to });
      const wanted = `${width}/${height}/${devicePixelRatio}`;
      if (wanted !== size) {
        size = wanted;
        chart.options.devicePixelRatio = devicePixelRatio;
        chart.resize(width, height);
      }
      chart.update('none');
    },
    destroy: () => chart.destroy(),
  };
}
