/** A mass curve with one loss, invented: 10 K/min from 30 °C to 630 °C, 10 mg, 2 mg lost about `centre` °C. */
export function lossRun(centre = 330, points = 601): string {
  const lines = ['time,temperature,mass', 'min,°C,mg'];
  for (let i = 0; i < points; i += 1) {
    const temperature = 30 + (600 * i) / (points - 1);
    const mass = 10 - 2 / (1 + Math.exp(-(temperature - centre) / 8));
    lines.push(`${(temperature - 30) / 10},${temperature},${mass}`);
  }
  return lines.join('\n');
}
