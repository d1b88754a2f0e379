import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Engine } from '../../server/src/engine/engine';
import { Counters } from '../../server/src/base/counters';
import { BoundedMemo } from '../../server/src/engine/boundedMemo';
import { curvesOfRun } from '../../server/src/engine/curves/curvesOfRun';
import { prepareRun } from '../../server/src/evaluation/prepareRun';
import { resolveProgram } from '../../server/src/language/meaning/resolveProgram';
import { parse } from '../../server/src/language/syntax/parse';
import { rawRun } from '../evaluation/onArrays';
import { cursorAt } from '../../server/src/engine/curves/cursor';
import { differenceLane } from '../../server/src/engine/curves/difference';
import type { RunCurve, RunCurves } from '../../server/src/engine/curves/runCurves';
import { samples } from '../../server/src/engine/curves/samples';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { syntheticRun } from '../support/syntheticRun';

const example = (path: string): string => readFileSync(resolve('examples', path), 'utf8');

async function curvesOf(files: Record<string, string>, path = '/lab/a.gloss'): Promise<RunCurves> {
  const engine = new Engine(new MemoryHost(files, '/lab'));
  const curves = engine.curvesOf(await engine.evaluate(path));
  assert.notEqual(curves, null);
  return curves!;
}

const rawOf = (curve: RunCurve, unit: string, abscissa: 'time' | 'temperature') =>
  samples(curve, abscissa, -Infinity, Infinity, 1e6, unit);

describe('the first picture of a run', () => {
  const files = { 'a.gloss': example('preform/pet-07.gloss'), 'pet-07.txt': example('preform/pet-07.txt') };

  it('is made in pieces, other work may come between any two of them, and made once', async () => {
    const host = new MemoryHost(files, '/lab');
    const engine = new Engine(host);
    const snapshot = await engine.evaluate('/lab/a.gloss');
    const pauses = async (abscissa: 'time' | 'temperature'): Promise<number> => {
      const before = host.counts.of('pause');
      await engine.prepareCurves(snapshot, abscissa);
      return host.counts.of('pause') - before;
    };
    // Heat flow and temperature in six parts: the samples of each, its extremes.
    assert.equal(await pauses('time'), 2 * 6 * 2);
    // Then the way over the temperature and the extremes on it.
    assert.equal(await pauses('temperature'), 2 * 6 * 2);
    assert.equal(await pauses('temperature'), 0);
    assert.equal(await pauses('time'), 0);
  });

  it('asked for twice at a time is one', async () => {
    const engine = new Engine(new MemoryHost(files, '/lab'));
    const snapshot = await engine.evaluate('/lab/a.gloss');
    await Promise.all([engine.prepareCurves(snapshot, 'time'), engine.prepareCurves(snapshot, 'temperature')]);
    const drawn = (): unknown[] =>
      engine.curvesOf(snapshot)!.lanes.flatMap((lane) => lane.curves.map((c) => c.drawn('temperature')!.pyramid()));
    const first = drawn();
    assert.ok(first.length === 12 && drawn().every((pyramid, i) => pyramid === first[i]));
  });
});

describe('curves of a heat-cool-heat run', () => {
  const text = example('preform/pet-07.txt');
  // The file is read here by other means: a tab between fields, a comma before decimals.
  const rows = text
    .split('\n')
    .map((line) => line.split('\t').map((cell) => Number(cell.replace(',', '.'))))
    .filter((row) => row.length === 3 && row.every((v) => Number.isFinite(v)));
  let curves: RunCurves;

  before(async () => {
    curves = await curvesOf({ 'a.gloss': example('preform/pet-07.gloss'), 'pet-07.txt': text });
  });

  it('hold every row of the file over either abscissa, in the parts of the programme', () => {
    assert.deepEqual(
      curves.parts.map((p) => p.name),
      ['hold 1', 'heating 1', 'hold 2', 'cooling 1', 'hold 3', 'heating 2'],
    );
    const lane = curves.lane('heatflow')!;
    assert.equal(lane.curves.length, 6);
    const overTime = new Map<number, number>();
    const overTemperature = new Set<string>();
    for (const curve of lane.curves) {
      const t = rawOf(curve, 'mW', 'time');
      t.x.forEach((x, i) => overTime.set(Math.round(x * 1e3), t.y[i]));
      const temperature = rawOf(curve, 'mW', 'temperature');
      assert.equal(temperature.count, curve.points, curve.id);
      temperature.x.forEach((x, i) => overTemperature.add(`${x} ${temperature.y[i]}`));
    }
    assert.equal(overTime.size, rows.length);
    for (const [minutes, celsius, flow] of rows) {
      assert.equal(overTime.get(Math.round(minutes * 60e3)), flow, `${minutes} min`);
      assert.ok(overTemperature.has(`${celsius} ${flow}`), `${celsius} °C`);
    }
  });

  it('ascend on every part over the temperature, on the way down too', () => {
    for (const curve of curves.lane('heatflow')!.curves) {
      const { x } = rawOf(curve, 'mW', 'temperature');
      for (let i = 1; i < x.length; i++) assert.ok(x[i] >= x[i - 1], curve.id);
    }
    const cooling = rawOf(curves.curve('heatflow/cooling 1')!, 'mW', 'temperature');
    assert.ok(cooling.x[0] < 20 && cooling.x[cooling.count - 1] > 280);
  });

  it('meet at the ends of neighbouring parts, so that the loop is closed', () => {
    const of = curves.lane('heatflow')!.curves;
    for (let k = 1; k < of.length; k++) {
      const end = of[k - 1].time.length - 1;
      assert.equal(of[k].time[0], of[k - 1].time[end]);
      assert.equal(of[k].values[0], of[k - 1].values[end]);
    }
  });

  it('show both ways through the middle of the loop: heating and cooling at 200 °C are three curves', () => {
    const through = curves
      .lane('heatflow')!
      .curves.filter((c) => samples(c, 'temperature', 199, 201, 100, 'mW').x.some((x) => x >= 199 && x <= 201));
    assert.deepEqual(
      through.map((c) => c.part),
      ['heating 1', 'cooling 1', 'heating 2'],
    );
  });

  it('give W/g as mW over the mass in mg, and leave what is stored alone', () => {
    const curve = curves.curve('heatflow/heating 1')!;
    const before = curve.values.slice();
    const [milliwatts, specific] = [rawOf(curve, 'mW', 'time'), rawOf(curve, 'W/g', 'time')];
    specific.y.forEach((y, i) => assert.ok(Math.abs(y * 8.2 - milliwatts.y[i]) < 1e-12));
    assert.deepEqual(curve.values, before);
    assert.deepEqual(curves.lane('heatflow')!.units, ['mW', 'W/g']);
  });

  it('have as extent the least and the greatest value of the parts asked for', () => {
    const lane = curves.lane('heatflow')!;
    const flows = rows.map((r) => r[2]);
    assert.deepEqual(
      lane.extent(
        'mW',
        curves.parts.map((p) => p.name),
      ),
      { from: Math.min(...flows), to: Math.max(...flows) },
    );
    const cooling = rawOf(curves.curve('heatflow/cooling 1')!, 'mW', 'time').y;
    assert.deepEqual(lane.extent('mW', ['cooling 1']), { from: Math.min(...cooling), to: Math.max(...cooling) });
    assert.equal(lane.extent('mW', []), null);
    assert.equal(lane.extent('kJ', ['cooling 1']), null);
  });
});

describe('curves of a heat flow that points down', () => {
  const gloss = (way: string): string => `run "a.csv"\n  mass 10 mg\n${way}`;
  const data = `time / s,temperature / °C,heat flow / mW\n${Array.from({ length: 400 }, (_, i) => `${i * 6},${30 + i},${(-2 - i / 100).toFixed(3)}`).join('\n')}\n`;

  it('are drawn as the file has them, whichever way is stated', async () => {
    for (const way of ['  endothermic up\n', '  endothermic down\n', '']) {
      const curves = await curvesOf({ 'a.gloss': gloss(way), 'a.csv': data });
      assert.equal(rawOf(curves.curve('heatflow/heating 1')!, 'mW', 'time').y[0], -2);
      assert.equal(curves.endothermic, way === '' ? null : way.trim().split(' ')[1]);
    }
  });

  it('are turned to point as the run they are laid over does, and have its key before their ids', async () => {
    const engine = new Engine(
      new MemoryHost({
        'up.gloss': gloss('  endothermic up\n'),
        'down.gloss': gloss('  endothermic down\n'),
        'bare.gloss': gloss(''),
        'a.csv': data,
      }),
    );
    const up = engine.curvesOf(await engine.evaluate('/lab/up.gloss'))!;
    const over = { key: '2:', run: up };
    const turned = engine.curvesOf(await engine.evaluate('/lab/down.gloss'), over)!;
    assert.equal(rawOf(turned.curve('2:heatflow/heating 1')!, 'mW', 'time').y[0], 2);
    const bare = engine.curvesOf(await engine.evaluate('/lab/bare.gloss'), over)!;
    assert.equal(rawOf(bare.curve('2:heatflow/heating 1')!, 'mW', 'time').y[0], -2);
    assert.equal(bare.endothermic, null);
  });
});

describe('curves of a mass', () => {
  const data = syntheticRun({ steps: [{ at: 500, width: 10, loss: 20 }], noise: 0 });
  const head = 'run "a.csv"\n  mass 20 mg\n';
  let curves: RunCurves;

  before(async () => {
    curves = await curvesOf({ 'a.gloss': head, 'a.csv': data });
  });

  it('are % of the initial mass or mg', () => {
    const curve = curves.curve('mass/heating 1')!;
    const [percent, milligrams] = [rawOf(curve, '%', 'time'), rawOf(curve, 'mg', 'time')];
    assert.equal(milligrams.y[0], 20);
    percent.y.forEach((y, i) => assert.ok(Math.abs(y - milligrams.y[i] * 5) < 1e-12));
  });

  it('have a rate per minute and per kelvin that differ by the heating rate of 10 K/min', () => {
    const lane = curves.lane('rate')!;
    assert.deepEqual(lane.units, ['%/min', '%/K', 'mg/min', 'mg/K']);
    const largest = (unit: string): number => lane.extent(unit, ['heating 1'])!.to;
    // A logistic of 20 % and width 10 K falls by 20/40 %/K in its middle; a cubic over 5 K takes less than 1 % of it.
    assert.ok(Math.abs(largest('%/K') - 0.5) < 0.005, String(largest('%/K')));
    assert.ok(Math.abs(largest('%/min') / largest('%/K') - 10) < 1e-3);
    assert.ok(Math.abs(largest('mg/min') - largest('%/min') * 0.2) < 1e-9);
    assert.ok(Math.abs(largest('mg/K') - largest('%/K') * 0.2) < 1e-9);
  });

  it('end before a mask and begin again behind it, and no sample of the mask is drawn', async () => {
    const masked = await curvesOf({ 'a.gloss': `${head}mask 300..310 °C because "door opened"\n`, 'a.csv': data });
    for (const lane of ['mass', 'rate']) {
      const ids = masked.lane(lane)!.curves.map((c) => c.id);
      assert.deepEqual(ids, [`${lane}/heating 1`, `${lane}/heating 1#2`]);
      const [before, after] = ids.map((id) => rawOf(masked.curve(id)!, '%', 'temperature').x);
      if (lane === 'rate') continue;
      assert.ok(before[before.length - 1] < 300 && after[0] > 310);
      assert.equal(before.length + after.length, curves.curve('mass/heating 1')!.points - 11);
    }
  });

  it('have no rate per kelvin in a hold', async () => {
    const rows = Array.from({ length: 600 }, (_, i) => {
      const temperature = Math.min(30 + i, 330);
      return `${i * 6},${temperature},${(20 - i / 1000).toFixed(4)}`;
    });
    const held = await curvesOf({
      'a.gloss': head,
      'a.csv': `time / s,temperature / °C,mass / mg\n${rows.join('\n')}\n`,
    });
    const lane = held.lane('rate')!;
    assert.equal(lane.extent('%/K', ['hold 1']), null);
    assert.notEqual(lane.extent('%/min', ['hold 1']), null);
    const hold = held.curve('rate/hold 1')!;
    assert.equal(samples(hold, 'time', 0, 1e5, 100, '%/K').count, 0);
    assert.ok(samples(hold, 'time', 0, 1e5, 100, '%/min').count > 0);
  });

  it('are one curve over time, and none over temperature, where the run has no temperature', () => {
    const time = Float64Array.from({ length: 50 }, (_, i) => 6 * i);
    const raw = rawRun([
      { signal: 'time', unit: 's', values: time },
      { signal: 'mass', unit: 'mg', values: time.map((t) => 20 - t / 1000) },
    ]);
    const program = resolveProgram(parse(head), null);
    const bare = curvesOfRun(prepareRun(program, raw, [], [], new BoundedMemo(10), new Counters()).run);
    const curve = bare.curve('mass/whole run')!;
    assert.equal(rawOf(curve, 'mg', 'time').count, 50);
    assert.equal(rawOf(curve, 'mg', 'temperature').count, 0);
    assert.equal(bare.temperatureAt('whole run', 10), null);
    assert.equal(bare.timeAt('whole run', 100), null);
  });

  it('are the readings less the blank, that counts from its first reading', async () => {
    const rows = data.trimEnd().split('\n');
    const blank = rows.map((r, i) => (i === 0 ? r : r.replace(/[^,]*$/, (0.3 + (i - 1) / 1e4).toFixed(5))));
    const less = await curvesOf({
      'a.gloss': `${head}blank "b.csv"\n`,
      'a.csv': data,
      'b.csv': `${blank.join('\n')}\n`,
    });
    const own = rawOf(curves.curve('mass/heating 1')!, 'mg', 'time').y;
    const corrected = rawOf(less.curve('mass/heating 1')!, 'mg', 'time').y;
    assert.equal(corrected.length, own.length);
    corrected.forEach((y, i) => assert.ok(Math.abs(y - (own[i] - i / 1e4)) < 1e-9, `${i}: ${y}`));
  });

  it('are kept by the engine that evaluated the snapshot, and by no other', async () => {
    const engine = new Engine(new MemoryHost({ 'a.gloss': head, 'a.csv': data }));
    const other = new Engine(new MemoryHost({ 'a.gloss': head, 'a.csv': data }));
    const snapshot = await engine.evaluate('/lab/a.gloss');
    assert.equal(other.curvesOf(snapshot), null);
    const [one, two] = [engine.curvesOf(snapshot)!, engine.curvesOf(await engine.evaluate('/lab/a.gloss'))!];
    assert.equal(one.curve('mass/heating 1')!.drawn('time'), two.curve('mass/heating 1')!.drawn('time'));
  });

  it('show an ion current in the unit in which its largest value has one to three digits', async () => {
    const rows = Array.from(
      { length: 60 },
      (_, i) => `${i * 6},${30 + i},${(2.5e-10 * (1 + i / 60)).toExponential(4)}`,
    );
    const ions = await curvesOf({
      'a.gloss': 'run "a.csv"\ncolumns\n  time column 1 in s\n  temperature column 2 in °C\n  ion(44) column 3 in A\n',
      'a.csv': `t,T,I\n${rows.join('\n')}\n`,
    });
    const lane = ions.lane('ion(44)')!;
    assert.equal(lane.units[0], 'pA');
    assert.ok(Math.abs(lane.extent('pA', ['heating 1'])!.from - 250) < 1e-9);
  });
});

describe('the cursor', () => {
  let curves: RunCurves;
  const shown = (): string[] => curves.parts.map((p) => p.name);
  const ask = (over: Partial<Parameters<typeof cursorAt>[2]>) =>
    cursorAt(curves, [], {
      abscissa: 'temperature',
      at: 200,
      part: null,
      step: 0,
      shownParts: shown(),
      units: {},
      ...over,
    });

  before(async () => {
    curves = await curvesOf({
      'a.gloss': example('preform/pet-07.gloss'),
      'pet-07.txt': example('preform/pet-07.txt'),
    });
  });

  it('stands on the nearest sample of the first part that holds the point, or of the part it is on', () => {
    for (const part of [null, 'cooling 1'] as const) {
      const at = ask({ part })!;
      assert.equal(at.part, part ?? 'heating 1');
      const { x } = rawOf(curves.curve(`heatflow/${at.part}`)!, 'mW', 'temperature');
      const distance = Math.min(...[...x].map((v) => Math.abs(v - 200)));
      assert.ok(Math.abs(Math.abs(at.temperature! - 200) - distance) < 1e-12);
      const curve = curves.curve(`heatflow/${at.part}`)!;
      const sample = curve.time.indexOf(at.time);
      assert.equal(at.values.find((v) => v.lane === 'heatflow')!.y, curve.values[sample]);
    }
  });

  it('walks over every sample of the record in time, from part to part, and stops at its ends', () => {
    const first = ask({ abscissa: 'time', at: -1e9, step: 0 })!;
    const all = curves.lane('heatflow')!.curves.flatMap((c) => [...c.time]);
    assert.equal(first.time, all[0]);
    for (const step of [1, 17, 500, 2500, all.length - 1]) {
      assert.equal(ask({ abscissa: 'time', at: first.time, step })!.time, all[step], String(step));
    }
    assert.equal(ask({ abscissa: 'time', at: first.time, step: 1e9 })!.time, all[all.length - 1]);
    assert.equal(ask({ abscissa: 'time', at: 1e9, step: -1 })!.time, all[all.length - 2]);
  });

  it('walks to the right over the temperature, on a cooling ramp too, and stops at the ends of the part', () => {
    const start = ask({ part: 'cooling 1' })!;
    const next = ask({ part: 'cooling 1', at: start.temperature!, step: 1 })!;
    assert.ok(next.temperature! > start.temperature! && next.time < start.time);
    assert.equal(ask({ part: 'cooling 1', step: 1e9 })!.part, 'cooling 1');
  });

  it('gets from one end of a hold to the other over the temperature, where many samples are equal', () => {
    let at = ask({ part: 'hold 2', at: -1e9 })!;
    const { x } = rawOf(curves.curve('heatflow/hold 2')!, 'mW', 'temperature');
    const seen = [at.temperature!];
    for (let k = 0; k < x.length; k++) {
      at = ask({ part: 'hold 2', at: at.temperature!, step: 1 })!;
      seen.push(at.temperature!);
    }
    assert.deepEqual([...new Set(seen)], [...new Set(x)]);
  });

  it('keeps to the parts shown, and says nothing where none is', () => {
    assert.equal(ask({ shownParts: ['heating 2'] })!.part, 'heating 2');
    assert.equal(ask({ shownParts: [] }), null);
  });

  it('reads overlaid runs at the same temperature in the part of the same name, in the units chosen', async () => {
    const engine = new Engine(
      new MemoryHost({ 'a.gloss': example('preform/pet-07.gloss'), 'pet-07.txt': example('preform/pet-07.txt') }),
    );
    const other = engine.curvesOf(await engine.evaluate('/lab/a.gloss'), { key: 'x:', run: curves })!;
    const units = { heatflow: 'W/g' };
    const at = cursorAt(curves, [other], {
      abscissa: 'temperature',
      at: 250,
      part: 'cooling 1',
      step: 0,
      shownParts: shown(),
      units,
    })!;
    const flows = at.values.filter((v) => v.lane === 'heatflow');
    assert.deepEqual(
      flows.map((v) => v.key),
      ['', 'x:'],
    );
    assert.equal(flows[0].y, flows[1].y);
    assert.equal(flows[0].unit, 'W/g');
  });
});

describe('the difference to another revision', () => {
  const data = syntheticRun({ steps: [{ at: 500, width: 10, loss: 20 }], noise: 0 });
  const rows = data.trimEnd().split('\n');

  it('is what was added to a curve, at the samples of the run, in the unit asked for', async () => {
    const own = await curvesOf({ 'a.gloss': 'run "a.csv"\n  mass 20 mg\n', 'a.csv': data });
    const heavier = rows.map((r, i) => (i === 0 ? r : r.replace(/[^,]*$/, (m) => (Number(m) + 0.2).toFixed(5))));
    const other = await curvesOf({ 'a.gloss': 'run "a.csv"\n  mass 20 mg\n', 'a.csv': `${heavier.join('\n')}\n` });
    for (const [unit, expected] of [
      ['mg', -0.2],
      ['%', -1],
    ] as const) {
      const lane = differenceLane(own, other, 'mass', 'time', unit)!;
      assert.equal(lane.id, 'difference:mass');
      assert.equal(lane.curves.length, 1);
      assert.equal(lane.curves[0].points, own.curve('mass/heating 1')!.points);
      const { y } = samples(lane.curves[0], 'temperature', -1e9, 1e9, 1e6, unit);
      for (const v of y) assert.ok(Math.abs(v - expected) < 1e-4, String(v));
    }
  });

  it('is there only where both exist, by straight lines between the samples of the other', async () => {
    const own = await curvesOf({ 'a.gloss': 'run "a.csv"\n  mass 20 mg\n', 'a.csv': data });
    // Every third row only, from 1200 s on, with 0.2 mg a 1000 s more: a straight line is hit exactly.
    const thinner = rows.filter((_, i) => i === 0 || (i > 200 && i % 3 === 0));
    const sloped = thinner.map((r, i) =>
      i === 0
        ? r
        : r.replace(/^([^,]*),([^,]*),.*$/, (_, t: string, T: string) => `${t},${T},${(Number(t) / 5000).toFixed(6)}`),
    );
    const other = await curvesOf({ 'a.gloss': 'run "a.csv"\n  mass 20 mg\n', 'a.csv': `${sloped.join('\n')}\n` });
    const lane = differenceLane(own, other, 'mass', 'time', 'mg')!;
    const [curve] = lane.curves;
    const theirs = other.curve('mass/heating 1')!.time;
    const mine = own.curve('mass/heating 1')!;
    assert.ok(curve.time[0] >= theirs[0] && curve.time[curve.points - 1] <= theirs[theirs.length - 1]);
    assert.equal(curve.points, mine.time.filter((t) => t >= theirs[0] && t <= theirs[theirs.length - 1]).length);
    curve.time.forEach((t, i) => {
      const own = mine.values[mine.time.indexOf(t)];
      assert.ok(Math.abs(curve.values[i] - (own - t / 5000)) < 1e-5);
    });
    assert.equal(differenceLane(own, other, 'heatflow', 'time', 'mW'), null);
    assert.equal(differenceLane(own, other, 'mass', 'time', 'W/g'), null);
  });
});
