import { ofFamily } from '../record';

/** Units, dimensions, temperature points and differences, fractions and their bases. Checked before data are read. */
export const unitRecords = ofFamily('units', false, [
  {
    code: 'unit-missing',
    severity: 'error',
    effect: 'fails',
    title: 'A number needs a unit',
    explanation:
      'Every number that is not a pure number carries its unit; nothing is assumed. The statement has no value until the unit is written.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  mass 20.052',
    silent: 'run "a.csv"\n  mass 20.052 mg',
  },
  {
    code: 'unknown-unit',
    severity: 'error',
    effect: 'fails',
    title: 'The unit is not known',
    explanation:
      'Units are written with a point between factors and one stroke: `J/(g·K)`. A second stroke or an unknown symbol makes the number unreadable. The message names the nearest unit that exists.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  endothermic up\nlet c = 0.36 J/g/K',
    silent: 'run "a.csv"\n  endothermic up\nlet c = 0.36 J/(g·K)',
  },
  {
    code: 'wrong-dimension',
    severity: 'error',
    effect: 'fails',
    title: 'The unit measures something else',
    explanation:
      'The two sides cannot be compared, added or used here: a mass where a temperature is due, %/min where % is due. Change the unit or the expression; nothing is converted silently.',
    limits: [],
    rules: ['M10'],
    fires: 'run "a.csv"\n  mass 20.052 K',
    silent: 'run "a.csv"\n  mass 20.052 mg',
  },
  {
    code: 'point-for-difference',
    severity: 'error',
    effect: 'fails',
    title: 'A temperature stands where a difference is due',
    explanation:
      '`5 °C` is a point on the scale, 278.15 K above absolute zero; a span or a tolerance is a difference and is written in K. Write `5 K`.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\n  smooth 5 °C',
    silent: 'run "a.csv"\nstep First 640..800 °C\n  smooth 5 K',
  },
  {
    code: 'point-arithmetic',
    severity: 'error',
    effect: 'fails',
    title: 'Temperatures cannot be combined that way',
    explanation:
      'Two temperatures in °C may be subtracted (the result is a difference in K), but not added, multiplied or divided: the answer would depend on where zero lies. Use `absolute(…)` for kelvin above absolute zero.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nlet sum = First.start + First.end',
    silent: 'run "a.csv"\nstep First 640..800 °C\nlet width = First.end - First.start',
  },
  {
    code: 'bare-number-with-fraction',
    severity: 'error',
    effect: 'fails',
    title: 'A plain number is added to, or compared with, a fraction',
    explanation:
      '`1 - First.loss` could mean one or one per cent. Mass fractions are added to and compared with numbers in %: write `100 % - First.loss`.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nlet rest = 1 - First.loss',
    silent: 'run "a.csv"\nstep First 640..800 °C\nlet rest = 100 % - First.loss',
  },
  {
    code: 'basis-mixed',
    severity: 'error',
    effect: 'fails',
    title: 'Fractions of different masses are combined',
    explanation:
      'A per cent of the initial mass and a per cent of the dried mass are different units. Their sum or comparison means nothing. Give both statements the same `per …`, or convert by the factor that links the two masses.',
    limits: [],
    rules: ['B12'],
    fires:
      'run "a.csv"\nstep Water 40..180 °C\nstep First 640..800 °C\n  per dried mass after Water\nlet both = Water.loss + First.loss',
    silent: 'run "a.csv"\nstep Water 40..180 °C\nstep First 640..800 °C\nlet both = Water.loss + First.loss',
  },
  {
    code: 'bad-formula',
    severity: 'error',
    effect: 'fails',
    title: 'The chemical formula cannot be read',
    explanation:
      'Formulas are made of elements, groups in brackets and points between parts: `CaSO4·2H2O`. Group names, isotopes and charges are not guessed at, because a molar mass that is silently wrong spoils every share computed from it.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nlet x = First.loss * M(CaMgCo3) / M(Co2x)',
    silent: 'run "a.csv"\nstep First 640..800 °C\nlet x = First.loss * M(CaMg(CO3)2) / M(CO2)',
  },
]);
