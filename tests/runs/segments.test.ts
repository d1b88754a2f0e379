import { strict as assert } from 'node:assert';
import { findSegments } from '../../server/src/runs/segments';
import { faultless, programmeRun, type Faults, type Part } from '../support/programmeRun';
import { seeded, type Random } from '../support/random';

interface Programme {
  readonly title: string;
  readonly start: number;
  readonly parts: readonly Part[];
  readonly names: readonly string[];
  readonly interval?: number;
}

const programmes: readonly Programme[] = [
  { title: 'one ramp', start: 30, parts: [{ to: 600, rate: 10 }], names: ['heating 1'] },
  {
    title: 'a ramp between holds, and cooling',
    start: 30,
    parts: [{ hold: 600 }, { to: 500, rate: 20 }, { hold: 300 }, { to: 100, rate: 20 }],
    names: ['hold 1', 'heating 1', 'hold 2', 'cooling 1'],
  },
  {
    title: 'heat, cool, heat',
    start: 25,
    parts: [
      { to: 280, rate: 10 },
      { to: 25, rate: 10 },
      { to: 280, rate: 10 },
    ],
    names: ['heating 1', 'cooling 1', 'heating 2'],
  },
  {
    title: 'heat, cool, heat with holds of five minutes',
    start: 25,
    parts: [
      { hold: 300 },
      { to: 280, rate: 10 },
      { hold: 300 },
      { to: 25, rate: 20 },
      { hold: 300 },
      { to: 280, rate: 10 },
    ],
    names: ['hold 1', 'heating 1', 'hold 2', 'cooling 1', 'hold 3', 'heating 2'],
  },
  { title: 'a ramp of 0.5 K/min', start: 100, parts: [{ to: 160, rate: 0.5 }], names: ['heating 1'], interval: 5 },
  { title: 'a ramp of 0.1 K/min', start: 100, parts: [{ to: 130, rate: 0.1 }], names: ['heating 1'], interval: 10 },
  {
    title: 'a fast ramp that goes on slowly',
    start: 50,
    parts: [
      { to: 200, rate: 10 },
      { to: 230, rate: 0.5 },
    ],
    names: ['heating 1'],
    interval: 2,
  },
  {
    title: 'steps of 20 K with holds of ten minutes',
    start: 100,
    parts: [120, 140, 160, 180].flatMap((to) => [{ to, rate: 5 }, { hold: 600 }]),
    names: [1, 2, 3, 4].flatMap((k) => [`heating ${k}`, `hold ${k}`]),
  },
  {
    title: 'cooling below the ice point, a hold, slow heating',
    start: 40,
    parts: [{ to: -80, rate: 16 }, { hold: 600 }, { to: 160, rate: 3 }],
    names: ['cooling 1', 'hold 1', 'heating 1'],
  },
  {
    title: 'a gas switch in a hold between two ramps of one direction',
    start: 40,
    parts: [{ to: 600, rate: 20 }, { hold: 300 }, { to: 900, rate: 20 }],
    names: ['heating 1', 'hold 1', 'heating 2'],
  },
  {
    title: 'ramps of 0.5 K/min with a hold of fifteen minutes',
    start: 150,
    parts: [{ to: 180, rate: 0.5 }, { hold: 900 }, { to: 200, rate: 0.5 }],
    names: ['heating 1', 'hold 1', 'heating 2'],
    interval: 5,
  },
  { title: 'one hold', start: 210, parts: [{ hold: 3600 }], names: ['hold 1'], interval: 2 },
  {
    title: 'fast cycles',
    start: 25,
    parts: [
      { to: 250, rate: 100 },
      { to: 25, rate: 100 },
      { to: 250, rate: 100 },
    ],
    names: ['heating 1', 'cooling 1', 'heating 2'],
    interval: 0.2,
  },
];

const seeds = Number(process.env.GLOSS_FUZZ_SEEDS ?? 40);

function names({ time, temperature }: { time: Float64Array; temperature: Float64Array }): string[] {
  return findSegments(time, temperature).map(({ name }) => name);
}

function drawFaults(random: Random, parts: readonly Part[]): Faults {
  const hasRamp = parts.some((part) => !('hold' in part));
  return {
    noise: 0.25 * random.uniform(),
    overshoot: 1.5 * random.uniform(),
    ripple: 0.05 * random.uniform(),
    dips: Array.from({ length: hasRamp ? random.integer(4) : 0 }, () =>
      random.uniform() < 0.5
        ? { depth: 2.7 * random.uniform(), duration: 20 + 300 * random.uniform() }
        : { depth: 12 * random.uniform(), duration: 10 + 45 * random.uniform() },
    ),
    repeated: 0.1 * random.uniform(),
  };
}

describe('segments of a run', () => {
  for (const { title, start, parts, names: expected, interval } of programmes) {
    it(`are found in a clean programme: ${title}`, () => {
      assert.deepEqual(names(programmeRun(start, parts, interval ?? 1)), expected);
    });

    it(`keep their names when noise, overshoot, back-steps and repeated times come and go: ${title}`, () => {
      for (let seed = 1; seed <= seeds; seed++) {
        const random = seeded(seed);
        const faults = drawFaults(random, parts);
        const run = programmeRun(start, parts, interval ?? 1, faults, random);
        assert.deepEqual(names(run), expected, `seed ${seed}: ${JSON.stringify(faults)}`);
      }
    });
  }

  it('give the true rate, the corners and the end temperatures', () => {
    const parts = [{ hold: 600 }, { to: 500, rate: 20 }, { hold: 300 }, { to: 100, rate: 5 }];
    const run = programmeRun(30, parts, 1, { ...faultless, noise: 0.05, overshoot: 0.8 }, seeded(5));
    const [, heating, hold, cooling] = findSegments(run.time, run.temperature);
    assert.ok(Math.abs(heating.rate! - 20) < 0.02, String(heating.rate));
    assert.ok(Math.abs(cooling.rate! + 5) < 0.005, String(cooling.rate));
    assert.equal(hold.rate, null);
    // Corners by construction: 600 s, 600 + 470/20 min = 2010 s, 2310 s.
    assert.ok(Math.abs(heating.start - 600) < 6, String(heating.start));
    assert.ok(Math.abs(heating.end - 2010) < 6, String(heating.end));
    assert.ok(Math.abs(hold.end - 2310) < 12, String(hold.end));
    assert.ok(Math.abs(heating.from - 30) < 1 && Math.abs(heating.to - 500) < 1);
    assert.ok(Math.abs(cooling.to - 100) < 0.2);
  });

  it('count nothing twice and leave nothing out', () => {
    for (const { start, parts, interval } of programmes) {
      const run = programmeRun(start, parts, interval ?? 1, { ...faultless, noise: 0.1 }, seeded(9));
      const segments = findSegments(run.time, run.temperature);
      assert.equal(segments[0].first, 0);
      assert.equal(segments[segments.length - 1].last, run.time.length);
      for (let k = 1; k < segments.length; k++) assert.equal(segments[k].first, segments[k - 1].last - 1);
    }
  });

  it('do not depend on where the clock starts', () => {
    const { start, parts } = programmes[3];
    const run = programmeRun(start, parts, 1, { ...faultless, noise: 0.1 }, seeded(2));
    const later = findSegments(
      run.time.map((t) => t + 1e9),
      run.temperature,
    );
    findSegments(run.time, run.temperature).forEach((segment, k) => {
      assert.equal(later[k].name, segment.name);
      assert.equal(later[k].first, segment.first);
      assert.ok(Math.abs(later[k].from - segment.from) < 1e-5);
      if (segment.rate !== null) assert.ok(Math.abs(later[k].rate! - segment.rate) < 1e-6);
    });
  });

  it('pass over placeholder rows, gaps and a foreign first reading', () => {
    const { start, parts, names: expected } = programmes[3];
    const run = programmeRun(start, parts, 1);
    run.temperature[0] = 0;
    run.temperature[700] = 1;
    run.temperature[1500] = NaN;
    run.time[1600] = NaN;
    const segments = findSegments(run.time, run.temperature);
    assert.deepEqual(
      segments.map(({ name }) => name),
      expected,
    );
    assert.equal(segments[0].first, 1);
    assert.ok(Math.abs(segments[0].from - 25) < 0.1);
  });

  it('break where a second record follows the first without a way between', () => {
    const first = programmeRun(30, [{ to: 500, rate: 20 }], 1);
    const second = programmeRun(200, [{ to: 500, rate: 10 }], 1);
    const time = Float64Array.from([...first.time, ...second.time.map((t) => t + first.time.length)]);
    const temperature = Float64Array.from([...first.temperature, ...second.temperature]);
    const segments = findSegments(time, temperature);
    assert.deepEqual(
      segments.map(({ name }) => name),
      ['heating 1', 'heating 2'],
    );
    assert.ok(Math.abs(segments[1].rate! - 10) < 0.01);
  });

  it('are found in very few points', () => {
    assert.deepEqual(findSegments(Float64Array.of(), Float64Array.of()), []);
    assert.deepEqual(findSegments(Float64Array.of(0), Float64Array.of(25)), []);
    assert.deepEqual(names({ time: Float64Array.of(0, 60, 120, 180), temperature: Float64Array.of(25, 35, 45, 55) }), [
      'heating 1',
    ]);
    assert.deepEqual(names({ time: Float64Array.of(0, 60), temperature: Float64Array.of(25, 25) }), ['hold 1']);
  });
});
