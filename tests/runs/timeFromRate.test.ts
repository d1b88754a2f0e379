import { strict as assert } from 'node:assert';
import { timeFromRate } from '../../server/src/runs/timeFromRate';

describe('times from a stated rate', () => {
  it('advance with the temperature of each ramp, up and down', () => {
    const temperature = Float64Array.of(20, 30, 40, 50, 40, 30, 20, 30);
    assert.deepEqual([...timeFromRate(temperature, 10)], [0, 60, 120, 180, 240, 300, 360, 420]);
    assert.deepEqual([...timeFromRate(temperature, -10)], [...timeFromRate(temperature, 10)]);
  });

  it('stand still while the temperature goes back by less than 3 K, and are missing in placeholder rows and gaps', () => {
    const temperature = Float64Array.of(20, 22, 21, 22, 24, 1, 26, NaN, 28, 30);
    assert.deepEqual([...timeFromRate(temperature, 10)], [0, 12, 12, 12, 24, NaN, 36, NaN, 48, 60]);
  });
});
