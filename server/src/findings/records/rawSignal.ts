import { ofFamily } from '../record';

/** The signals as exported: order, gaps, scale, filters, jumps. */
export const rawSignalRecords = ofFamily('data', true, [
  {
    code: 'signal-saturated',
    severity: 'error',
    effect: 'apparent',
    title: 'A signal stays at its largest or smallest value',
    explanation:
      '{0} or more readings in a row equal the extreme of the whole signal, as an amplifier or a converter at its end does. Heights, areas and rates are cut off. Measure less specimen or a wider range; where the stretch is of no interest, `mask` it.',
    limits: [{ value: 5, unit: '', meaning: 'equal extreme readings in a row' }],
    rules: ['A09'],
    fires: ['run "a.csv"\n  endothermic up\npeak P 215..262 °C', 'five readings in a row equal the largest heat flow'],
    silent: ['run "a.csv"\n  endothermic up\npeak P 215..262 °C', 'four readings in a row equal the largest heat flow'],
  },
  {
    code: 'time-not-increasing',
    severity: 'warning',
    effect: 'apparent',
    title: 'Time stands still or goes back',
    explanation:
      'Rows whose time is not later than the row before are left out. If they come from a restarted export or two runs in one file, whatever spans them is a mixture. Compare the rows named with the file.',
    limits: [{ value: 0, unit: '', meaning: 'rows left out' }],
    rules: ['A05'],
    fires: ['run "a.csv"\nstep First 640..800 °C', 'the time of row 1203 is that of row 1202'],
    silent: ['run "a.csv"\nstep First 640..800 °C', 'every row is later than the one before'],
  },
  {
    code: 'temperature-reverses',
    severity: 'warning',
    effect: 'apparent',
    title: 'The temperature turns back inside a ramp',
    explanation:
      'Within a heating (or cooling) the temperature falls (or rises) by more than {0} and by more than {1} times its noise: self-heating, sudden freezing, or a controller fault. There one temperature occurs at two times, and temperatures read there are apparent. Evaluate against time, or use less specimen or a lower rate.',
    limits: [
      { value: 0.3, unit: 'K', meaning: 'reversal inside a ramp' },
      { value: 3, unit: '', meaning: 'reversal in multiples of the noise of the temperature' },
    ],
    rules: ['A06'],
    fires: [
      'run "a.csv"\n  endothermic up\npeak Freezing 560..610 °C in cooling 1',
      'the temperature rises by 1.2 K while cooling',
    ],
    silent: [
      'run "a.csv"\n  endothermic up\npeak Freezing 560..610 °C in cooling 1',
      'the temperature rises by 0.2 K while cooling',
    ],
  },
  {
    code: 'gap-in-data',
    severity: 'warning',
    effect: 'apparent',
    title: 'Points are missing inside a window',
    explanation:
      'Two readings lie more than {0} times the usual interval apart. What happened between is unknown; areas and rates across the gap are interpolated. Export the run again at full density, or keep the window clear of the gap.',
    limits: [{ value: 3, unit: '', meaning: 'distance of readings in usual intervals' }],
    rules: ['A05'],
    fires: ['run "a.csv"\nstep First 640..800 °C', '4 s without a reading at 700 °C, else one a second'],
    silent: ['run "a.csv"\nstep First 640..800 °C', '2 s without a reading at 700 °C, else one a second'],
  },
  {
    code: 'cell-not-a-number',
    severity: 'warning',
    effect: null,
    title: 'Cells hold no number',
    explanation:
      'The cells named are left out, never read as zero. A few marks of a missing reading are harmless; many of them mean that the separator or the decimal sign was not understood. Compare the line and field given.',
    limits: [],
    rules: ['A15'],
    fires: ['run "a.csv"', 'line 1203 has `#N/A` as its third field'],
    silent: ['run "a.csv"', 'every cell holds a number'],
  },
  {
    code: 'already-smoothed',
    severity: 'warning',
    effect: null,
    title: 'The data look smoothed already',
    explanation:
      'Neighbouring residuals of the signal are correlated by more than {0}: the export was filtered. Peaks are then lower and wider than measured, onsets early, and the noise (hence every detection limit and uncertainty from it) too small. Export the raw signal; where that is impossible, allow it with the filter as the reason.',
    limits: [{ value: 0.8, unit: '', meaning: 'correlation of neighbouring residuals' }],
    rules: ['A11', 'B11'],
    fires: ['run "a.csv"\nstep First 640..800 °C', 'the mass was averaged over 15 points before export'],
    silent: ['run "a.csv"\nstep First 640..800 °C', 'the mass carries the white noise of the balance'],
  },
  {
    code: 'scale-doubtful',
    severity: 'error',
    effect: 'apparent',
    title: 'A column does not fit the unit it is read in',
    explanation:
      'A mass in % should start between {0} and {1}; a mass in mg that starts at 100 within {2} is usually a percentage; and a heat flow per mass must be the plain one divided by the specimen mass. Otherwise a factor is applied twice or never. State the unit in `columns`.',
    limits: [
      { value: 95, unit: '%', meaning: 'lowest start of a mass in %' },
      { value: 102, unit: '%', meaning: 'highest start of a mass in %' },
      { value: 0.5, unit: 'mg', meaning: 'distance from 100 within which a mass in mg is doubted' },
      { value: 1, unit: '%', meaning: 'deviation of the specific from the plain heat flow over the mass' },
    ],
    rules: ['A03'],
    fires: ['run "a.csv"\n  mass 12.3 mg', 'the column headed `mass/mg` starts at 100.00'],
    silent: ['run "a.csv"\n  mass 12.3 mg', 'the column headed `mass/mg` starts at 12.31'],
  },
  {
    code: 'time-scale-doubtful',
    severity: 'error',
    effect: 'apparent',
    title: 'Time seems to be read in the wrong unit',
    explanation:
      'The measured rate is above {0}, or sixty times (or a sixtieth of) the rate stated in `programme`: minutes were read as seconds or the reverse. Rates in %/min and all areas are wrong by the same factor. State the unit in `columns`.',
    limits: [{ value: 300, unit: 'K/min', meaning: 'heating or cooling rate taken as impossible' }],
    rules: ['A15'],
    fires: ['run "a.csv"', 'the temperature rises by 10 K in each second'],
    silent: ['run "a.csv"', 'the temperature rises by 10 K in each minute'],
  },
  {
    code: 'peak-sparsely-sampled',
    severity: 'warning',
    effect: 'apparent',
    title: 'Too few points across the half width of a peak',
    explanation:
      'Fewer than {0} readings lie across the half width, so the true maximum falls between points, and height, onset and area depend on where they happen to lie. Export at full density, or measure at a lower rate.',
    limits: [{ value: 15, unit: '', meaning: 'readings across the half width' }],
    rules: ['A05'],
    fires: ['run "a.csv"\n  endothermic up\npeak Melting 150..170 °C', 'half width 1.0 min, one reading in 5 s'],
    silent: ['run "a.csv"\n  endothermic up\npeak Melting 150..170 °C', 'half width 1.0 min, one reading in 2 s'],
  },
  {
    code: 'rate-uneven',
    severity: 'warning',
    effect: null,
    title: 'The heating rate is not constant inside a window',
    explanation:
      'Within the window the rate departs by more than {0} from that of its segment: an overshoot, a change of rate, or the specimen heating itself. Onsets shift with rate and heights per kelvin change. Move the window, or evaluate against time.',
    limits: [{ value: 10, unit: '%', meaning: 'local rate against the rate of the segment' }],
    rules: ['A07'],
    fires: ['run "a.csv"\nonset Start 200..300 °C\n  of mass', 'the rate falls from 10 to 8.5 K/min at 240 °C'],
    silent: ['run "a.csv"\nonset Start 200..300 °C\n  of mass', 'the rate stays between 9.8 and 10.2 K/min'],
  },
  {
    code: 'jump-in-mass',
    severity: 'warning',
    effect: null,
    title: 'The mass jumps from one reading to the next',
    explanation:
      'Two neighbouring readings differ by more than {0} times the noise, and by far more than the readings around them: a knock, spitting, or contact of the carrier. The jump enters every step that spans it. `mask` the stretch with the reason; points are never deleted.',
    limits: [{ value: 10, unit: '', meaning: 'jump in multiples of the noise' }],
    rules: ['A08'],
    fires: ['run "a.csv"\nstep First 640..800 °C', 'noise 0.4 µg, and 36 µg lost within one second at 700 °C'],
    silent: ['run "a.csv"\nstep First 640..800 °C', 'noise 0.4 µg, and no reading departs by more than 3 µg'],
  },
]);
