import { ofFamily } from '../record';

/** Steps, residues and crossings: whether the number is one, and of what. */
export const massResultRecords = ofFamily('results', true, [
  {
    code: 'below-noise',
    severity: 'note',
    effect: null,
    title: 'The effect is not distinguishable from noise or blank',
    explanation:
      'Its size is below x, the larger of {0}·√2 times the noise and {1} times the repeatability of the blank. It is reported as not detected (< x), which is a result, and its temperatures have no value.',
    limits: [
      { value: 5, unit: '', meaning: 'size in multiples of √2 times the noise' },
      { value: 3, unit: '', meaning: 'size in multiples of the repeatability of the blank' },
    ],
    rules: ['M06', 'B08', 'D05', 'G03'],
    fires: ['run "a.csv"\nstep Trace 300..400 °C', 'the step is 2 µg with a noise of 0.4 µg'],
    silent: ['run "a.csv"\nstep Trace 300..400 °C', 'the step is 20 µg with a noise of 0.4 µg'],
  },
  {
    code: 'boundary-not-level',
    severity: 'warning',
    effect: 'apparent',
    title: 'Two steps are divided where the mass still falls',
    explanation:
      'At the boundary the rate is above {0} of the smaller of the two maxima beside it: the effects overlap, and any division between them is a choice. A step that truly takes 14.8 % can read 25.5 %. Separate them by gas, lid or rate, or report the sum: `step Both = First + Second`.',
    limits: [{ value: 10, unit: '%', meaning: 'rate at the boundary relative to the lower maximum' }],
    rules: ['M12'],
    fires: [
      'run "a.csv"\nstep First 640..769 °C\nstep Second 769..860 °C',
      'at 769 °C the rate is a third of the lower maximum',
    ],
    silent: ['run "a.csv"\nstep First 640..800 °C\nstep Second 800..960 °C', 'at 800 °C the rate is nearly zero'],
  },
  {
    code: 'two-rate-maxima',
    severity: 'warning',
    effect: 'apparent',
    title: 'The rate has more than one maximum in the window',
    explanation:
      'Besides the largest maximum there is one that stands out by more than {0} of it. The window holds more than one effect; its loss is their sum, and one onset does not describe it. Split the window, or name it as a combined effect.',
    limits: [{ value: 5, unit: '%', meaning: 'prominence of a second maximum relative to the largest' }],
    rules: ['M11', 'M14'],
    fires: ['run "a.csv"\nstep All 640..960 °C', 'two losses, at 768 and at 930 °C'],
    silent: ['run "a.csv"\nstep First 640..800 °C', 'one loss, at 768 °C'],
  },
  {
    code: 'residue-changing',
    severity: 'warning',
    effect: 'apparent',
    title: 'The mass still changes where the residue is read',
    explanation:
      'The slope there is above {0}, so the residue depends on the moment of reading. Hold longer, or state it as not constant.',
    limits: [{ value: 0.02, unit: '%/min', meaning: 'slope of the mass at the residue' }],
    rules: ['M07', 'B09'],
    fires: ['run "a.csv"\nresidue Ash at end of hold 1', 'the mass still falls by 0.05 %/min'],
    silent: ['run "a.csv"\nresidue Ash at end of hold 1', 'the mass falls by 0.004 %/min'],
  },
  {
    code: 'mass-balance',
    severity: 'warning',
    effect: null,
    title: 'Steps and residue do not add up to the whole',
    explanation:
      'Losses and residue together differ from 100 % by more than {0} and by more than {1} times the uncertainty of the sum. Something is lost outside the windows, or counted twice. The message names the stretch with the largest unassigned change.',
    limits: [
      { value: 0.1, unit: '%', meaning: 'difference from 100 %' },
      { value: 3, unit: '', meaning: 'difference in multiples of its standard uncertainty' },
    ],
    rules: ['M04'],
    fires: [
      'run "a.csv"\nstep First 640..760 °C\nresidue Rest at 960 °C',
      '14.8 % lost inside, 30 % after the window, 55.2 % left',
    ],
    silent: [
      'run "a.csv"\nstep First 640..800 °C\nstep Second 800..960 °C\nresidue Rest at 980 °C',
      '14.8 % and 30.0 % lost, 55.2 % left',
    ],
  },
  {
    code: 'smoothing-too-wide',
    severity: 'warning',
    effect: null,
    title: 'The smoothing is wide compared with the effect',
    explanation:
      'The smoothing of the derivative takes more than {0} from the largest rate or from the flank of an effect this wide, or is wider than {1}. Rates come out too low, onsets and inflections move. Steps and areas are never smoothed and do not change. Use a narrower `smooth`.',
    limits: [
      { value: 5, unit: '%', meaning: 'part of the largest rate or of the steepest flank that is lost' },
      { value: 15, unit: 'K', meaning: 'widest smoothing' },
    ],
    rules: ['M09'],
    fires: ['run "a.csv"\nstep First 640..800 °C\n  smooth 20 K', 'the maximum of the rate is 40 K wide'],
    silent: ['run "a.csv"\nstep First 640..800 °C\n  smooth 5 K', 'the maximum of the rate is 40 K wide'],
  },
  {
    code: 'regain-on-cooling',
    severity: 'warning',
    effect: null,
    title: 'The residue takes up mass before it is read',
    explanation:
      'In cooling the mass rises by more than {0} of the initial mass, from gas or moisture, and the residue is read after it. Read it at the end of the hot hold.',
    limits: [{ value: 0.1, unit: '%', meaning: 'gain in cooling, of the initial mass' }],
    rules: ['M18'],
    fires: ['run "a.csv"\nresidue Rest at end of cooling 1', 'in carbon dioxide the mass rises by 2 % below 850 °C'],
    silent: ['run "a.csv"\nresidue Rest at end of hold 1', 'in carbon dioxide the mass rises by 2 % below 850 °C'],
  },
  {
    code: 'crossing-in-noise',
    severity: 'warning',
    effect: 'apparent',
    title: 'The crossing lies within the noise of the start',
    explanation:
      'The level is less than {0} times the noise away from where the signal starts, so the first passage is that of the noise. Choose a level farther off.',
    limits: [{ value: 5, unit: '', meaning: 'distance of the level from the start, in multiples of the noise' }],
    rules: ['M19'],
    fires: ['run "a.csv"\ncrossing T001 mass = 99.99 %', 'the noise is 0.004 %'],
    silent: ['run "a.csv"\ncrossing T1 mass = 99 %', 'the noise is 0.004 %'],
  },
  {
    code: 'crossing-includes-moisture',
    severity: 'warning',
    effect: null,
    title: 'The crossing counts moisture',
    explanation:
      'A step before the crossing takes more than {0}, and the level is a part of the undried mass, so a damp specimen crosses earlier. Refer to the dried mass with `per dried mass after STEP`.',
    limits: [
      { value: 0.1, unit: '%', meaning: 'moisture from which the basis matters' },
      { value: 200, unit: '°C', meaning: 'end of a step that counts as drying' },
    ],
    rules: ['M19'],
    fires: ['run "a.csv"\nstep Water 40..180 °C\ncrossing T5 mass = 95 %', 'the step is 1.6 %'],
    silent: [
      'run "a.csv"\nstep Water 40..180 °C\ncrossing T5 mass = 95 %\n  per dried mass after Water',
      'the step is 1.6 %',
    ],
  },
]);
