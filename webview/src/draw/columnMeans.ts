import type { Range } from '../../../server/src/protocol/view';
import type { Scale } from '../geometry/scale';
import { firstNotBelow, type Sample } from '../state/blocks';

export interface AreaPlace {
  /** Abscissas between which it lies. */
  readonly low: number;
  readonly high: number;
  readonly visible: Range;
  readonly xScale: Scale;
  readonly yScale: Scale;
}

/**
 * The outline of an area along a curve, px: one point for each column of pixels, the mean of its samples, which keeps the
 * area; what is lost lies under the curve's own line. A software rasterizer is slow with the outline of a noisy curve
 * sample by sample. Of what is out of view, one sample on each side.
 */
export function columnMeans(
  samples: readonly Sample[],
  { low, high, visible, xScale, yScale }: AreaPlace,
): [number, number][] {
  const first = Math.max(firstNotBelow(samples, low), firstNotBelow(samples, visible.from) - 1);
  const end = Math.min(firstNotBelow(samples, high, true), firstNotBelow(samples, visible.to, true) + 1);
  const outline: [number, number][] = [];
  let column = NaN;
  let [x, y, count] = [0, 0, 0];
  const close = (): void => {
    if (count > 0) outline.push([x / count, y / count]);
    [x, y, count] = [0, 0, 0];
  };
  for (let i = first; i < end; i++) {
    const [px, py] = [xScale.px(samples[i].x), yScale.px(samples[i].y)];
    if (!Number.isFinite(py)) continue;
    if (Math.floor(px) !== column) close();
    column = Math.floor(px);
    x += px;
    y += py;
    count++;
  }
  close();
  return outline;
}
