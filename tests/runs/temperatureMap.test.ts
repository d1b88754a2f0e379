import { strict as assert } from 'node:assert';
import { findSegments } from '../../server/src/runs/segments';
import { temperatureMap, type TemperatureMap } from '../../server/src/runs/temperatureMap';
import { faultless, programmeRun, type Faults } from '../support/programmeRun';
import { seeded } from '../support/random';

function mapOf(time: Float64Array, temperature: Float64Array, name: string): TemperatureMap {
  const segment = findSegments(time, temperature).find((candidate) => candidate.name === name);
  assert.ok(segment, name);
  return temperatureMap(time, temperature, segment);
}

/** 100 to 200 °C at 10 K/min, cut out of a longer ramp: T = 100 °C + t/6 K/s by construction. */
function ramp(interval: number, faults: Faults, seed: number): TemperatureMap {
  const run = programmeRun(100, [{ to: 200, rate: 10 }], interval, faults, seeded(seed));
  return mapOf(run.time, run.temperature, 'heating 1');
}

describe('the map between time and temperature', () => {
  it('is exact on linear ramps, up to their ends, in both directions', () => {
    for (const [start, end, rate] of [
      [100, 200, 10],
      [200, -80, 16],
      [25, 40, 0.1],
      [30, 1000, 50],
    ]) {
      const run = programmeRun(start, [{ to: end, rate }], 60 / rate / 20);
      const map = mapOf(run.time, run.temperature, end > start ? 'heating 1' : 'cooling 1');
      const slope = (Math.sign(end - start) * rate) / 60;
      for (let part = 0; part <= 1; part += 0.0625) {
        const temperature = start + part * (end - start) * 0.999;
        const time = (temperature - start) / slope;
        assert.ok(Math.abs(map.temperatureAt(time) - temperature) < 1e-9, `${temperature} °C at ${rate} K/min`);
        assert.ok(Math.abs(map.timeAt(temperature)! - time) * Math.abs(slope) < 1e-9);
        assert.ok(Math.abs(map.rateAt(time) - slope) < 1e-9 * Math.abs(slope) + 1e-12);
      }
    }
  });

  it('is exact where the file was in kelvin and its clock far from zero', () => {
    const run = programmeRun(100, [{ to: 200, rate: 10 }], 0.7);
    const time = run.time.map((t) => t + 1e9);
    const kelvin = run.temperature.map((value) => Number((value + 273.15).toFixed(5)) - 273.15);
    const map = mapOf(time, kelvin, 'heating 1');
    // Five decimals are written: half of the last digit is 5e-6 K; 1e-4 K is what results may lose.
    for (let at = 101; at < 199.5; at += 0.37) assert.ok(Math.abs(map.temperatureAt(1e9 + (at - 100) * 6) - at) < 1e-4);
  });

  it('goes up and down again to the same temperature, and is strictly monotone under noise and back-steps', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const dips = [{ depth: 2, duration: 60 }];
      const map = ramp(0.5, { ...faultless, noise: 0.3, ripple: 0.05, dips }, seed);
      let latest = -Infinity;
      for (let at = 101; at <= 199; at += 0.1) {
        const time = map.timeAt(at)!;
        assert.ok(time > latest, `seed ${seed} at ${at}`);
        latest = time;
        assert.ok(Math.abs(map.temperatureAt(time) - at) < 1e-9);
      }
    }
  });

  it('smooths noise away as far as the number of readings in 5 K allows', () => {
    // White noise of 0.1 K, 60 readings in 5 K: a mean of 60 has 0.013 K; four times that in 99.99 % of 9 x 20 places.
    const bound = (4 * 0.1) / Math.sqrt(60);
    for (let seed = 1; seed <= 20; seed++) {
      const map = ramp(0.5, { ...faultless, noise: 0.1 }, seed);
      for (let at = 110; at <= 190; at += 10) {
        assert.ok(Math.abs(map.temperatureAt((at - 100) * 6) - at) < bound, `seed ${seed} at ${at}`);
      }
    }
  });

  it('follows a clean record as closely as it was written', () => {
    // A specimen that melts falls behind by 1 K and catches up, within 40 s.
    const time = Float64Array.from({ length: 1200 }, (_, i) => i * 0.5);
    const truth = (t: number): number => 100 + t / 6 - 0.8 * Math.exp(-(((t - 300) / 12) ** 2));
    const map = mapOf(time, time.map(truth), 'heating 1');
    for (let t = 200; t < 400; t += 0.77) assert.ok(Math.abs(map.temperatureAt(t) - truth(t)) < 0.01, String(t));
  });

  it('ends where its segment ends', () => {
    const map = ramp(1, faultless, 1);
    assert.equal(map.timeAt(99.8), 0);
    assert.equal(map.timeAt(200.3), 600);
    assert.equal(map.timeAt(98), null);
    assert.equal(map.timeAt(202), null);
    assert.equal(map.timeAt(NaN), null);
    assert.equal(map.temperatureAt(-50), 100);
    assert.ok(Math.abs(map.temperatureAt(1e5) - 200) < 1e-9);
  });

  it('has no way from temperature to time in a hold', () => {
    const run = programmeRun(25, [{ to: 200, rate: 10 }, { hold: 600 }], 1, { ...faultless, noise: 0.05 }, seeded(3));
    const map = mapOf(run.time, run.temperature, 'hold 1');
    assert.equal(map.timeAt(200), null);
    assert.ok(Math.abs(map.temperatureAt(1400) - 200) < 0.05);
    assert.ok(Math.abs(map.rateAt(1400)) < 0.003);
  });

  it('passes over gaps, repeated times and lone foreign readings', () => {
    const run = programmeRun(100, [{ to: 200, rate: 10 }], 1, { ...faultless, repeated: 0.1 }, seeded(4));
    run.temperature[100] = 1;
    run.temperature[200] = NaN;
    run.time[300] = NaN;
    const map = mapOf(run.time, run.temperature, 'heating 1');
    for (let at = 101; at < 199; at += 1) assert.ok(Math.abs(map.temperatureAt((at - 100) * 6) - at) < 1e-9);
  });

  it('works on few readings', () => {
    const time = Float64Array.of(0, 60, 120, 180);
    const map = mapOf(time, Float64Array.of(25, 35, 45, 55), 'heating 1');
    assert.ok(Math.abs(map.timeAt(40)! - 90) < 1e-9);
  });
});
