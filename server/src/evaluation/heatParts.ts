import type { GlassTransition } from '../analysis/glassTransition';
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

/** The construction of a glass transition: both lines, the tangent, the gap read at the midpoint. */
export function glassShapes(glass: GlassTransition): RawShape[] {
  const { lineFrom, lineTo, tangent, step } = glass.shapes;
  const shapes: RawShape[] = [
    { shape: 'line', role: 'baseline', points: lineFrom },
    { shape: 'line', role: 'baseline', points: lineTo },
  ];
  if (tangent.length > 1) {
    shapes.push({ shape: 'line', role: 'tangent', points: tangent });
    shapes.push({ shape: 'mark', quantity: 'onset', at: tangent[0] });
    shapes.push({ shape: 'mark', quantity: 'end', at: tangent[tangent.length - 1] });
  }
  if (step.length > 1) {
    const middle = (step[0][1] + step[step.length - 1][1]) / 2;
    shapes.push({ shape: 'mark', quantity: 'midpoint', at: [step[0][0], middle] });
  }
  return shapes;
}
