import { ofFamily } from '../record';

/** Zero-line runs: whether there is one, whether it fits, whether it is one. */
export const blankRecords = ofFamily('method', true, [
  {
    code: 'blank-twice',
    severity: 'error',
    effect: 'fails',
    title: 'The blank is subtracted twice',
    explanation:
      'Either two `blank` statements name one file or one data text, or the export was corrected before: on the level stretches the corrected mass is then the blank upside down, with a correlation beyond -{0} and about its full size. Remove one subtraction: delete the `blank` statement, or export the uncorrected signal.',
    limits: [
      { value: 0.9, unit: '', meaning: 'size of the negative correlation of the corrected mass with the blank' },
    ],
    rules: ['B06'],
    fires: ['run "a.csv"\nblank "z.gloss"', 'the exported mass has the blank subtracted already'],
    silent: ['run "a.csv"\nblank "z.gloss"', 'the exported mass still contains the lift of the gas'],
  },
  {
    code: 'blank-mismatch',
    severity: 'warning',
    effect: 'apparent',
    title: 'The blank was measured under other conditions',
    explanation:
      'Gas, flow (by more than {1}), crucible, lid, rate (by more than {0}) or the temperature at equal times (by more than {2}) of the blank differ from the run. A blank in nitrogen under a run in carbon dioxide leaves an apparent gain of some 40 µg at 1000 °C. Attach a blank of the same conditions.',
    limits: [
      { value: 2, unit: '%', meaning: 'difference of the rates' },
      { value: 10, unit: '%', meaning: 'difference of the flows' },
      { value: 5, unit: 'K', meaning: 'difference of the temperatures at equal times' },
    ],
    rules: ['B02'],
    fires: ['run "a.csv"\n  atmosphere carbon dioxide 50 mL/min\nblank "z.gloss"', 'the blank was run in nitrogen'],
    silent: [
      'run "a.csv"\n  atmosphere carbon dioxide 50 mL/min\nblank "z.gloss"',
      'the blank was run in carbon dioxide',
    ],
  },
  {
    code: 'blank-undescribed',
    severity: 'warning',
    effect: 'apparent',
    title: 'Nothing is said about how the blank was measured',
    explanation:
      'A bare data file does not say its crucible or gas, so nobody can tell whether it fits. Write a gloss for the empty crucible (`sample none`) and name that, or give `crucible` and `atmosphere` under `blank`.',
    limits: [],
    rules: ['B02'],
    fires: 'run "a.csv"\nblank "z.csv"',
    silent: 'run "a.csv"\nblank "z.csv"\n  crucible alumina 85 µL, no lid\n  atmosphere nitrogen 50 mL/min',
  },
  {
    code: 'no-blank',
    severity: 'warning',
    effect: null,
    title: 'A small step is evaluated without a blank',
    explanation:
      'The step is below {0} of the initial mass or below {1} times the buoyancy estimated for its range, and no blank is subtracted: what the balance shows without a specimen is a good part of it. Attach a blank.',
    limits: [
      { value: 2, unit: '%', meaning: 'step below which a blank is asked for' },
      { value: 10, unit: '', meaning: 'step in multiples of the estimated buoyancy' },
    ],
    rules: ['B01'],
    fires: ['run "a.csv"\n  mass 20.052 mg\n  atmosphere nitrogen\nstep Water 40..180 °C', 'the step is 0.4 %'],
    silent: [
      'run "a.csv"\n  mass 20.052 mg\n  atmosphere nitrogen\nblank "z.gloss"\nstep Water 40..180 °C',
      'the step is 0.4 %',
    ],
  },
  {
    code: 'blank-old',
    severity: 'warning',
    effect: null,
    title: 'The blank was not measured near the run in time',
    explanation:
      'More than {0} lie between the dates of the blank and of the run. Sensors are changed, lines and furnaces age, and the zero line with them. Use a newer blank.',
    limits: [{ value: 168, unit: 'h', meaning: 'time between blank and run' }],
    rules: ['B03'],
    fires: ['run "a.csv"\n  measured 2026-10-20\nblank "z.gloss"', '`z.gloss` says `measured 2026-10-02`'],
    silent: ['run "a.csv"\n  measured 2026-10-05\nblank "z.gloss"', '`z.gloss` says `measured 2026-10-02`'],
  },
  {
    code: 'blank-too-short',
    severity: 'warning',
    effect: null,
    title: 'The blank does not reach all of the run',
    explanation:
      'Readings of the run that no blank reaches cannot be corrected and are left out of every evaluation. A window there has no points. Measure the blank over the whole programme.',
    limits: [],
    rules: ['B04'],
    fires: ['run "a.csv"\nblank "z.gloss"', 'the run ends at 100 min, the blank at 95 min'],
    silent: ['run "a.csv"\nblank "z.gloss"', 'the run ends at 95 min, the blank at 100 min'],
  },
  {
    code: 'blanks-differ',
    severity: 'warning',
    effect: null,
    title: 'Two blanks of the run disagree',
    explanation:
      'Somewhere in the range they are more than {0} (or, in heat flow, {1}) apart after each is set to zero at its start. Their mean is no better than that. One of them may be contaminated; measure a third.',
    limits: [
      { value: 10, unit: 'µg', meaning: 'difference of two blanks in mass' },
      { value: 0.3, unit: 'mW', meaning: 'difference of two blanks in heat flow' },
    ],
    rules: ['B05'],
    fires: ['run "a.csv"\nblank "z1.gloss"\nblank "z2.gloss"', 'at 800 °C they are 14 µg apart'],
    silent: ['run "a.csv"\nblank "z1.gloss"\nblank "z2.gloss"', 'nowhere are they more than 6 µg apart'],
  },
  {
    code: 'blank-of-fraction',
    severity: 'warning',
    effect: 'apparent',
    title: 'A blank in percentages',
    explanation:
      'The mass of the blank or of the run is exported as a fraction. A blank is a mass (so many µg of lift), and a percentage of an empty crucible is no mass. Export both in mg.',
    limits: [],
    rules: ['B11'],
    fires: ['run "a.csv"\nblank "z.gloss"', 'the mass of `z` is exported in %'],
    silent: ['run "a.csv"\nblank "z.gloss"', 'both masses are exported in mg'],
  },
  {
    code: 'blank-has-effect',
    severity: 'warning',
    effect: null,
    title: 'The blank shows an effect of its own',
    explanation:
      'Its mass changes within a short stretch by more than {0} times its noise beyond the smooth lift of the gas: residue in the crucible, or condensate. The effect is subtracted from the specimen. Clean the crucible and repeat the blank.',
    limits: [
      { value: 5, unit: '', meaning: 'excess of the local rate in multiples of its scatter' },
      { value: 10, unit: 'µg', meaning: 'smallest change counted as an effect' },
    ],
    rules: ['B14'],
    fires: ['run "a.csv"\nblank "z.gloss"', 'the blank loses 30 µg between 420 and 460 °C'],
    silent: ['run "a.csv"\nblank "z.gloss"', 'the blank rises smoothly by 75 µg'],
  },
  {
    code: 'effect-in-blank',
    severity: 'error',
    effect: 'apparent',
    title: 'The peak is in the blank as well',
    explanation:
      'In the same window the heat flow of the empty crucible has a peak of more than {0} of this one. It belongs to the crucible, the sensor or a contamination. Clean and repeat; a subtraction does not make it a property of the specimen.',
    limits: [
      { value: 10, unit: '%', meaning: 'height in the blank relative to the peak' },
      { value: 5, unit: '', meaning: 'height in the blank in multiples of its noise' },
    ],
    rules: ['D16'],
    fires: [
      'run "a.csv"\n  endothermic up\nblank "z.gloss"\n  subtract heatflow\npeak P 560..590 °C',
      'the blank has a quarter of the peak',
    ],
    silent: [
      'run "a.csv"\n  endothermic up\nblank "z.gloss"\n  subtract heatflow\npeak P 560..590 °C',
      'the blank is smooth there',
    ],
  },
  {
    code: 'gas-switch-step',
    severity: 'note',
    effect: null,
    title: 'The gas switch itself moves the balance',
    explanation:
      'The change of density at the switch shifts the reading by an estimated {0} or more, with no change of the specimen. A blank with the same switch removes it. Else keep step windows clear of it.',
    limits: [
      { value: 1, unit: 'µg', meaning: 'estimated shift' },
      { value: 0.085, unit: 'mL', meaning: 'volume of carrier and crucible taken for the estimate' },
    ],
    rules: ['B13'],
    fires: ['run "a.csv"\n  atmosphere nitrogen\n  atmosphere oxygen from 60 min', 'at 60 min the run is at 400 °C'],
    silent: [
      'run "a.csv"\n  atmosphere nitrogen\n  atmosphere oxygen from 60 min\nblank "z.gloss"',
      'the blank has the same switch',
    ],
  },
  {
    code: 'gain-at-start',
    severity: 'warning',
    effect: null,
    title: 'The specimen seems to gain mass at the start',
    explanation:
      'Between {1} and {2} in inert gas the mass rises by more than {0} times the repeatability of the blank. Nothing is there to be taken up: it is the lift of the gas, flow, or settling, not fully removed. Repeat the blank under the same conditions, or start the first window later.',
    limits: [
      { value: 3, unit: '', meaning: 'gain in multiples of the repeatability of the blank' },
      { value: 30, unit: '°C', meaning: 'start of the stretch looked at' },
      { value: 150, unit: '°C', meaning: 'end of the stretch looked at' },
    ],
    rules: ['B07'],
    fires: [
      'run "a.csv"\n  atmosphere nitrogen 50 mL/min\nblank "z.gloss"\n  repeatability 4 µg',
      'the mass rises by 15 µg up to 120 °C',
    ],
    silent: [
      'run "a.csv"\n  atmosphere nitrogen 50 mL/min\nblank "z.gloss"\n  repeatability 4 µg',
      'the mass rises by 9 µg up to 120 °C',
    ],
  },
]);
