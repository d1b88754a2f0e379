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

const limitsOfAnApproval =
  'An approval is a record, not an electronic signature: anybody who can write the files can write a name, a day and a digest that fits. Who approved is told by the signed commit that brought the line.';

const approved =
  'run "a.csv"\nstep Water 40..180 °C\napproved by "M. Ruiz" on 2026-10-02 digest 3f2a91c07be45d6618f0a2c49d7e5b13';

export const approvalRecords = ofFamily('approval', false, [
  {
    code: 'approval-broken',
    severity: 'error',
    effect: null,
    title: 'What was approved is not what stands here',
    explanation: `A data file, a statement in effect (also one of the method) or the record of the approval differs from what was approved; the message names what, from what to what. Comments, spacing, the order of lines and of clauses, line ends and the spelling of a unit or of zeros at an end make no difference. Undo the change, or have the results approved again (\`thermogloss approve\`). ${limitsOfAnApproval}`,
    limits: [],
    rules: ['A04'],
    fires: [approved, 'the record was made with the window 40..170 °C'],
    silent: [approved, 'data files and statements are those of the record'],
  },
  {
    code: 'approved-result-moved',
    severity: 'error',
    effect: null,
    title: 'An approved result comes out otherwise now',
    explanation: `A result differs from the one in the record by more than the larger of 0.05 of its stored standard uncertainty and 1e-9 of its value, its standard uncertainty by more than the larger of 0.05 of itself and 1e-9 of the value, a limit as a value does, it is of another state, or a verdict changed. The last bits of another machine are no move. Beside approval-broken it says what the change does; alone, another version of the program computes otherwise. Look at the difference and have the results approved again. ${limitsOfAnApproval}`,
    limits: [],
    rules: ['A04'],
    fires: [approved, 'Water.loss is 14.80 ± 0.04 % in the record and 14.91 ± 0.04 % now'],
    silent: [approved, 'Water.loss is 14.80 ± 0.04 % in the record and 14.801 ± 0.04 % now'],
  },
  {
    code: 'approval-record-missing',
    severity: 'warning',
    effect: null,
    title: 'The record of an approval is not there',
    explanation: `Without the file \`GLOSS.approved.json\` beside the gloss nothing tells what was approved. Bring it back from the history, commit it with the gloss, or have the results approved again. ${limitsOfAnApproval}`,
    limits: [],
    rules: [],
    fires: [approved, 'there is no file beside the gloss'],
    silent: [approved, 'the record lies beside the gloss'],
  },
  {
    code: 'approved-by-evaluator',
    severity: 'warning',
    effect: null,
    title: 'Who approved is who evaluated',
    explanation: `A second pair of eyes sees what the first has passed over. The evaluator is who the clause \`evaluator\` of the run names; without it the author of the last commit that changed a statement of the gloss, where git tells one. ${limitsOfAnApproval}`,
    limits: [],
    rules: [],
    fires: [approved.replace('"a.csv"', '"a.csv"\n  evaluator "M. Ruiz"'), 'the record lies beside the gloss'],
    silent: [approved.replace('"a.csv"', '"a.csv"\n  evaluator "A. Berg"'), 'the record lies beside the gloss'],
  },
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
