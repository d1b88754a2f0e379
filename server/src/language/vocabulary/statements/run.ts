import { atmosphereClause, crucibleClause } from '../clauses';
import type { OwnRecord } from '../record';
import { signalWords } from '../signals';

/** The first line of a run gloss: which file, and what was in the crucible. */
export const runRecord: OwnRecord = {
  keyword: 'run',
  kind: 'run',
  form: 'run "FILE"',
  parameters: [{ name: 'FILE', meaning: 'the exported data, relative to the gloss' }],
  prose: 'The measured run this gloss belongs to, and what is known about specimen, crucible, gas and calibration.',
  roles: ['run'],
  repeatable: false,
  clauses: [
    {
      word: 'sample',
      form: 'sample TEXT|none',
      argument: { form: 'text or none' },
      prose: 'What was measured. `none`: an empty crucible, so that the run can serve as a blank.',
      default: null,
      example: 'sample "Dolomitic limestone VQ-217, specimen 1"',
      repeatable: false,
    },
    {
      word: 'mass',
      form: 'mass Q',
      argument: { form: 'amount', measures: ['mass'], uncertain: true },
      prose: 'The mass weighed in, with its standard uncertainty behind ±.',
      default: 'the first reading of the mass signal, and results say so',
      example: 'mass 20.052 ± 0.010 mg',
      repeatable: false,
    },
    crucibleClause,
    atmosphereClause,
    {
      word: 'contains',
      form: 'contains WORDS {, WORDS}',
      argument: { form: 'words' },
      prose: 'What is known to be in the specimen. Decides compatibility with the crucible and the cautions.',
      default: null,
      example: 'contains dolomite, calcite, quartz',
      repeatable: false,
    },
    {
      word: 'endothermic',
      form: 'endothermic up|down',
      argument: { form: 'choice', of: ['up', 'down'] },
      prose: 'Which way heat taken up by the specimen points in the file. Nothing is assumed.',
      default: null,
      example: 'endothermic down',
      repeatable: false,
    },
    {
      word: 'operator',
      form: 'operator TEXT',
      argument: { form: 'text' },
      prose: 'Who measured.',
      default: null,
      example: 'operator "R. Teller"',
      repeatable: false,
    },
    {
      word: 'evaluator',
      form: 'evaluator TEXT',
      argument: { form: 'text' },
      prose: 'Who evaluates.',
      default: null,
      example: 'evaluator "M. Anders"',
      repeatable: false,
    },
    {
      word: 'hazard',
      form: 'hazard TEXT',
      argument: { form: 'text' },
      prose: 'What was found out about hazards of the specimen, also that none is known, and from where.',
      default: null,
      example: 'hazard "none known, safety data sheet of 2026"',
      repeatable: true,
    },
    {
      word: 'measured',
      form: 'measured DATE',
      argument: { form: 'date' },
      prose: 'The day of the measurement.',
      default: null,
      example: 'measured 2026-10-02',
      repeatable: false,
    },
    {
      word: 'rate',
      form: 'rate Q',
      argument: { form: 'amount', measures: ['heating rate'] },
      prose: 'The heating rate of a file that has no time column: time is then computed from the temperature.',
      default: null,
      example: 'rate 10 K/min',
      repeatable: false,
    },
    {
      word: 'calibrated',
      form: 'calibrated SIGNAL RANGE [u Q]',
      argument: { form: 'calibrated' },
      prose:
        'The range over which the scale of a signal was checked, as temperatures or in the unit of the signal, and the standard uncertainty of the scale, in the unit of the signal or in %.',
      default: null,
      example: 'calibrated temperature 150..960 °C u 0.5 K',
      repeatable: true,
    },
  ],
  example: `run "vq217-1.csv"
  sample      "Dolomitic limestone VQ-217, specimen 1"
  mass        20.052 ± 0.010 mg
  crucible    alumina 85 µL, no lid
  atmosphere  carbon dioxide 50 mL/min
  contains    dolomite, calcite, quartz
  endothermic down
  measured    2026-10-02`,
};

export const blankRecord: OwnRecord = {
  keyword: 'blank',
  kind: 'blank',
  form: 'blank "FILE"',
  parameters: [
    {
      name: 'FILE',
      meaning: 'the run gloss of an empty crucible (`sample none`), or a bare data file described by clauses',
    },
  ],
  prose:
    'A run of the empty crucible that is subtracted, matched on time and checked on temperature. Several are averaged and give their repeatability.',
  roles: ['run'],
  repeatable: true,
  clauses: [
    {
      word: 'subtract',
      form: 'subtract SIGNAL {, SIGNAL}',
      argument: { form: 'signals', of: signalWords((s) => s.read && s.evaluated) },
      prose: 'The signals from which the blank is taken off.',
      default: 'mass',
      example: 'subtract mass, heatflow',
      repeatable: false,
    },
    crucibleClause,
    atmosphereClause,
    {
      word: 'repeatability',
      form: 'repeatability Q',
      argument: { form: 'amount', measures: ['mass', 'heat flow', 'voltage'] },
      prose: 'The standard deviation between blanks, where it is known from elsewhere.',
      default: 'from the blanks named, where there are several',
      example: 'repeatability 8 µg',
      repeatable: false,
    },
  ],
  example: `blank "blank-co2-1.gloss"
  subtract mass, heatflow`,
};

export const joinRecord: OwnRecord = {
  keyword: 'join',
  kind: 'join',
  form: 'join "FILE"',
  parameters: [{ name: 'FILE', meaning: 'a file with further signals of the same run' }],
  prose: 'Further signals of the same run from another file.',
  roles: ['run'],
  repeatable: true,
  clauses: [
    {
      word: 'on',
      form: 'on time|temperature',
      argument: { form: 'choice', of: ['time', 'temperature'] },
      prose: 'What the two files are matched on.',
      default: 'time',
      example: 'on temperature',
      repeatable: false,
    },
    {
      word: 'offset',
      form: 'offset TIME',
      argument: { form: 'amount', measures: ['time'] },
      prose: 'What is added to the time of the joined file.',
      default: '0 s',
      example: 'offset -12 s',
      repeatable: false,
    },
  ],
  example: `join "clay-heat.txt"
  offset 4 s`,
};
