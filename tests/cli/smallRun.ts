import { seeded } from '../support/random';

/**
 * A heating of 30..900 °C at 10 K/min, a reading every 5 s, in which 15 % of 20 mg leave around 500 °C (a logistic curve of
 * scale 8 K: level to a part in a million 110 K from its middle), with white noise of 0.002 mg. The truth is in the formula.
 */
export const smallRun: string = (() => {
  const random = seeded(15);
  const rows = ['Time / min,Temperature / °C,Mass / mg'];
  for (let i = 0; i <= 1044; i++) {
    const minutes = i / 12;
    const temperature = 30 + 10 * minutes;
    const mass = 20 - 3 / (1 + Math.exp(-(temperature - 500) / 8)) + 0.002 * random.normal();
    rows.push(`${minutes.toFixed(5)},${temperature.toFixed(3)},${mass.toFixed(5)}`);
  }
  return `${rows.join('\n')}\n`;
})();

export const truth = { loss: 15, midpoint: 500 };

export const smallGloss = `run "b.csv"
  mass 20.000 ± 0.010 mg
  crucible alumina 85 µL, no lid
  atmosphere nitrogen 50 mL/min
  hazard "none: invented"

step First 380..620 °C

let double = 2 * First.loss

require First.loss in 14..16 % as Loss
`;
