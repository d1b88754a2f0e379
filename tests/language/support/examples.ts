/** The examples of the language's design page, section 7; invented runs. */

export const limestone = `run "vq217-1.csv"
  sample      "Dolomitic limestone VQ-217, specimen 1"
  mass        20.052 ± 0.010 mg
  crucible    alumina 85 µL, no lid
  atmosphere  carbon dioxide 50 mL/min
  contains    dolomite, calcite, quartz
  endothermic down
  measured    2026-10-02

blank "blank-co2-1.gloss"
  subtract mass, heatflow
method "limestone.gloss"

override step First 655..805 °C
  because "coarse fraction: the first loss starts 15 K later"

let dolomite = First.loss * M(CaMg(CO3)2) / M(CO2)
let calcite  = (Second.loss - First.loss) * M(CaCO3) / M(CO2)

require dolomite in 60..65 %
require Moisture.loss <= 0.5 %
`;

export const limestoneMethod = `method "Carbonates in limestone under carbon dioxide"

step    Moisture  40..180 °C
step    First     640..800 °C
step    Second    around 930 °C
residue Oxides    at end of hold 1
peak    FirstHeat 640..800 °C
  baseline sigmoidal
  expect   endothermic
`;

/** In the page without its first lines. */
export const unseparated = `run "vq217-n2.csv"
residue Oxides at end of hold 1
step First 640..769 °C
step Second 769..860 °C
step Both = First + Second
require Both.loss + Oxides.remaining in 99..100.2 % as Balance
`;

export const gasSwitch = `run "hm5534-b.csv"
  atmosphere nitrogen 50 mL/min
  atmosphere air 50 mL/min from hold 2
step Black 430..700 °C in heating 2
residue Ash at 850 °C in heating 2
require Black.loss in 2.00..2.50 % as Carbon_black
`;

export const heatCoolHeat = `run "pet-07.txt"
  mass 8.200 ± 0.005 mg
  endothermic up
glass Tg 60..95 °C in heating 2
peak Cold 105..150 °C in heating 1
peak Melting 215..262 °C in heating 1
  baseline sigmoidal
let crystallinity = (Melting.enthalpy + Cold.enthalpy) / 140 J/g
`;

export const joined = `run "clay-mass.csv"
  endothermic down
join "clay-heat.txt"
columns of "clay-heat.txt"
  time column 1 in s
  temperature column 2 in °C
  heatflow column 3 in mW
peak Water 420..680 °C
  per mass lost
`;

/** Glosses that stand alone, without the one that needs its method. */
export const alone = [limestoneMethod, unseparated, gasSwitch, heatCoolHeat, joined];
export const all = [limestone, ...alone];
