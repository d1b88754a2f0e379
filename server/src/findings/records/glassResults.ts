import { ofFamily } from '../record';

/** Glass transitions: history, size, and the lines either side. */
export const glassResultRecords = ofFamily('results', true, [
  {
    code: 'relaxation-overshoot',
    severity: 'warning',
    effect: null,
    title: 'A relaxation peak sits on the glass transition',
    explanation:
      'The curve overshoots the line after the step by more than {0} of the step height. Aging left it, and it moves the half-height temperature. Use `by equal areas`, or measure again after cooling at a known rate.',
    limits: [{ value: 10, unit: '%', meaning: 'overshoot relative to the step height' }],
    rules: ['G05'],
    fires: ['run "a.csv"\n  endothermic up\nglass Tg 60..95 °C in heating 1', 'an overshoot of a quarter of the step'],
    silent: ['run "a.csv"\n  endothermic up\nglass Tg 60..95 °C in heating 2', 'an overshoot of 3 % of the step'],
  },
  {
    code: 'history-unknown',
    severity: 'note',
    effect: null,
    title: 'How the specimen was cooled before is not on record',
    explanation:
      'A glass transition in the first heating depends on the cooling and the storage before, which the run does not hold. Say it in a `note` of the statement, or evaluate a heating that follows a cooling in the same run.',
    limits: [],
    rules: ['G02'],
    fires: ['run "a.csv"\n  endothermic up\nglass Tg 60..95 °C in heating 1', 'nothing precedes heating 1'],
    silent: [
      'run "a.csv"\n  endothermic up\nglass Tg 60..95 °C in heating 1\n  note "as received, stored 14 days at 23 °C"',
      'nothing precedes heating 1',
    ],
  },
  {
    code: 'glass-step-small',
    severity: 'warning',
    effect: null,
    title: 'The step of the glass transition is small',
    explanation:
      'The change of heat capacity is below {0}, near what lines drawn by another hand would give. Use more specimen or a higher rate.',
    limits: [{ value: 0.02, unit: 'J/(g·K)', meaning: 'step in heat capacity' }],
    rules: ['G03'],
    fires: ['run "a.csv"\n  mass 8.200 mg\n  endothermic up\nglass Tg 60..95 °C', 'a step of 0.015 J/(g·K)'],
    silent: ['run "a.csv"\n  mass 8.200 mg\n  endothermic up\nglass Tg 60..95 °C', 'a step of 0.29 J/(g·K)'],
  },
  {
    code: 'lines-too-short',
    severity: 'warning',
    effect: null,
    title: 'The lines beside the step are short',
    explanation:
      'A line before or after the glass transition rests on less than {0}, and its slope decides where it meets the tangent. Widen the window or the `span`.',
    limits: [{ value: 10, unit: 'K', meaning: 'length of each line' }],
    rules: ['G04'],
    fires: 'run "a.csv"\n  endothermic up\nglass Tg 60..95 °C\n  span 8 K',
    silent: 'run "a.csv"\n  endothermic up\nglass Tg 60..95 °C\n  span 15 K',
  },
  {
    code: 'glass-near-start',
    severity: 'warning',
    effect: 'apparent',
    title: 'The glass transition is close to the start of the heating',
    explanation:
      'It lies less than {0} above the start of its segment, where the heat flow is still settling; the line before it is a transient. Start the heating lower.',
    limits: [{ value: 20, unit: 'K', meaning: 'distance of the transition from the start of its segment' }],
    rules: ['G06'],
    fires: ['run "a.csv"\n  endothermic up\nglass Tg 30..70 °C', 'onset at 45 °C, the heating starts at 28 °C'],
    silent: ['run "a.csv"\n  endothermic up\nglass Tg 30..95 °C', 'onset at 74 °C, the heating starts at 28 °C'],
  },
  {
    code: 'mass-lost-before-glass',
    severity: 'warning',
    effect: null,
    title: 'The specimen lost mass up to the glass transition',
    explanation:
      'By the end of the window more than {0} of the initial mass is gone. Water softens most glasses, so the transition is that of a specimen that was drying. Dry it before, or seal it.',
    limits: [{ value: 0.3, unit: '%', meaning: 'loss up to the end of the window, of the initial mass' }],
    rules: ['G06'],
    fires: ['run "a.csv"\n  endothermic up\nglass Tg 60..140 °C', '0.8 % is lost below 140 °C'],
    silent: ['run "a.csv"\n  endothermic up\nglass Tg 60..140 °C', '0.1 % is lost below 140 °C'],
  },
  {
    code: 'glass-rates-differ',
    severity: 'note',
    effect: null,
    title: 'Glass transitions at different rates are compared',
    explanation:
      'The two were measured at rates for which a shift of more than {0} is to be expected, taking {1} for a tenfold rate (common practice for polymers; inorganic glasses shift more). Compare at one rate, or correct with the activation energy: shift = R·T²·ln(rate ratio)/E.',
    limits: [
      { value: 1, unit: 'K', meaning: 'expected shift' },
      { value: 3, unit: 'K', meaning: 'shift for a tenfold rate' },
    ],
    rules: ['G07'],
    fires: [
      'run "a.csv"\n  endothermic up\nglass A 60..95 °C in heating 1\nglass B 60..95 °C in heating 2\nlet shift = B.midpoint - A.midpoint',
      'heated at 5 and at 20 K/min',
    ],
    silent: [
      'run "a.csv"\n  endothermic up\nglass A 60..95 °C in heating 1\nglass B 60..95 °C in heating 2\nlet shift = B.midpoint - A.midpoint',
      'heated at 10 and at 10 K/min',
    ],
  },
]);
