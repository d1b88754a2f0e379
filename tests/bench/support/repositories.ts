import { TemporaryRepository } from '../../revisions/support/repository';
import { syntheticRun } from '../../support/syntheticRun';

// Invented data, computed from formulas with seeds and written with the decimals of exports; no laboratory measured this.

/** Ninety-seven minutes at one reading a second, two losses. */
export function secondsRun(seed: number, second = 25): string {
  return syntheticRun({
    every: 1,
    seed,
    steps: [
      { at: 300, width: 8, loss: 10 },
      { at: 600, width: 10, loss: second },
    ],
  });
}

const head = (run: string): string[] => [
  `run "${run}"`,
  '  sample     "Invented"',
  '  mass       20.000 ± 0.010 mg',
  '  crucible   alumina 85 µL, no lid',
  '  atmosphere nitrogen 50 mL/min',
  '',
];

export function seriesMethod(edge: number): string {
  return `method "Two losses, invented"\n\nstep First 200..${edge} °C\nstep Second 480..750 °C\nresidue Rest at 950 °C\n\nlet share = First.loss / Second.loss\n`;
}

/** Of the run of that number. `more`: a window of its own. */
export function seriesGloss(k: number, edge: number | null): string {
  const own = edge === null ? [] : [`crossing Tenth${k} mass = ${edge} %`];
  return [...head(`r${k}.csv`), 'method "method.gloss"', ...own, ''].join('\n');
}

/** Twenty runs of one method, committed once. */
export function seriesRepository(): TemporaryRepository {
  const made = TemporaryRepository.make();
  const files: Record<string, string> = { 'method.gloss': seriesMethod(420) };
  for (let k = 1; k <= 20; k++) {
    files[`r${k}.csv`] = secondsRun(k, 24 + 0.1 * k);
    files[`r${k}.gloss`] = seriesGloss(k, null);
  }
  made.import([files]);
  return made;
}

/** The working copy after a day of work: the method and five glosses edited, two runs measured again. */
export function editSeries(made: TemporaryRepository, edge = 340): void {
  made.write({ 'method.gloss': seriesMethod(edge) });
  for (const k of [1, 5, 9, 13, 17]) made.write({ [`r${k}.gloss`]: seriesGloss(k, 90) });
  for (const k of [1, 10]) made.write({ [`r${k}.csv`]: secondsRun(100 + k, 24 + 0.1 * k) });
}

/** One gloss through so many commits: its window moves each time, every tenth time its run is replaced too. */
export function longHistory(commits: number): TemporaryRepository {
  const made = TemporaryRepository.make();
  made.import(
    Array.from({ length: commits }, (_, k): Record<string, string> => {
      const gloss = [...head('a.csv'), `step First ${200 + 0.5 * k}..420 °C`, 'step Second 480..750 °C', ''].join('\n');
      return k % 10 === 0 ? { 'a.gloss': gloss, 'a.csv': secondsRun(1 + k) } : { 'a.gloss': gloss };
    }),
  );
  return made;
}

/** A gloss of twenty windows and eighty results reckoned from them. */
export function hundredResults(edge: number): string {
  const steps = Array.from({ length: 20 }, (_, k) => `step S${k} ${200 + k + edge}..${420 + k} °C`);
  const lets = Array.from({ length: 80 }, (_, k) => `let x${k} = S${k % 20}.loss * ${k + 1}`);
  return [...head('a.csv'), ...steps, ...lets, ''].join('\n');
}
