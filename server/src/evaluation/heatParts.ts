import type { HeatPeak } from '../analysis/heatPeak';
import type { RawShape } from './construction';

/** The construction of a heat-flow effect as a plot draws it. */
export function peakShapes(peak: HeatPeak): RawShape[] {
  const { baseline, levelFrom, levelTo, onsetTangent, endTangent, height } = peak.shapes;
  const shapes: RawShape[] = [
    { shape: 'line', role: 'baseline', points: baseline },
    { shape: 'line', role: 'level', points: levelFrom },
    { shape: 'line', role: 'level', points: levelTo },
    { shape: 'area', from: baseline[0][0], to: baseline[baseline.length - 1][0] },
  ];
  for (const [tangent, quantity] of [
    [onsetTangent, 'onset'],
    [endTangent, 'end'],
  ] as const) {
    if (tangent.length < 2) continue;
    shapes.push({ shape: 'line', role: 'tangent', points: tangent });
    shapes.push({ shape: 'mark', quantity, at: tangent[0] });
  }
  if (height.length > 1) shapes.push({ shape: 'mark', quantity: 'peak', at: height[height.length - 1] });
  return shapes;
}
