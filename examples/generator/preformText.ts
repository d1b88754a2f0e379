import { simulatePreform } from './preformRun';
import { preform } from './preformScenario';

/**
 * The run as tab-separated text with decimal commas, CRLF line ends, names and units in rows of their own, and a
 * closing line. Endothermic effects upward; every second simulated reading, nothing averaged.
 */
export function preformText(): string {
  const simulated = simulatePreform();
  const comma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
  const lines = [
    'Invented demonstration record, computed by examples/generator; nothing was measured',
    'House:\tHarrowmede Pipe & Film Test House (invented)',
    'Piece:\tbottle preform PET-07, disc from the wall',
    `Weighed:\t${comma(preform.weighed, 3)} mg`,
    'Gas:\tnitrogen, 50 mL/min',
    `Day:\t${preform.measured}`,
    'Upward:\tendothermic',
    '',
    'time\ttemperature\theat flow',
    'min\t°C\tmW',
  ];
  let rows = 0;
  for (let i = 0; i < simulated.time.length; i += 2) {
    const minutes = simulated.time[i] / 60;
    lines.push([comma(minutes, 4), comma(simulated.indicated[i], 2), comma(simulated.heatFlow[i], 4)].join('\t'));
    rows++;
  }
  lines.push(`End of record after ${String(rows)} readings`);
  return `${lines.join('\r\n')}\r\n`;
}
