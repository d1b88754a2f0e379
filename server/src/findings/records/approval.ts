import { ofFamily } from '../record';

/** Requirements, and what was accepted with a reason. */
export const requirementRecords = ofFamily('results', true, [
  {
    code: 'requirement-not-met',
    severity: 'error',
    effect: null,
    title: 'A requirement is not met',
    explanation:
      'The value with its expanded uncertainty U lies wholly outside the limits (JCGM 106). The number itself is sound.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\nstep Water 40..180 °C\nrequire Water.loss <= 0.5 %', 'the loss is 0.72 ± 0.03 % (U)'],
    silent: ['run "a.csv"\nstep Water 40..180 °C\nrequire Water.loss <= 0.5 %', 'the loss is 0.40 ± 0.03 % (U)'],
  },
  {
    code: 'requirement-inconclusive',
    severity: 'warning',
    effect: null,
    title: 'A requirement can be neither confirmed nor refuted',
    explanation:
      'The limit lies within the expanded uncertainty of the value, or the value is not a plain number (apparent, sum only, indicated, partly below detection). Measure replicates, or remove what makes the value apparent.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\nstep Water 40..180 °C\nrequire Water.loss <= 0.5 %', 'the loss is 0.49 ± 0.03 % (U)'],
    silent: ['run "a.csv"\nstep Water 40..180 °C\nrequire Water.loss <= 0.5 %', 'the loss is 0.40 ± 0.03 % (U)'],
  },
]);

export const approvalRecords = ofFamily('approval', false, [
  {
    code: 'allow-unused',
    severity: 'warning',
    effect: null,
    title: 'An allowance accepts nothing',
    explanation:
      'No finding of this code stands there (any more). A reason that excuses nothing misleads the next reader. Delete it.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\nallow gap-in-data because "paused for refilling"', 'the data have no gap'],
    silent: ['run "a.csv"\nallow gap-in-data because "paused for refilling"', 'the data have a gap'],
  },
  {
    code: 'allow-not-possible',
    severity: 'error',
    effect: null,
    title: 'This finding cannot be allowed',
    explanation:
      'Findings about syntax, names, units and allowances say that a line was not understood; there is nothing a reason could accept. Correct the line. A code that does not exist cannot be allowed either.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nallow unknown-name because "will follow"',
    silent: ['run "a.csv"\nallow gap-in-data because "paused for refilling"', 'the data have a gap'],
  },
]);
