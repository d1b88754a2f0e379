import { seeded } from '../../support/random';

/**
 * An invented run with seeded noise: 10 K/min from 30 to 630 °C, 10 mg in; about 330 °C 2 mg leave along a logistic curve,
 * about 520 °C 0.5 mg; a glass step of the heat flow at 100 °C and an endothermic peak at 330 °C. Nobody measured it.
 */
export function inventedRun(seed = 7): string {
  const random = seeded(seed);
  const rows = ['time,temperature,mass,heatflow', 'min,°C,mg,mW'];
  for (let i = 0; i <= 1800; i += 1) {
    const t = 30 + i / 3;
    const mass = 10 - 2 * logistic((t - 330) / 8) - 0.5 * logistic((t - 520) / 6) + 0.0004 * random.normal();
    const heat = 1 + 0.5 * logistic((t - 100) / 2) + 6 * Math.exp(-(((t - 330) / 12) ** 2)) + 0.004 * random.normal();
    rows.push(`${(i / 30).toFixed(4)},${t.toFixed(3)},${mass.toFixed(5)},${heat.toFixed(5)}`);
  }
  return `${rows.join('\n')}\n`;
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}

export const inventedFiles: Readonly<Record<string, string>> = {
  'a.csv': inventedRun(),
  'b.csv': 'Zeit,Temp./°C,w (mg)\n0,30,10\n1,40,9.9\n2,50,9.8\n3,60,9.7\n',
  'm.gloss': 'method "Two losses"\nstep Early 200..420 °C\nstep Late around 520 °C\nlet sum = Early.loss + Late.loss\n',
  'blank.gloss': 'run "blank.csv"\n  sample none\n',
  'blank.csv': 'time,temperature,mass\nmin,°C,mg\n0,30,0\n60,630,0.01\n',
  'sub/c.csv': 'time,temperature,mass\nmin,°C,mg\n0,30,1\n1,40,1\n',
};

/** The head of a run gloss on the invented run. */
export const inventedHead = 'run "a.csv"\n  mass 10 mg\n  endothermic up\n  hazard "none: invented"\n';
