import { ofFamily } from '../record';

/** Declarations, calibration, crucible and gas: what the numbers rest on besides the curve. */
export const methodRecords = ofFamily('method', true, [
  {
    code: 'direction-not-declared',
    severity: 'error',
    effect: 'fails',
    title: 'Which way is endothermic is not said',
    explanation:
      'Both directions are in use, and a melting turns into a crystallisation when the wrong one is assumed. Heats, areas, heights and `expect` need `endothermic up` or `endothermic down`. A known melting in the run shows which it is.',
    limits: [],
    rules: ['A12'],
    fires: 'run "pet-07.txt"\npeak Melting 215..262 °C\nlet h = Melting.enthalpy',
    silent: 'run "pet-07.txt"\n  endothermic up\npeak Melting 215..262 °C\nlet h = Melting.enthalpy',
  },
  {
    code: 'outside-calibration',
    severity: 'warning',
    effect: null,
    title: 'A result lies outside the calibrated range',
    explanation:
      'The scale was checked from one temperature to another, and this value lies beyond by more than {0}: it is extrapolated and shown as *indicated*. Calibrate over the range used, or report it as indicated.',
    limits: [{ value: 0, unit: 'K', meaning: 'distance beyond the calibrated range' }],
    rules: [],
    fires: [
      'run "a.csv"\n  calibrated temperature 150..660 °C u 0.5 K\nstep First 640..800 °C',
      'the step ends at 790 °C',
    ],
    silent: [
      'run "a.csv"\n  calibrated temperature 150..960 °C u 0.5 K\nstep First 640..800 °C',
      'the step ends at 790 °C',
    ],
  },
  {
    code: 'calibration-not-stated',
    severity: 'note',
    effect: null,
    title: 'No calibration is stated',
    explanation:
      'Without `calibrated` the uncertainty of temperatures and heats lacks the part of the scale. Temperatures are shown as *indicated* and heats as exported. Add `calibrated temperature 150..660 °C u 0.5 K` from the calibration record.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\nstep First 640..800 °C\nlet t = First.start',
    silent: 'run "a.csv"\n  calibrated temperature 150..960 °C u 0.5 K\nstep First 640..800 °C\nlet t = First.start',
  },
  {
    code: 'crucible-too-hot',
    severity: 'warning',
    effect: null,
    title: 'The run goes beyond what the crucible is made for',
    explanation:
      'The highest temperature comes within {0} of the working limit of the crucible material, or passes it. The crucible softens, reacts or loses mass, and the sensor under it is at risk. Choose another material; the message lists those that reach the temperature.',
    limits: [{ value: 10, unit: 'K', meaning: 'distance kept from the working limit' }],
    rules: ['K01'],
    fires: ['run "a.csv"\n  crucible aluminium 40 µL', 'the run goes to 620 °C'],
    silent: ['run "a.csv"\n  crucible aluminium 40 µL', 'the run goes to 300 °C'],
  },
  {
    code: 'crucible-incompatible',
    severity: 'warning',
    effect: null,
    title: 'The crucible does not go with the specimen or the gas',
    explanation:
      'A pair known to react: the mass and the heat of that reaction are in the curve, and crucible and sensor may be destroyed. The limits are conservative working values; supplier data and local experience take precedence.',
    limits: [],
    rules: ['K02', 'K03'],
    fires: [
      'run "a.csv"\n  crucible platinum\n  atmosphere nitrogen 50 mL/min\n  contains lead glass',
      'the run goes to 600 °C',
    ],
    silent: [
      'run "a.csv"\n  crucible alumina 85 µL\n  atmosphere nitrogen 50 mL/min\n  contains calcite',
      'the run goes to 900 °C',
    ],
  },
  {
    code: 'compatibility-not-assessed',
    severity: 'note',
    effect: null,
    title: 'Crucible, gas and specimen were not compared',
    explanation:
      'The comparison needs the crucible, every gas, and what the specimen contains; the message names what is missing or not in the tables. No finding about compatibility is no statement that there is none. Add the clause.',
    limits: [],
    rules: ['K02', 'K03'],
    fires: 'run "a.csv"\n  crucible alumina\n  atmosphere nitrogen 50 mL/min',
    silent: 'run "a.csv"\n  crucible alumina\n  atmosphere nitrogen 50 mL/min\n  contains calcite',
  },
  {
    code: 'caution-hazard-not-stated',
    severity: 'note',
    effect: null,
    title: 'Nothing is said about hazards of the specimen',
    explanation:
      'A record should hold a hazard line even when none is known, with its source. This reminder replaces no risk assessment; local codes and licensed, trained people decide. Add `hazard "none known, data sheet of …"`.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"',
    silent: 'run "a.csv"\n  hazard "none known, data sheet of 2026-03-01"',
  },
  {
    code: 'caution-energetic',
    severity: 'note',
    effect: null,
    title: 'The specimen may release energy violently',
    explanation:
      'Something named in `contains` or `hazard` can decompose violently. Confinement, rate and traces of metal or acid change how. Such specimens start at a milligram or less, open or vented, shielded, and only where the site is licensed for it. Local codes and licensed practice decide, not this reminder.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  mass 20.052 mg\n  contains ammonium nitrate',
    silent: 'run "a.csv"\n  mass 20.052 mg\n  contains calcite',
  },
  {
    code: 'caution-unknown-specimen',
    severity: 'note',
    effect: null,
    title: 'What the specimen is, is not said',
    explanation:
      'Without `contains` nothing can be said about energy, products or the crucible. An unknown specimen is first tried with a few milligrams at most, with the extraction running. Local codes and licensed practice decide. Add `contains` with what is known.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  sample "grey powder 7"',
    silent: 'run "a.csv"\n  sample "grey powder 7"\n  contains calcite, quartz',
  },
  {
    code: 'caution-sealed-crucible',
    severity: 'note',
    effect: null,
    title: 'A closed crucible is a small pressure vessel',
    explanation:
      'Gas from the specimen raises the pressure until the crucible opens, at a moment nobody chose. Estimate the pressure before closing, keep face and fingers away, and wait until it is cold. The rating of the crucible and local codes decide.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  crucible steel 30 µL, sealed',
    silent: 'run "a.csv"\n  crucible aluminium 40 µL, pierced lid',
  },
  {
    code: 'caution-flammable-gas',
    severity: 'note',
    effect: null,
    title: 'The gas can burn or is poisonous',
    explanation:
      'Hydrogen, carbon monoxide and methane are used only as mixtures the site permits, from an interlocked supply, with purging before and after, leak-checked lines, exhaust led away and no oxygen in the same lines. Local codes and licensed practice decide.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  atmosphere hydrogen 5 % + argon 95 % 50 mL/min',
    silent: 'run "a.csv"\n  atmosphere argon 50 mL/min',
  },
  {
    code: 'caution-oxygen-after-organics',
    severity: 'note',
    effect: null,
    title: 'Oxygen follows an organic specimen',
    explanation:
      'Vapours and char of the first part meet oxygen in the second. Purge with inert gas long enough before the switch, keep the specimen small and the lines free of condensate. Local codes and licensed practice decide.',
    limits: [],
    rules: [],
    fires:
      'run "a.csv"\n  atmosphere nitrogen 50 mL/min\n  atmosphere oxygen 50 mL/min from heating 2\n  contains polyethylene',
    silent: 'run "a.csv"\n  atmosphere nitrogen 50 mL/min\n  contains polyethylene',
  },
  {
    code: 'caution-toxic-gas',
    severity: 'note',
    effect: null,
    title: 'Toxic or corrosive products are to be expected',
    explanation:
      'What the specimen contains sets free such gases when heated; the message names them. Extraction runs and is confirmed before heating, the exhaust of a coupled analyser included. They also attack balance, windings and sensor. Local codes and licensed practice decide.',
    limits: [],
    rules: [],
    fires: 'run "a.csv"\n  contains polyvinyl chloride',
    silent: 'run "a.csv"\n  contains calcite',
  },
  {
    code: 'caution-cryogenic',
    severity: 'note',
    effect: null,
    title: 'The run starts below freezing',
    explanation:
      'Cooling liquids cause frostbite, displace oxygen and build pressure where they are trapped; oxygen condenses on cold surfaces, and there may be organic matter. Ventilate, monitor, protect. Local codes and licensed practice decide.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"', 'the run starts at -120 °C'],
    silent: ['run "a.csv"', 'the run starts at 30 °C'],
  },
  {
    code: 'caution-metal-vapour',
    severity: 'note',
    effect: null,
    title: 'A volatile metal is heated',
    explanation:
      'Vapours of zinc, cadmium, magnesium, lead and their like travel to the coldest noble metal they find, which is the sensor, and some are poisonous. Use a lid, a lower temperature or a shield, or decline the specimen. Local codes and licensed practice decide.',
    limits: [],
    rules: [],
    fires: ['run "a.csv"\n  contains zinc', 'the run goes to 900 °C'],
    silent: ['run "a.csv"\n  contains calcite', 'the run goes to 900 °C'],
  },
]);
