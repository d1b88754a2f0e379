import assert from 'node:assert/strict';
import { differenceLane } from '../../../server/src/engine/curves/difference';
import type { RunCurves } from '../../../server/src/engine/curves/runCurves';
import { samples } from '../../../server/src/engine/curves/samples';
import { plotState } from '../../../server/src/presentation/plot/plotState';
import { shownValue } from '../../../server/src/presentation/shown';
import type { Abscissa, Band, ViewPoint, ViewState } from '../../../server/src/protocol/view';
import { defaultChoices } from '../../../server/src/protocol/view';
import { evaluated, example, inputOf, limestone, preform, stateOf, twoSteps, type Evaluated } from './evaluated';

const bandOf = (state: ViewState, name: string): Band => state.bands.find((b) => b.name === name)!;

/** The drawn value of a lane nearest to a point of a construction. */
function drawnAt(
  curves: RunCurves,
  state: ViewState,
  lane: string,
  part: string,
  at: ViewPoint,
  abscissa: Abscissa,
): number {
  const unit = state.lanes.find((l) => l.id === lane)!.unit;
  const curve = curves.lane(lane)!.curves.find((c) => c.part === part)!;
  const { x, y } = samples(curve, abscissa, -Infinity, Infinity, 1e6, unit);
  const wanted = abscissa === 'time' ? at.time : at.temperature!;
  let best = 0;
  x.forEach((v, i) => {
    if (Math.abs(v - wanted) < Math.abs(x[best] - wanted)) best = i;
  });
  return y[best];
}

/** The point of a straight line at an ordinate. */
function onLine(points: readonly ViewPoint[], y: number): ViewPoint {
  const [a, b] = [points[0], points[points.length - 1]];
  const share = (y - a.y) / (b.y - a.y);
  const at = (from: number, to: number): number => from + share * (to - from);
  return { time: at(a.time, b.time), temperature: at(a.temperature!, b.temperature!), y };
}

describe('the state of the curves view, of the limestone', () => {
  let of: Evaluated;
  let state: ViewState;

  before(async () => {
    of = await evaluated(limestone(), '/lab/limestone/vq217-1.gloss');
    state = stateOf(of);
  });

  it('says what is measured and how', () => {
    assert.equal(
      state.title,
      'vq217-1 · Dolomitic limestone VQ-217, specimen 1 · 20.052 mg · carbon dioxide 50 mL/min',
    );
    assert.equal(state.conditions[0], 'alumina 85 µL, no lid');
    assert.ok(state.conditions.some((c) => /^heating 1: 31\.\d to 999\.\d °C at 9\.99 K\/min$/.test(c)));
    assert.ok(state.conditions.includes('blank blank-co2-1.gloss subtracted from mass, heatflow'));
  });

  it('has a lane for mass, rate and heat flow, quantity over unit, the direction on the heat flow alone', () => {
    assert.deepEqual(
      state.lanes.map((l) => [l.id, l.label, l.direction]),
      [
        ['mass', 'm/%', null],
        ['rate', '−dm/dt/(%/min)', null],
        ['heatflow', 'Φ/mW', 'endothermic down'],
      ],
    );
    assert.ok(
      state.lanes.every((l) => l.curves.length === 3 && l.curves.every((c) => c.of === 'run' && c.name === '')),
    );
  });

  it('is plain data that survives a message', () => {
    assert.deepEqual(JSON.parse(JSON.stringify(state)), state);
  });

  it('prints every result as the other outputs do, and its number at full precision', () => {
    for (const result of of.snapshot.results) {
      const row = state.ledger.rows.find((r) => r.id === result.id)!;
      assert.ok(shownValue(result).startsWith(row.value), `${row.value} of ${shownValue(result)}`);
      assert.equal(row.number, result.value);
    }
  });

  it('gives a verdict in the row of the result that is judged, and a row to a requirement on several', () => {
    const limit = (id: string): string => state.ledger.rows.find((r) => r.id === id)!.limit;
    assert.equal(limit('dolomite'), 'met (60..65 %)');
    assert.equal(limit('Moisture.loss'), 'met (≤ 0.5 %)');
    assert.equal(limit('First.loss'), 'in dolomite, calcite, Balance, MgO_limit');
    assert.equal(limit('require Balance'), 'met (99.5..100.5 %)');
    assert.equal(state.ledger.rows.filter((r) => r.verdict !== null).length, of.snapshot.requirements.length);
    const balance = state.ledger.rows.find((r) => r.id === 'require Balance')!;
    assert.equal(balance.name, 'Balance');
    assert.ok(balance.main && balance.number !== null && /^99\.9\d+ ± 0\.\d+ %$/.test(balance.value));
  });

  it('opens a row to definition, method, window, basis, blank, shares that make 100 %, and the edges', () => {
    const details = new Map(
      state.ledger.rows.find((r) => r.id === 'First.loss')!.details.map((d) => [d.label, d.text]),
    );
    assert.match(details.get('Definition')!, /over the basis.*ISO 11358-1/);
    assert.equal(details.get('Window'), '620..842 °C in heating 1');
    assert.equal(details.get('Basis'), 'initial');
    assert.match(details.get('Blank')!, /"blank-co2-1.gloss", "blank-co2-2.gloss" subtracted from mass/);
    assert.match(details.get('Edges')!, /^620 °C moved by ±5 K: ±0\.\d+ %; 842 °C moved by ±5 K: ±0\.\d+ %$/);
    assert.equal(details.get('Written in'), 'limestone/limestone.gloss, line 13');
    const shares = [...details.get('Uncertainty from')!.matchAll(/ ([\d.]+) % \(/g)].map((m) => Number(m[1]));
    const sum = shares.reduce((a, b) => a + b, 0);
    assert.ok(sum > 96 && sum < 101, String(sum));
  });

  it('says of an edge what the result does when it moves: as evaluations with the edge moved by 5 K', async () => {
    const loss = async (window: string): Promise<number> => {
      const files = limestone();
      files['limestone/limestone.gloss'] = files['limestone/limestone.gloss'].replace('620..842', window);
      const { snapshot } = await evaluated(files, '/lab/limestone/vq217-1.gloss');
      return snapshot.results.find((r) => r.id === 'First.loss')!.value!;
    };
    const values = [await loss('615..842'), await loss('620..842'), await loss('625..842')];
    const halfRange = (Math.max(...values) - Math.min(...values)) / 2;
    const details = state.ledger.rows.find((r) => r.id === 'First.loss')!.details;
    const said = /620 °C moved by ±5 K: ±([\d.]+) %/.exec(details.find((d) => d.label === 'Edges')!.text)!;
    assert.ok(Math.abs(Number(said[1]) - halfRange) < 0.05 * halfRange, `${said[1]} of ${halfRange}`);
  });

  it('draws edges of the method and of the rule as such, with the decimals of the text', () => {
    const edges = (name: string): readonly unknown[] => {
      const { from, to } = bandOf(state, name);
      return [from.source, from.token, from.value, from.decimals, to.source, to.token, to.value];
    };
    assert.deepEqual(edges('First'), ['method', 'window.from', 620, 0, 'method', 'window.to', 842]);
    const second = of.snapshot.results.find((r) => r.name === 'Second')!.window!;
    assert.deepEqual(edges('Second'), ['rule', 'window.at', second.from, 1, 'rule', 'window.at', second.to]);
    assert.deepEqual(bandOf(state, 'First').lanes, ['mass', 'rate']);
    assert.deepEqual(bandOf(state, 'FirstHeat').lanes, ['heatflow']);
  });

  it('stays put on both abscissas: an edge lies where the part has its temperature', () => {
    for (const band of state.bands) {
      for (const edge of [band.from, band.to]) {
        assert.ok(Math.abs(of.curves.temperatureAt(band.part, edge.time)! - edge.temperature!) < 0.01, band.name);
      }
    }
  });

  it('draws the construction in unit and direction of the lane: a peak stands on its curve, also turned down', () => {
    for (const unit of ['mW', 'W/g']) {
      const choices = { ...defaultChoices, units: { heatflow: unit } };
      const here = stateOf(of, { choices });
      const { construction, part } = bandOf(here, 'FirstHeat');
      const peak = construction.find((s) => s.shape === 'mark' && s.quantity === 'peak');
      assert.ok(peak?.shape === 'mark');
      assert.ok(peak.at.y < 0);
      const drawn = drawnAt(of.curves, here, 'heatflow', part, peak.at, 'temperature');
      assert.ok(Math.abs(peak.at.y - drawn) < 0.02 * Math.abs(drawn), `${peak.at.y} ${drawn}`);
      const area = construction.find((s) => s.shape === 'area');
      assert.ok(area?.shape === 'area' && area.baseline.length > 60);
      assert.deepEqual([area.from, area.to], [area.baseline[0], area.baseline[area.baseline.length - 1]]);
      for (const end of [area.from, area.to]) {
        assert.ok(
          Math.abs(end.y - drawnAt(of.curves, here, 'heatflow', part, end, 'time')) < 0.03 * Math.abs(peak.at.y),
        );
      }
    }
  });

  it('marks temperatures with the very words of the ledger', () => {
    const { construction } = bandOf(state, 'First');
    const texts = construction.flatMap((s) => (s.shape === 'mark' ? [s.text] : []));
    const value = (id: string): string => state.ledger.rows.find((r) => r.id === id)!.value;
    assert.deepEqual(texts, [`start ${value('First.start')}`, `end ${value('First.end')}`]);
  });

  it('shows findings with line and statement', () => {
    const [finding] = state.findings;
    assert.deepEqual([finding.code, finding.line, finding.statement], ['caution-toxic-gas', 7, 'run "vq217-1.csv"']);
    const text = of.snapshot.gloss.tree.text;
    assert.match(text.split('\n')[finding.line - 1], /contains/);
  });

  it('shows the method with this run: its own edges are its own, and its title comes first', () => {
    const method = stateOf(of, { role: 'method' });
    assert.match(method.title, /^Carbonates in limestone under carbon dioxide · with vq217-1 · /);
    assert.equal(bandOf(method, 'First').from.source, 'own');
    assert.equal(bandOf(method, 'First').statement, 'method/step First');
  });

  it('lays another run over it, muted by name, under ids of its own', async () => {
    const second = await of.engine.evaluate('/lab/limestone/vq217-2.gloss');
    const over = of.engine.curvesOf(second, { key: '1:', run: of.curves });
    const uri = 'file:///lab/limestone/vq217-2.gloss';
    const laid = stateOf(of, { overlays: [{ uri, name: 'vq217-2', curves: over, reason: null }] });
    const mass = laid.lanes[0];
    assert.deepEqual(
      mass.curves.map((c) => [c.of, c.name, c.id.startsWith('1:')]),
      [...new Array<unknown>(3).fill(['run', '', false]), ...new Array<unknown>(3).fill(['overlay', 'vq217-2', true])],
    );
    assert.ok(mass.extent.from <= state.lanes[0].extent.from);
    assert.deepEqual(laid.overlays, [{ uri, name: 'vq217-2', reason: null }]);
    const failed = stateOf(of, { overlays: [{ uri, name: 'vq217-2', curves: null, reason: null }] });
    assert.equal(failed.overlays[0].reason, 'no run was read');
  });

  it('lays at most ten', () => {
    const overlays = Array.from({ length: 12 }, (_, i) => ({
      uri: `file:///${i}`,
      name: `${i}`,
      curves: null,
      reason: null,
    }));
    assert.equal(stateOf(of, { overlays }).overlays.length, 10);
  });

  it('lays another revision over it, with the difference below its lane and in the ledger', async () => {
    const files = limestone();
    files['limestone/vq217-1.gloss'] = files['limestone/vq217-1.gloss'].replace('20.052', '20.000');
    const other = await evaluated(files, '/lab/limestone/vq217-1.gloss');
    const curves = other.engine.curvesOf(other.snapshot, { key: 'HEAD:', run: of.curves })!;
    const difference = differenceLane(of.curves, curves, 'mass', 'time', '%')!;
    const since = new Map([['First.loss', { text: '−0.04', moved: true }]]);
    const against = { name: 'HEAD', curves, differences: [difference], since };
    const compared = stateOf(of, { against, choices: { ...defaultChoices, against: 'HEAD' } });
    assert.deepEqual(compared.lanes.map((l) => [l.id, l.label]).slice(0, 2), [
      ['mass', 'm/%'],
      ['difference:mass', 'Δ(m)/%'],
    ]);
    assert.ok(compared.lanes[0].curves.some((c) => c.of === 'against' && c.name === 'HEAD'));
    // 20.000 for 20.052 mg: every percentage of the old revision is 0.26 % of itself larger.
    assert.ok(Math.abs(compared.lanes[1].extent.from + 0.26) < 0.002);
    const row = compared.ledger.rows.find((r) => r.id === 'First.loss')!;
    assert.deepEqual([row.since, row.sinceMoved], ['−0.04', true]);
    assert.equal(compared.ledger.columns.find((c) => c.id === 'since')!.title, 'Since HEAD');
  });

  it('has words and offers where there is nothing to draw', () => {
    const offers = [{ text: 'Draft a gloss for a run', command: 'draft', argument: '' }];
    const empty = plotState({ ...inputOf(of), snapshot: null, curves: null, offers });
    assert.deepEqual([empty.lanes, empty.bands, empty.ledger.rows, empty.title], [[], [], [], '']);
    assert.deepEqual(empty.offers, offers);
    const unread = plotState({ ...inputOf(of), curves: null });
    assert.deepEqual([unread.lanes, unread.bands, unread.parts], [[], [], []]);
    assert.ok(unread.ledger.rows.length > 0);
  });
});

describe('the state of the curves view, of heat-cool-heat', () => {
  let of: Evaluated;

  before(async () => {
    of = await evaluated(preform(), '/lab/preform/pet-07.gloss');
  });

  it('has the temperature as a lane over the time only', () => {
    const over = (abscissa: Abscissa): string[] =>
      stateOf(of, { choices: { ...defaultChoices, abscissa } }).lanes.map((l) => l.label);
    assert.deepEqual(over('temperature'), ['Φ/mW']);
    assert.deepEqual(over('time'), ['Φ/mW', 'T/°C']);
  });

  it('leaves curves and ranges of hidden parts out, and names the parts still', () => {
    const hidden = ['cooling 1', 'hold 2'];
    const state = stateOf(of, { choices: { ...defaultChoices, hiddenParts: hidden } });
    assert.deepEqual(
      state.parts.filter((p) => !p.shown).map((p) => p.name),
      ['hold 2', 'cooling 1'],
    );
    assert.ok(state.lanes[0].curves.every((c) => !hidden.includes(c.part)));
    assert.ok(state.lanes[0].extent.from > stateOf(of).lanes[0].extent.from);
  });

  it('begins a window on the cooling ramp at the higher temperature', () => {
    const band = bandOf(stateOf(of), 'FromMelt');
    assert.deepEqual(
      [band.from.value, band.from.token, band.to.value, band.part],
      [230, 'window.to', 160, 'cooling 1'],
    );
    assert.ok(band.from.time < band.to.time);
  });

  it('keeps to units that a lane has: an unknown choice is the usual one', () => {
    const state = stateOf(of, { choices: { ...defaultChoices, units: { heatflow: 'J/kg' } } });
    assert.equal(state.lanes[0].unit, 'mW');
  });
});

describe('the state of the curves view, of a rate', () => {
  it('marks the passage of a rate on the curve in every unit', async () => {
    const gloss = `run "a.csv"\n  mass 20 mg\ncrossing Early rate = 10 % of maximum 200..420 °C\n  rising\nonset Rise 200..300 °C\n  of rate\n`;
    const of = await evaluated({ 'a.gloss': gloss, 'a.csv': twoSteps });
    for (const unit of ['%/min', '%/K', 'mg/min', 'mg/K']) {
      const state = stateOf(of, { choices: { ...defaultChoices, units: { rate: unit } } });
      const lane = state.lanes.find((l) => l.id === 'rate')!;
      assert.equal(lane.unit, unit);
      const mark = bandOf(state, 'Early').construction.find((s) => s.shape === 'mark');
      assert.ok(mark?.shape === 'mark');
      const drawn = drawnAt(of.curves, state, 'rate', 'heating 1', mark.at, 'temperature');
      assert.ok(Math.abs(mark.at.y - drawn) < 0.05 * drawn, `${unit}: ${mark.at.y} ${drawn}`);
      // The steepest tangent of the rate touches it: where it crosses half of the largest rate of a logistic, both are near.
      const tangent = bandOf(state, 'Rise').construction.find((s) => s.shape === 'line' && s.role === 'tangent');
      assert.ok(tangent?.shape === 'line');
      const largest = of.curves.lane('rate')!.factor(unit, 'heating 1')! * (10 / 4 / 8) * 10;
      const middle = onLine(tangent.points, largest / 2);
      assert.ok(
        Math.abs(drawnAt(of.curves, state, 'rate', 'heating 1', middle, 'temperature') - middle.y) < 0.1 * largest,
      );
    }
  });

  it('writes the rate per kelvin with its own symbol', async () => {
    const of = await evaluated({ 'a.gloss': 'run "a.csv"\n  mass 20 mg\n', 'a.csv': twoSteps });
    const state = stateOf(of, { choices: { ...defaultChoices, units: { rate: 'mg/K' } } });
    assert.equal(state.lanes[1].label, '−dm/|dT|/(mg/K)');
  });
});

describe('the state of the curves view, of windows that overlap', () => {
  it('names the overlapping band in each, and the finding in its row; an allowed one is silent', async () => {
    const gloss = `run "a.csv"\n  mass 20 mg\nstep First 200..520 °C\nstep Second 480..750 °C\n`;
    const state = stateOf(await evaluated({ 'a.gloss': gloss, 'a.csv': twoSteps }));
    assert.deepEqual([bandOf(state, 'First').overlaps, bandOf(state, 'Second').overlaps], [['Second'], ['First']]);
    assert.equal(bandOf(state, 'First').severity, 'warning');
    assert.match(state.ledger.rows.find((r) => r.id === 'First.loss')!.limit, /window-overlap/);
    const allowed = `${gloss}allow window-overlap because "same effect"\n`;
    const silent = stateOf(await evaluated({ 'a.gloss': allowed, 'a.csv': twoSteps }));
    assert.deepEqual([bandOf(silent, 'First').overlaps, bandOf(silent, 'Second').overlaps], [[], []]);
    const apart = stateOf(await evaluated({ 'a.gloss': gloss.replace('520', '420'), 'a.csv': twoSteps }));
    assert.deepEqual(bandOf(apart, 'First').overlaps, []);
    assert.equal(bandOf(apart, 'First').severity, null);
  });
});

describe('heat flows without a declared direction', () => {
  it('say so on the lane, and are not laid over one that declares it', async () => {
    const files = { ...preform() };
    files['preform/bare.gloss'] = 'run "pet-07.txt"\n  mass 8.2 mg\n';
    const of = await evaluated(files, '/lab/preform/pet-07.gloss');
    const bare = await of.engine.evaluate('/lab/preform/bare.gloss');
    const own = of.engine.curvesOf(bare)!;
    assert.equal(stateOf({ snapshot: bare, curves: own }).lanes[0].direction, 'endothermic direction not declared');
    const curves = of.engine.curvesOf(bare, { key: '1:', run: of.curves });
    const laid = stateOf(of, { overlays: [{ uri: 'u', name: 'bare', curves, reason: null }] });
    assert.ok(laid.lanes[0].curves.every((c) => c.of === 'run'));
    assert.match(laid.overlays[0].reason!, /does not declare its endothermic direction/);
  });
});

describe('a change of gas', () => {
  it('is marked where the segment begins that it is stated from', async () => {
    const gloss = example('limestone/vq217-n2.gloss').replace(
      /^( *)atmosphere.*$/m,
      '$1atmosphere nitrogen 50 mL/min\n$1atmosphere air 50 mL/min from cooling 1',
    );
    const files = {
      'a.gloss': gloss,
      'vq217-n2.csv': example('limestone/vq217-n2.csv'),
      'limestone.gloss': example('limestone/limestone.gloss'),
      'blank-n2.gloss': example('limestone/blank-n2.gloss'),
      'blank-n2.csv': example('limestone/blank-n2.csv'),
    };
    const of = await evaluated(files);
    const state = stateOf(of);
    const cooling = state.parts.find((p) => p.name === 'cooling 1')!;
    assert.equal(state.gasChanges.length, 1);
    const [change] = state.gasChanges;
    assert.deepEqual([change.gas, change.time], ['air', cooling.start]);
    assert.ok(Math.abs(change.temperature - cooling.from) < 2);
    assert.ok(state.conditions.some((c) => c === 'air 50 mL/min from cooling 1'));
  });
});
