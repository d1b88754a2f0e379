import { syntheticRun } from '../../support/syntheticRun';
import { TemporaryRepository } from './repository';

// Invented data, computed from formulas with a seed; no laboratory measured this.

const steps = [
  { at: 250, width: 8, loss: 10 },
  { at: 600, width: 10, loss: 20 },
];
const run = (seed: number, second = 20): string =>
  syntheticRun({ to: 900, every: 12, seed, noise: 0.002, steps: [steps[0], { ...steps[1], loss: second }] });
/** The empty crucible: its apparent mass rises by so many mg over the run. */
const blank = (seed: number, rise: number): string =>
  syntheticRun({
    to: 900,
    every: 12,
    seed,
    noise: 0.002,
    milligrams: 1,
    steps: [{ at: 450, width: 100, loss: -100 * rise }],
  });

const method = `method "Two steps, invented"

step First 120..380 °C
step Second 450..760 °C

let ratio = Second.loss / First.loss
`;

const gloss = `run "a.csv"
  sample     "Invented"
  mass       20.000 ± 0.010 mg
  crucible   alumina 85 µL, no lid
  atmosphere nitrogen 50 mL/min
  hazard     "none: invented"

method "method.gloss"

blank "blank.gloss"

residue Rest at 880 °C

require First.loss in 9..11 % as Loss
`;

const blankGloss = `run "blank.csv"
  sample     none
  crucible   alumina 85 µL, no lid
  atmosphere nitrogen 50 mL/min
  hazard     "none: empty crucible"
`;

/** What happens in the history, oldest first; each tag compared with the one before shows one kind of change. */
export const changes = [
  'window',
  'data',
  'blank',
  'method',
  'limit',
  'comment',
  'spacing',
  'statement-renamed',
  'together',
  'gloss-renamed',
  'gloss-deleted',
] as const;
export type HistoryTag = (typeof changes)[number];

/** The tag before each. */
export function earlier(tag: HistoryTag): string {
  const at = changes.indexOf(tag);
  return at === 0 ? 'start' : changes[at - 1];
}

/** A small repository whose history holds one commit for each kind of change. */
export function history(): TemporaryRepository {
  const made = TemporaryRepository.make();
  let text = gloss;
  let shared = method;
  const edited = (from: string, to: string): string => {
    if (!text.includes(from)) throw new Error(`the gloss has no ${from}`);
    return (text = text.replaceAll(from, to));
  };
  const editedMethod = (from: string, to: string): string => {
    if (!shared.includes(from)) throw new Error(`the method has no ${from}`);
    return (shared = shared.replaceAll(from, to));
  };
  made.commit('start', {
    'method.gloss': shared,
    'a.gloss': text,
    'a.csv': run(1),
    'blank.gloss': blankGloss,
    'blank.csv': blank(2, 0.01),
  });
  made.commit('window', { 'a.gloss': edited('residue Rest at 880 °C', 'residue Rest at 600 °C') });
  made.commit('data', { 'a.csv': run(3, 20.5) });
  made.commit('blank', { 'blank.csv': blank(4, 0.04) });
  made.commit('method', { 'method.gloss': editedMethod('120..380 °C', '235..380 °C') });
  made.commit('limit', { 'a.gloss': edited('9..11 %', '9.5..10.5 %') });
  made.commit('comment', { 'a.gloss': `# A remark that changes no number.\n${text}` });
  text = `# A remark that changes no number.\n${text}`;

  const spaced = text.replace(/ {2,}mass +/, '  mass  ').replace('residue Rest', 'residue  Rest');
  made.commit('spacing', { 'a.gloss': spaced.replaceAll('\n', '\r\n') });
  made.commit('statement-renamed', { 'a.gloss': edited('residue Rest', 'residue Left') });
  made.commit('together', {
    'a.gloss': edited('residue Left at 600 °C', 'residue Left at 700 °C'),
    'a.csv': run(5, 22),
    'blank.csv': blank(6, 0.1),
  });
  made.git('mv', 'a.gloss', 'b.gloss');
  made.commit('gloss-renamed', {});
  made.commit('gloss-deleted', { 'b.gloss': null });
  return made;
}
