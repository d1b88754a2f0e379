import { ofFamily } from '../record';

/** Masses that cannot be: gains, losses and shares that the specimen does not allow. */
export const massPlausibilityRecords = ofFamily('results', true, [
  {
    code: 'step-within-buoyancy',
    severity: 'error',
    effect: 'apparent',
    title: 'The step is no larger than the lift of the gas allows',
    explanation:
      'No blank is subtracted, and the step is below {0} of the buoyancy estimated for its range. The balance would show as much with an empty crucible. Attach a blank.',
    limits: [
      { value: 25, unit: '%', meaning: 'step relative to the estimated buoyancy' },
      { value: 0.085, unit: 'mL', meaning: 'volume of carrier and crucible taken for the estimate' },
    ],
    rules: ['B08'],
    fires: [
      'run "a.csv"\n  atmosphere nitrogen\nstep Trace 300..900 °C',
      'the mass changes by 4 µg where lift alone gives 27 µg',
    ],
    silent: [
      'run "a.csv"\n  atmosphere nitrogen\nstep Trace 300..900 °C',
      'the mass changes by 40 µg where lift alone gives 27 µg',
    ],
  },
  {
    code: 'drift-in-hold',
    severity: 'warning',
    effect: null,
    title: 'The mass drifts in the last hold',
    explanation:
      'No statement evaluates a reaction there, yet the mass changes by more than {0}: an unfinished reaction or a drift of the balance, which then is in every step. Hold longer, or evaluate the change.',
    limits: [{ value: 0.02, unit: '%/min', meaning: 'slope of the mass in the last hold' }],
    rules: ['B09'],
    fires: ['run "a.csv"\nstep First 640..800 °C', 'in the hold after the heating the mass falls by 0.03 %/min'],
    silent: ['run "a.csv"\nstep First 640..800 °C', 'in the hold after the heating the mass falls by 0.01 %/min'],
  },
  {
    code: 'mass-above-initial',
    severity: 'warning',
    effect: 'apparent',
    title: 'The specimen weighs more than was weighed in',
    explanation:
      'The mass exceeds the initial mass by more than {0}, and no step evaluates a gain. Either the mass or the zero line is wrong, or the specimen takes something up. Check `mass`, the blank, and the first minutes.',
    limits: [{ value: 0.3, unit: '%', meaning: 'excess over the initial mass' }],
    rules: ['M08'],
    fires: ['run "a.csv"\n  mass 10.00 mg\nstep First 300..500 °C', 'at 200 °C the balance shows 10.04 mg'],
    silent: ['run "a.csv"\n  mass 10.00 mg\nstep First 300..500 °C', 'at 200 °C the balance shows 10.02 mg'],
  },
  {
    code: 'residue-negative',
    severity: 'error',
    effect: 'apparent',
    title: 'Less than nothing is left',
    explanation:
      'The residue is below -{0} of its basis: more seems to be lost than was there. The mass, the blank, or matter lost from the crucible itself is the cause. Percentages of this run are wrong by at least that much.',
    limits: [{ value: 0.1, unit: '%', meaning: 'negative residue' }],
    rules: ['M08'],
    fires: ['run "a.csv"\n  mass 5.000 mg\nresidue Ash at 800 °C', 'the balance shows -0.008 mg'],
    silent: ['run "a.csv"\n  mass 5.000 mg\nresidue Ash at 800 °C', 'the balance shows -0.003 mg'],
  },
  {
    code: 'fraction-impossible',
    severity: 'error',
    effect: 'apparent',
    title: 'A share is above the whole or below nothing',
    explanation:
      'A value in % lies above {0} or below zero by more than its expanded uncertainty, or shares computed through formulas add up to more than {0}. The reaction assumed is not the one that happened, or two phases were computed as if each were alone. Solve them together.',
    limits: [{ value: 100, unit: '%', meaning: 'the whole' }],
    rules: ['M13'],
    fires: ['run "a.csv"\nstep First 640..800 °C\nlet magnesite = First.loss * M(MgCO3) / M(CO2)', 'the step is 55 %'],
    silent: ['run "a.csv"\nstep First 640..800 °C\nlet magnesite = First.loss * M(MgCO3) / M(CO2)', 'the step is 51 %'],
  },
  {
    code: 'carbonate-in-burn-off',
    severity: 'warning',
    effect: null,
    title: 'A carbonate decomposes where carbon is burnt off',
    explanation:
      'The window reaches above {0} in an oxidising gas, `contains` names a carbonate, and the run did not decompose it beforehand in inert gas at {1} or more. Its carbon dioxide counts as carbon. Heat to {1} in inert gas, cool, then oxidise.',
    limits: [
      { value: 600, unit: '°C', meaning: 'temperature from which a carbonate may decompose' },
      { value: 800, unit: '°C', meaning: 'inert heating that decomposes it beforehand' },
    ],
    rules: ['M14'],
    fires: [
      'run "a.csv"\n  atmosphere nitrogen\n  atmosphere air from heating 2\n  contains polyethylene, carbon black, calcite\nstep Black 430..680 °C in heating 2',
      'the inert heating ended at 600 °C',
    ],
    silent: [
      'run "a.csv"\n  atmosphere nitrogen\n  atmosphere air from heating 2\n  contains polyethylene, carbon black, calcite\nstep Black 430..680 °C in heating 2',
      'the inert heating ended at 820 °C',
    ],
  },
  {
    code: 'gain-in-inert-gas',
    severity: 'warning',
    effect: null,
    title: 'The specimen gains mass in inert gas',
    explanation:
      'Above {1} the mass rises by more than {0} of the initial mass, and by more than lift and blank explain, in a gas that should add nothing. Air leaks in, or the specimen reacts with the gas. Test for oxygen.',
    limits: [
      { value: 0.1, unit: '%', meaning: 'gain, of the initial mass' },
      { value: 300, unit: '°C', meaning: 'temperature above which a gain counts' },
    ],
    rules: ['M15'],
    fires: [
      'run "a.csv"\n  atmosphere argon 50 mL/min\nblank "z.gloss"\nstep First 100..200 °C',
      'from 400 to 700 °C the mass rises by 0.3 %',
    ],
    silent: [
      'run "a.csv"\n  atmosphere argon 50 mL/min\nblank "z.gloss"\nstep First 100..200 °C',
      'from 400 to 700 °C the mass rises by 0.03 %',
    ],
  },
  {
    code: 'loss-in-inert-hold',
    severity: 'warning',
    effect: null,
    title: 'Carbon is lost in an inert hold',
    explanation:
      'The specimen holds carbon, the gas is inert, and in a hold above {1} the mass falls by more than {0}. Carbon does not evaporate there; oxygen is present and the carbon found later is too low. Test for a leak.',
    limits: [
      { value: 0.01, unit: '%/min', meaning: 'loss in the hold' },
      { value: 500, unit: '°C', meaning: 'temperature of the hold above which a loss counts' },
    ],
    rules: ['M15'],
    fires: [
      'run "a.csv"\n  atmosphere nitrogen\n  contains polyethylene, carbon black\nresidue Ash at end of hold 1',
      'hold 1 at 600 °C loses 0.03 %/min',
    ],
    silent: [
      'run "a.csv"\n  atmosphere nitrogen\n  contains polyethylene, carbon black\nresidue Ash at end of hold 1',
      'hold 1 at 600 °C loses 0.005 %/min',
    ],
  },
]);
