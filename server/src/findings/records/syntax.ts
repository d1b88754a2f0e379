import { ofFamily } from '../record';

/** Lines that cannot be read as statements. Only the line and what depends on it is lost. */
export const syntaxRecords = ofFamily('syntax', false, [
  {
    code: 'unknown-statement',
    severity: 'error',
    effect: null,
    title: 'The first word of the line is no statement',
    explanation:
      'A line that starts in the first column must begin with a statement word (`step`, `peak`, `residue` …). The line is ignored and so is everything it would have evaluated. Correct the word, or put `#` before a remark.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstepp First 640..800 °C',
    silent: 'run "a.csv"\nstep First 640..800 °C',
  },
  {
    code: 'unknown-clause',
    severity: 'error',
    effect: null,
    title: 'The statement has no such clause',
    explanation:
      'An indented line belongs to the statement above it and must begin with a clause word of that statement. The clause is ignored, so the statement is evaluated with its default instead. Correct the word, or move the clause to the statement that has it.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\n  baseline linear',
    silent: 'run "a.csv"\nstep First 640..800 °C\n  by tangents',
  },
  {
    code: 'clause-without-statement',
    severity: 'error',
    effect: null,
    title: 'An indented line stands before any statement',
    explanation:
      'Indented lines add to the statement above them, and here there is none. Remove the blanks in front, or write the statement first.',
    limits: [],
    rules: [],
    fires: '  mass 20.052 mg\nrun "a.csv"',
    silent: 'run "a.csv"\n  mass 20.052 mg',
  },
  {
    code: 'clause-not-indented',
    severity: 'error',
    effect: null,
    title: 'A clause word stands in the first column',
    explanation:
      'The word is a clause, and a clause belongs to the statement above it only when the line starts with a blank. Without it the clause has no effect and the default is used. Indent the line.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nmass 20.052 mg',
    silent: 'run "a.csv"\n  mass 20.052 mg',
  },
  {
    code: 'clause-twice',
    severity: 'error',
    effect: null,
    title: 'A clause is given twice',
    explanation:
      'Only some clauses may be repeated (`atmosphere`, `note`, `hazard`, `allow`, `calibrated`). Of the others the first counts and the last is ignored. Delete one of them.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\n  span 10 K\n  span 20 K',
    silent: 'run "a.csv"\nstep First 640..800 °C\n  span 20 K',
  },
  {
    code: 'unexpected-text',
    severity: 'error',
    effect: null,
    title: 'The line goes on where it should end, or lacks a part',
    explanation:
      'The line begins as a statement or clause but does not follow its form from the marked place on. The line is not used. Its reference page shows the form.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C please',
    silent: 'run "a.csv"\nstep First 640..800 °C # please',
  },
  {
    code: 'decimal-comma',
    severity: 'error',
    effect: null,
    title: 'A comma stands between digits',
    explanation:
      'Numbers in a gloss are written with a point, whatever the data file uses: `20,052` could be twenty or twenty thousand. The line is not used. Write a point; the decimal sign of the data file is the business of `reading`.',
    limits: [],
    rules: ['A15'],
    fires: 'run "a.csv"\n  mass 20,052 mg',
    silent: 'run "a.csv"\n  mass 20.052 mg',
  },
  {
    code: 'range-with-hyphen',
    severity: 'error',
    effect: null,
    title: 'A range is written with a hyphen',
    explanation:
      'A hyphen between two numbers reads as a minus. Ranges are written with two points, as in `640..800 °C`.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640-800 °C',
    silent: 'run "a.csv"\nstep First 640..800 °C',
  },
  {
    code: 'role-missing',
    severity: 'error',
    effect: null,
    title: 'The file does not say what it is',
    explanation:
      'The first statement is `run "FILE"` for the gloss of a measured run or `method "TITLE"` for a method. Without it nothing can be evaluated.',
    limits: [],
    rules: [],
    fires: 'step First 640..800 °C',
    silent: 'run "a.csv"\nstep First 640..800 °C',
  },
  {
    code: 'later-word',
    severity: 'error',
    effect: null,
    title: 'The word is kept for a later release',
    explanation:
      'The language sets this word aside for a statement that this release does not evaluate. Nothing is computed from the line; remove it, or keep its content in a `note`.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nkinetics "series.gloss"',
    silent: 'run "a.csv"\nnote "kinetics are evaluated elsewhere"',
  },
]);
