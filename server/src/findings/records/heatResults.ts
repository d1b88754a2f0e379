import { ofFamily } from '../record';

/** Heat-flow peaks: baseline, sign, and what the peak is. */
export const peakResultRecords = ofFamily('results', true, [
  {
    code: 'baseline-crosses-curve',
    severity: 'error',
    effect: 'apparent',
    title: 'The baseline crosses the curve between the limits',
    explanation:
      'Part of the area counts negative: the curve lies on the wrong side of the baseline by more than {0} of the height, and by more than {1} times the noise of that distance. Move the limit to the crossing named in the message, or choose another baseline.',
    limits: [
      { value: 1, unit: '%', meaning: 'depth of the crossing relative to the height' },
      { value: 5, unit: '', meaning: 'depth in multiples of its noise' },
    ],
    rules: ['D01'],
    fires: ['run "a.csv"\n  endothermic up\npeak P 200..262 °C', 'a slope at 205 °C lies below the straight baseline'],
    silent: ['run "a.csv"\n  endothermic up\npeak P 215..262 °C', 'the curve stays on one side'],
  },
  {
    code: 'baseline-not-converged',
    severity: 'error',
    effect: 'apparent',
    title: 'The sigmoidal baseline does not settle',
    explanation:
      'Its share of area passed left the range from 0 to 1 or kept changing, so the area is not defined by it. The limits lie on the effect, or two effects of opposite sign share the window. Move the limits, or use another baseline.',
    limits: [],
    rules: [],
    fires: [
      'run "a.csv"\n  endothermic up\npeak P 220..245 °C\n  baseline sigmoidal',
      'the upper limit lies on the flank',
    ],
    silent: [
      'run "a.csv"\n  endothermic up\npeak P 215..262 °C\n  baseline sigmoidal',
      'both limits lie on level stretches',
    ],
  },
  {
    code: 'baseline-matters',
    severity: 'warning',
    effect: null,
    title: 'The area depends on the kind of baseline',
    explanation:
      'Straight, one-sided and sigmoidal baselines give areas that differ by more than {0}. The choice belongs into the uncertainty and needs a reason. Choose the kind that suits the effect, and say why in a `note`.',
    limits: [{ value: 3, unit: '%', meaning: 'spread of the areas over the baselines' }],
    rules: ['D03'],
    fires: ['run "a.csv"\n  endothermic up\npeak P 640..800 °C', 'areas between 391 and 432 J/g'],
    silent: ['run "a.csv"\n  endothermic up\npeak P 215..262 °C', 'areas between 43.8 and 44.2 J/g'],
  },
  {
    code: 'effect-contradicts',
    severity: 'warning',
    effect: null,
    title: 'The peak points the other way than expected',
    explanation:
      '`expect` and the sign of the area disagree. Either the direction declared with `endothermic` is wrong, and with it every sign in this run, or the effect is another.',
    limits: [],
    rules: ['D17'],
    fires: ['run "a.csv"\n  endothermic down\npeak Melting 215..262 °C\n  expect endothermic', 'the melting points up'],
    silent: ['run "a.csv"\n  endothermic up\npeak Melting 215..262 °C\n  expect endothermic', 'the melting points up'],
  },
  {
    code: 'onset-unstable',
    severity: 'warning',
    effect: null,
    title: 'The onset depends on the fit',
    explanation:
      'With the span and the smoothing changed by {1} either way, the onset moves by more than {0}. The flank is not straight or the level before it too short. State the spread, or widen the span.',
    limits: [
      { value: 2, unit: 'K', meaning: 'movement of the onset' },
      { value: 20, unit: '%', meaning: 'change of span and smoothing tried' },
    ],
    rules: ['M16'],
    fires: ['run "a.csv"\nonset Start 150..320 °C\n  of mass', 'between 241.0 and 244.5 °C'],
    silent: ['run "a.csv"\nonset Start 150..320 °C\n  of mass', 'between 241.0 and 241.6 °C'],
  },
  {
    code: 'onset-without-peak',
    severity: 'note',
    effect: null,
    title: 'An onset is used alone for a broad transition',
    explanation:
      'The leading flank is more than {0} wide, so the onset says little about where the transition happens. Use the peak temperature beside it.',
    limits: [{ value: 15, unit: 'K', meaning: 'distance from onset to peak' }],
    rules: ['D06'],
    fires: [
      'run "a.csv"\n  endothermic up\npeak Melting 90..145 °C\nrequire Melting.onset in 100..120 °C',
      'onset 112 °C, peak 132 °C',
    ],
    silent: [
      'run "a.csv"\n  endothermic up\npeak Melting 90..145 °C\nrequire Melting.onset in 100..120 °C\nrequire Melting.peak in 130..134 °C',
      'onset 112 °C, peak 132 °C',
    ],
  },
  {
    code: 'mass-lost-before-peak',
    severity: 'warning',
    effect: null,
    title: 'The specimen weighs less by the time of the peak',
    explanation:
      'More than {0} of the initial mass is lost before the window, but the heat is divided by the initial mass. Say which mass is meant: `per mass at start`, or keep the initial mass with a reason.',
    limits: [{ value: 1, unit: '%', meaning: 'loss before the window, of the initial mass' }],
    rules: ['D07'],
    fires: ['run "a.csv"\n  endothermic down\npeak Water 420..680 °C', '3.1 % is lost before 420 °C'],
    silent: [
      'run "a.csv"\n  endothermic down\npeak Water 420..680 °C\n  per mass at start',
      '3.1 % is lost before 420 °C',
    ],
  },
  {
    code: 'freezing-undercooled',
    severity: 'warning',
    effect: null,
    title: 'A freezing onset stands for an equilibrium temperature',
    explanation:
      'The onset on cooling lies more than {0} below the onset of the melting on heating: the melt was undercooled, and its freezing temperature depends on nuclei and rate. Use the melting, and report the undercooling.',
    limits: [{ value: 2, unit: 'K', meaning: 'melting onset less freezing onset' }],
    rules: ['D09'],
    fires: [
      'run "a.csv"\n  endothermic up\npeak Melting 560..620 °C\npeak Freezing 540..600 °C in cooling 1\nrequire Freezing.onset in 565..575 °C',
      'onsets 571 and 566 °C',
    ],
    silent: [
      'run "a.csv"\n  endothermic up\npeak Melting 560..620 °C\npeak Freezing 540..600 °C in cooling 1\nrequire Melting.onset in 565..575 °C',
      'onsets 571 and 566 °C',
    ],
  },
  {
    code: 'self-heating',
    severity: 'warning',
    effect: 'apparent',
    title: 'The specimen runs ahead of the programme',
    explanation:
      'In an exothermic peak the measured temperature lies more than {0} above the ramp on either side. The specimen heats itself; its temperatures and rates are those of its own fire. Use less specimen.',
    limits: [{ value: 1, unit: 'K', meaning: 'excess over the ramp' }],
    rules: ['D10'],
    fires: ['run "a.csv"\n  endothermic up\npeak Burning 420..520 °C', 'the temperature runs 3 K ahead at 470 °C'],
    silent: ['run "a.csv"\n  endothermic up\npeak Burning 420..520 °C', 'the temperature runs 0.4 K ahead at 470 °C'],
  },
  {
    code: 'peak-apart-from-rate',
    severity: 'warning',
    effect: null,
    title: 'Heat-flow peak and mass loss do not coincide',
    explanation:
      'In windows that cover each other, the heat-flow peak and the largest rate of mass loss are more than {0} apart. They are not the same event, or the clocks of two joined files differ. Assign them separately, or set `offset`.',
    limits: [{ value: 5, unit: 'K', meaning: 'distance of the peak from the largest rate' }],
    rules: ['D11'],
    fires: ['run "a.csv"\n  endothermic up\nstep First 640..800 °C\npeak Heat 640..800 °C', '768 and 776 °C'],
    silent: ['run "a.csv"\n  endothermic up\nstep First 640..800 °C\npeak Heat 640..800 °C', '768 and 770 °C'],
  },
  {
    code: 'exo-and-endo-together',
    severity: 'error',
    effect: 'apparent',
    title: 'One area holds an endothermic and an exothermic part',
    explanation:
      'Both sides of the baseline hold an effect, the smaller being more than {0} of the larger. They cancel in the sum. Evaluate them in two windows.',
    limits: [{ value: 5, unit: '%', meaning: 'smaller part relative to the larger' }],
    rules: ['D13'],
    fires: ['run "a.csv"\n  endothermic up\npeak All 100..262 °C', '-31 J/g at 128 °C and 44 J/g at 250 °C'],
    silent: [
      'run "a.csv"\n  endothermic up\npeak Cold 105..150 °C\npeak Melting 215..262 °C',
      '-31 J/g at 128 °C and 44 J/g at 250 °C',
    ],
  },
  {
    code: 'step-under-straight-baseline',
    severity: 'warning',
    effect: null,
    title: 'A straight baseline bridges a step',
    explanation:
      'The level after the peak differs from the level before it, continued to the peak, by more than {0} of its height: heat capacity or mass changed. A straight line then cuts area off or adds some. Use `baseline sigmoidal`.',
    limits: [{ value: 5, unit: '%', meaning: 'gap between the levels at the peak, relative to its height' }],
    rules: ['D15'],
    fires: ['run "a.csv"\n  endothermic up\npeak P 150..180 °C', 'the level is 0.7 mW higher after a peak of 10 mW'],
    silent: [
      'run "a.csv"\n  endothermic up\npeak P 150..180 °C\n  baseline sigmoidal',
      'the level is 0.7 mW higher after a peak of 10 mW',
    ],
  },
]);
