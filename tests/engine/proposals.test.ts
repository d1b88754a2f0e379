import assert from 'node:assert/strict';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';

// Invented and exact: 10 mg heated at 10 K/min from 30 °C; 2 mg leave along a logistic curve about 330 °C, so that half is
// gone at 330 °C and all but 1e-4 of it between 256 and 404 °C. A glass step of the heat flow at 100 °C.
const rows = ['time,temperature,mass,heatflow', 'min,°C,mg,mW'];
for (let i = 0; i <= 6000; i += 1) {
  const t = 30 + i / 10;
  const mass = 10 - 2 / (1 + Math.exp(-(t - 330) / 8));
  const heat = 1 + 0.5 / (1 + Math.exp(-(t - 100) / 2));
  rows.push(`${i / 100},${t},${mass},${heat}`);
}
const files = { 'a.csv': rows.join('\n'), 'b.csv': 'Zeit;w (mg);foo\n0;1,5;2\n1;1,6;3\n2;1,7;4\n' };
const head = 'run "a.csv"\n  mass 10 mg\n  endothermic up\n';
const path = '/lab/a.gloss';

describe('what a run proposes', () => {
  it('is the loss it holds, with its size, a window about it and the rule that finds it', async () => {
    const engine = new Engine(new MemoryHost(files));
    const found = await engine.proposals(path, head);
    const step = found?.windows.find((w) => w.proposal.kind === 'step');
    assert.ok(step !== undefined);
    const { proposal, around } = step;
    const size = Number(/^a loss of about ([\d.]+) %$/.exec(proposal.comment)?.[1]);
    assert.ok(Math.abs(size - 20) < 0.05, proposal.comment);
    assert.ok(Number(proposal.from) < 290 && Number(proposal.from) > 200, proposal.from);
    assert.ok(Number(proposal.to) > 370 && Number(proposal.to) < 460, proposal.to);
    assert.equal(proposal.at, '330');
    assert.equal(around?.text, 'around 330 °C');
    assert.ok(around.found.from < 290 && around.found.to > 370);
    const glass = found?.windows.find((w) => w.proposal.kind === 'glass');
    assert.ok(glass !== undefined && glass.around === null);
    assert.match(glass.proposal.comment, /^a step, midpoint about (?:99|100|101)/);
  });

  it('is worked out once for a run, whatever else stands in the gloss', async () => {
    const engine = new Engine(new MemoryHost(files));
    await engine.proposals(path, head);
    await engine.proposals(path, `${head}step First \n# typing\n`);
    assert.equal(engine.counters.of('proposals'), 1);
    assert.equal(engine.counters.of('reads'), 1);
  });

  it('is nothing where no run can be read', async () => {
    const engine = new Engine(new MemoryHost(files));
    assert.equal(await engine.proposals(path, 'run "missing.csv"\n'), null);
    assert.equal(await engine.proposals(path, ''), null);
    assert.equal(await engine.proposals(path, 'method "M"\n'), null);
  });
});

describe('level ground beside a window', () => {
  const edges = async (statement: string) => new Engine(new MemoryHost(files)).levelEdges(path, head + statement, 'A');

  // Level by the rule of language 4: the slope is below 0.005 % of 10 mg in a kelvin and below 2 % of the largest rate; the
  // slope of the logistic curve is known in closed form.
  it('is found where the curve of known slope becomes level, for each end that stands on a flank', async () => {
    const slope = (t: number): number => {
      const e = Math.exp(-(t - 330) / 8);
      return (2 * e) / (8 * (1 + e) ** 2);
    };
    const [start, end] = await edges('step A 310..350 °C\n');
    assert.equal(start.token, 'window.from');
    assert.equal(end.token, 'window.to');
    const limit = Math.min(0.0005, 0.02 * slope(330));
    for (const [edge, way] of [
      [start, -1],
      [end, 1],
    ] as const) {
      const at = Number(edge.number);
      // A stretch of 10 K is judged as a whole and the written end is a whole kelvin.
      assert.ok(slope(at) <= limit * 1.2, `${edge.text} ${slope(at)}`);
      assert.ok(slope(at - way * 6) > limit, `${edge.text} is the nearest`);
    }
  });

  it('is not offered where an end is level already, or lies out of reach, and says so', async () => {
    const [start, end] = await edges('step A 200..340 °C\n');
    assert.equal(start.number, null);
    assert.equal(start.text, 'the mass is level at the start already');
    assert.ok(Number(end.number) > 380, end.text);
    assert.deepEqual(await edges('step A around 330 °C\n'), []);
    assert.deepEqual(await edges('glass A 60..140 °C\n'), []);
    assert.deepEqual(await edges('step B 200..340 °C\n'), []);
  });

  it('is written in the unit of the end', async () => {
    const celsius = await edges('step A 310..350 °C\n');
    const kelvin = await edges('step A 583..623 K\n');
    assert.ok(Math.abs(Number(kelvin[0].number) - Number(celsius[0].number) - 273.15) <= 1, kelvin[0].text);
    assert.match(kelvin[0].text, / K$/);
  });
});

describe('the columns of a data file', () => {
  it('are told as its header has them, also where it is not settled what they are', async () => {
    const engine = new Engine(new MemoryHost(files));
    const gloss = 'run "b.csv"\n';
    assert.deepEqual(
      (await engine.columns(path, gloss, null)).map((c) => [c.number, c.header, c.unitText]),
      [
        [1, 'Zeit', ''],
        [2, 'w (mg)', 'mg'],
        [3, 'foo', ''],
      ],
    );
    assert.deepEqual(await engine.columns(path, gloss, 'none.csv'), []);
    assert.equal((await engine.columns(path, gloss, 'a.csv')).length, 4);
  });
});
