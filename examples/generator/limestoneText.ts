import { simulateLimestone } from './limestoneRun';
import type { LimestoneRun } from './limestoneScenario';

/**
 * The run as a comma-separated file: a preamble in quotes, one header row, the columns time, temperature, mass and
 * heat flow with endothermic effects downward. Every `interval`-th second, nothing averaged.
 */
export function limestoneText(run: LimestoneRun): string {
  const simulated = simulateLimestone(run);
  const lines = [
    '"Invented demonstration record, computed by examples/generator; nothing was measured"',
    '"laboratory","Velmora Quarry Testing Centre (invented)"',
    `"specimen","${run.title}"`,
    ...(run.specimen === null ? [] : [`"weighed / mg","${run.specimen.weighed.toFixed(3)}"`]),
    `"gas","${run.gas}, 50 mL/min"`,
    '"crucible","alumina, 85 µL, open"',
    `"day","${run.measured}"`,
    '"downward","endothermic"',
    '',
    'time / s,temperature / °C,mass / mg,heat flow / mW',
  ];
  for (let i = 0; i < simulated.time.length; i += run.interval) {
    lines.push(
      [
        String(i),
        simulated.indicated[i].toFixed(2),
        simulated.mass[i].toFixed(4),
        (-simulated.heatFlow[i]).toFixed(3),
      ].join(','),
    );
  }
  return `${lines.join('\n')}\n`;
}
