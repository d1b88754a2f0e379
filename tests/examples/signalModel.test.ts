import assert from 'node:assert';
import { buoyancy } from '../../examples/generator/balance';
import { indicatedTemperature } from '../../examples/generator/furnace';
import { lagged, sensitivity, sensorNoise } from '../../examples/generator/heatFlow';
import { firstLoss, limestoneRuns, secondLoss } from '../../examples/generator/limestoneScenario';
import { simulatePreform } from '../../examples/generator/preformRun';
import { preform, preformProgramme } from '../../examples/generator/preformScenario';
import { drawsNamed } from '../../examples/generator/random';
import { logFactorForPeak } from '../../examples/generator/reaction';

function near(found: number, expected: number, tolerance: number): void {
  assert.ok(Math.abs(found - expected) <= tolerance, `${String(found)}, expected ${String(expected)}`);
}

describe('The signal model behind the examples', () => {
  it('lift of the gas follows densities from equations of state within 1 %', () => {
    // Equations of state of nitrogen (Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361) and carbon dioxide (Span
    // and Wagner, ibid. 25 (1996) 1509): 0.0877 and 0.13846 mg for 0.1 mL between 25 and 1000 °C (citations from memory).
    near(buoyancy(28.014, 25, 1000) / 0.85, 87.7, 0.9);
    near(buoyancy(44.009, 25, 1000) / 0.85, 138.46, 1.4);
  });

  it('a first-order reaction runs fastest where the Kissinger relation says', () => {
    // β·E/(R·T²) = A·exp(−E/RT), J. Res. NBS 57 (1956) 217 (relation from memory); worked set: E 180 kJ/mol, A 1e13 1/s,
    // 10 K/min, peak at 625.346218564980 K (computed with 40 digits).
    near(logFactorForPeak(180, 625.34621856498 - 273.15, 10), 13, 1e-9);
  });

  it('composition gives the losses of stoichiometry with IUPAC 2021 weights', () => {
    // CO2/CaMg(CO3)2 = 0.23866, CO2/CaCO3 = 0.43971 (IUPAC 2021 abridged standard atomic weights).
    const batch = limestoneRuns[0].specimen!;
    assert.deepStrictEqual([batch.dolomite, batch.calcite], [62, 34]);
    near(firstLoss(batch), 62 * 0.23866, 0.001);
    near(secondLoss(batch), 62 * 0.23866 + 34 * 0.43971, 0.001);
  });

  it('two lags in a row delay a ramp by the sum of their times and keep an area', () => {
    const ramp = lagged(
      Float64Array.from({ length: 400 }, (_, i) => i),
      1,
      [9, 2.5],
    );
    near(399 - ramp[399], 11.5, 1e-6);
    const pulse = lagged(
      Float64Array.from({ length: 400 }, (_, i) => (i >= 50 && i < 80 ? 1 : 0)),
      1,
      [9, 2.5],
    );
    near(
      pulse.reduce((sum, y) => sum + y, 0),
      30,
      1e-6,
    );
  });

  it('the noise of the sensor is white with a 1/f part that meets it at 0.01 Hz', () => {
    const count = 1 << 15;
    const noise = sensorNoise(drawsNamed('a long record'), count, 1);
    // Mean of the periodogram over a band, one-sided density in σ²/Hz; the white part alone has 2.
    const density = (from: number, to: number): number => {
      let sum = 0;
      const [first, last] = [Math.round(from * count), Math.round(to * count)];
      for (let k = first; k < last; k++) {
        let [re, im] = [0, 0];
        for (let i = 0; i < count; i++) {
          const angle = (2 * Math.PI * ((k * i) % count)) / count;
          re += noise[i] * Math.cos(angle);
          im += noise[i] * Math.sin(angle);
        }
        sum += (2 * (re * re + im * im)) / count;
      }
      return sum / (last - first);
    };
    // 60 lines average to 13 %; the bound is four of that.
    near(density(0.009, 0.0109) / 4, 1, 0.5);
    near(density(0.3, 0.3019) / 2, 1, 0.5);
  });

  it('what the instrument writes is off by the stated polynomial and the lag', () => {
    // 1.2 − 2.1e-3·600 + 0.9e-6·600² + 0.09·10 = 1.164 K at 600 °C and 10 K/min; S(600 °C) = 0.888 µV/mW.
    near(indicatedTemperature(600, 10, 0.09) - 600, 1.164, 1e-9);
    near(sensitivity(600), 0.888, 1e-9);
  });

  it('the heats of the preform come back from the record without scatter', () => {
    const whole = simulatePreform({ scatter: false, reactionHeat: true });
    const base = simulatePreform({ scatter: false, reactionHeat: false });
    const leg = preformProgramme.legs[1];
    const area = (from: number, to: number): number => {
      let sum = 0;
      for (let i = 0; i < whole.time.length; i++) {
        if (whole.time[i] < leg.start || whole.time[i] >= leg.end) continue;
        if (whole.indicated[i] < from || whole.indicated[i] >= to) continue;
        sum += (whole.heatFlow[i] - base.heatFlow[i]) * 0.5;
      }
      return sum / preform.mass;
    };
    near(area(100, 170), -31.5, 0.05);
    near(area(200, 285), 44, 0.05);
  });
});
