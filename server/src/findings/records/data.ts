import { ofFamily } from '../record';

/** Files, columns and masses: whether the record is understood and about the specimen named. */
export const dataRecords = ofFamily('data', true, [
  {
    code: 'file-missing',
    severity: 'error',
    effect: 'fails',
    title: 'The file does not exist or cannot be read',
    explanation:
      'Paths are relative to the gloss. Nothing that reads this file has a value. Correct the path; the message names a file of nearly the same name where there is one.',
    limits: [],
    rules: [],
    fires: ['run "vq217-11.csv"', 'the folder holds only `vq217-1.csv`'],
    silent: ['run "vq217-1.csv"', 'the folder holds `vq217-1.csv`'],
  },
  {
    code: 'file-outside-workspace',
    severity: 'error',
    effect: 'fails',
    title: 'The path leaves the root folder',
    explanation:
      'A gloss reads only below its root, so that a copy of the folder gives the same numbers and a foreign gloss cannot read private files. The file is neither read nor quoted. Move it below the root.',
    limits: [],
    rules: [],
    fires: 'run "../../elsewhere/a.csv"',
    silent: 'run "data/a.csv"',
  },
  {
    code: 'column-unclear',
    severity: 'error',
    effect: 'fails',
    title: 'A column or the layout of the file is not certain',
    explanation:
      'No header fits the signal, or two fit equally, or the layout itself is in doubt. Nothing is guessed, because a mass in % taken for mg looks like a measurement. The fix writes the `columns` or `reading` statement that settles it; check it against the file.',
    limits: [],
    rules: ['A15'],
    fires: ['run "a.csv"', 'two columns are headed `Mass/mg` and `Weight/mg`'],
    silent: ['run "a.csv"\ncolumns\n  mass column 3 in mg', 'two columns are headed `Mass/mg` and `Weight/mg`'],
  },
  {
    code: 'signal-missing',
    severity: 'error',
    effect: 'fails',
    title: 'The run has no such signal',
    explanation:
      'The statement reads a signal that none of the files holds. It fails alone. When it comes from a method it is only a warning, because a method may serve runs with fewer signals. Join the file that has the signal, or remove the statement.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\n  endothermic up\npeak Melting 215..262 °C', 'the file holds time, temperature and mass'],
    silent: [
      'run "a.csv"\n  endothermic up\njoin "a-heat.csv"\npeak Melting 215..262 °C',
      'the joined file holds the heat flow',
    ],
  },
  {
    code: 'mass-mismatch',
    severity: 'warning',
    effect: 'apparent',
    title: 'The weighed mass and the first reading of the run differ',
    explanation:
      'The specimen on the balance is not the mass written in the gloss, by more than {0} of it: lost or taken up while waiting, a changed position in a series, or a typing error. Every percentage has this mass below the line. Correct `mass`, leave it out (then the first reading is the basis), or allow it with the reason.',
    limits: [{ value: 0.2, unit: '%', meaning: 'difference from the weighed mass' }],
    rules: ['A01'],
    fires: ['run "a.csv"\n  mass 20.41 mg', 'the first reading is 20.05 mg'],
    silent: ['run "a.csv"\n  mass 20.08 mg', 'the first reading is 20.05 mg'],
  },
  {
    code: 'content-twice',
    severity: 'warning',
    effect: null,
    title: 'Two file names hold the same data',
    explanation:
      'The content is identical to that of another file in use, so one of the two identities is wrong: a copied export, or a blank that is the run itself. Point each name to its own file.',
    limits: [],
    rules: ['A13'],
    fires: ['run "a.csv"\nblank "z.csv"', '`z.csv` is a copy of `a.csv`'],
    silent: ['run "a.csv"\nblank "z.csv"', 'the files differ'],
  },
  {
    code: 'mass-missing',
    severity: 'warning',
    effect: null,
    title: 'The specimen mass is not stated',
    explanation:
      'Percentages then refer to the first reading, which holds buoyancy, the transient of the start and whatever the specimen lost while waiting, and heats in J/g cannot be computed from a signal in mW. Add `mass` from the weighing record.',
    limits: [],
    rules: ['A02'],
    fires: ['run "a.csv"\nstep First 640..800 °C', 'the mass signal is in mg'],
    silent: ['run "a.csv"\n  mass 20.052 ± 0.010 mg\nstep First 640..800 °C', 'the mass signal is in mg'],
  },
  {
    code: 'join-mismatch',
    severity: 'warning',
    effect: null,
    title: 'A joined file disagrees in temperature',
    explanation:
      'At equal times the temperatures of the two files differ by more than {0}, so their clocks or their runs are not the same and peaks would be set beside the wrong mass. Set `offset`, or join on temperature.',
    limits: [{ value: 2, unit: 'K', meaning: 'difference of the temperatures at equal times' }],
    rules: [],
    fires: ['run "a.csv"\njoin "a-heat.txt"', 'the second file starts 30 s later at 10 K/min'],
    silent: ['run "a.csv"\njoin "a-heat.txt"\n  offset 30 s', 'the second file starts 30 s later at 10 K/min'],
  },
  {
    code: 'programme-mismatch',
    severity: 'warning',
    effect: null,
    title: 'The run did not follow the programme stated',
    explanation:
      'A measured rate departs by more than {0} from the programme, an end by more than {1}, or a segment is missing. Rates, shifts and comparisons must use the measured rate, which all results here do; a label that says otherwise misleads readers. Correct `programme`, or find the fault.',
    limits: [
      { value: 2, unit: '%', meaning: 'measured against stated rate' },
      { value: 3, unit: 'K', meaning: 'measured against stated end of a segment' },
    ],
    rules: ['A07'],
    fires: ['run "a.csv"\nprogramme\n  heat to 1000 °C at 10 K/min', 'the run was heated at 19.6 K/min'],
    silent: ['run "a.csv"\nprogramme\n  heat to 1000 °C at 10 K/min', 'the run was heated at 10.1 K/min'],
  },
  {
    code: 'mass-implausible',
    severity: 'error',
    effect: 'apparent',
    title: 'The specimen mass is not one a thermobalance takes',
    explanation:
      'The mass lies outside {0} to {1}: most often a wrong unit or a shifted decimal point. Every percentage and every J/g has it below the line. Correct it from the weighing record.',
    limits: [
      { value: 0.2, unit: 'mg', meaning: 'smallest mass taken as plausible' },
      { value: 500, unit: 'mg', meaning: 'largest mass taken as plausible' },
    ],
    rules: ['A02'],
    fires: 'run "a.csv"\n  mass 20.052 g',
    silent: 'run "a.csv"\n  mass 20.052 mg',
  },
]);
