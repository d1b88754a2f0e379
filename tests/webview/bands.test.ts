import assert from 'node:assert/strict';
import type { Band, Edge, Part } from '../../server/src/protocol/view';
import { bandAt, edgeText, overlaps, placedBands } from '../../webview/src/geometry/bands';
import { stacked, arranged, movedLane } from '../../webview/src/geometry/lanes';
import { besideEachOther } from '../../webview/src/geometry/besideEachOther';

const parts: Part[] = [
  { name: 'heating 1', shown: true, start: 0, end: 6000, from: 0, to: 1000 },
  { name: 'cooling 1', shown: true, start: 6000, end: 9000, from: 1000, to: 0 },
];
const edge = (time: number, temperature: number | null): Edge => ({
  time,
  temperature,
  unit: '°C',
  value: temperature ?? 0,
  decimals: 1,
  source: 'own',
  token: 'window.from',
});
const band = (name: string, from: Edge, to: Edge, more: Partial<Band> = {}): Band => ({
  statement: `step ${name}`,
  name,
  kind: 'step',
  lanes: ['mass'],
  part: 'heating 1',
  from,
  to,
  overlaps: [],
  severity: null,
  construction: [],
  ...more,
});
const first = band('First', edge(600, 100), edge(1800, 300), { overlaps: ['Second'] });
const second = band('Second', edge(1500, 250), edge(2400, 400), { overlaps: ['First'], lanes: ['mass', 'rate'] });
const cooled = band('Cooled', edge(6600, 800), edge(7800, 400), { part: 'cooling 1' });

describe('a band on the abscissa', () => {
  it('lies between its edges in °C and in s', () => {
    assert.deepEqual(placedBands([first], parts, 'temperature')[0].range, { from: 100, to: 300 });
    assert.deepEqual(placedBands([first], parts, 'time')[0].range, { from: 600, to: 1800 });
  });

  it('of a cooling ramp is turned over temperature: its start is the right edge', () => {
    const [placed] = placedBands([cooled], parts, 'temperature');
    assert.deepEqual([placed.range, placed.low], [{ from: 400, to: 800 }, 'to']);
    const [inTime] = placedBands([cooled], parts, 'time');
    assert.deepEqual([inTime.range, inTime.low], [{ from: 6600, to: 7800 }, 'from']);
  });

  it('is gone with its part, and where an edge has no temperature', () => {
    const hidden = [{ ...parts[0], shown: false }, parts[1]];
    assert.deepEqual(
      placedBands([first, cooled], hidden, 'temperature').map((p) => p.band.name),
      ['Cooled'],
    );
    const timeless = band('Timeless', edge(10, null), edge(20, null));
    assert.deepEqual(placedBands([timeless], parts, 'temperature'), []);
    assert.equal(placedBands([timeless], parts, 'time').length, 1);
  });

  it('follows an edge that is dragged, also past the other one', () => {
    const at = (x: number) =>
      placedBands([first], parts, 'temperature', { statement: 'step First', edge: 'from', at: x })[0];
    assert.deepEqual(at(150).range, { from: 150, to: 300 });
    assert.deepEqual([at(350).range, at(350).low], [{ from: 300, to: 350 }, 'to']);
  });
});

describe('bands that overlap with a finding', () => {
  it('are hatched once, where and in the lanes in which they do', () => {
    const found = overlaps(placedBands([first, second, cooled], parts, 'temperature'));
    assert.deepEqual(found, [{ range: { from: 250, to: 300 }, lanes: ['mass'] }]);
  });

  it('are not hatched without the finding, nor over another part at the same temperatures', () => {
    const quiet = placedBands(
      [
        { ...first, overlaps: [] },
        { ...second, overlaps: [] },
      ],
      parts,
      'temperature',
    );
    assert.deepEqual(overlaps(quiet), []);
    const over = { ...cooled, from: edge(6600, 280), to: edge(7800, 120), overlaps: ['First'] };
    assert.deepEqual(overlaps(placedBands([first, over], parts, 'temperature')), []);
  });
});

describe('a click on bands', () => {
  const placed = placedBands([band('Wide', edge(0, 0), edge(3000, 500)), first, second], parts, 'temperature');

  it('means the selected one where it is there, else the narrowest', () => {
    assert.equal(bandAt(placed, 'mass', 275, 'step Wide')?.band.name, 'Wide');
    assert.equal(bandAt(placed, 'mass', 275, null)?.band.name, 'Second');
    assert.equal(bandAt(placed, 'mass', 275, 'step Elsewhere')?.band.name, 'Second');
  });

  it('means none in a lane that no band there reads, and outside all', () => {
    assert.equal(bandAt(placed, 'heatflow', 275, null), null);
    assert.equal(bandAt(placed, 'mass', 900, null), null);
  });
});

describe('the words of an edge', () => {
  it('have the decimals of the text', () => {
    assert.equal(edgeText(edge(0, 620)), '620.0 °C');
    assert.equal(edgeText({ ...edge(0, 0), unit: 'min', value: 5.1666, decimals: 2 }), '5.17 min');
  });
});

describe('lanes', () => {
  const lanes = ['mass', 'rate', 'heatflow', 'ion(44)'].map((id) => ({ id }));

  it('stand in a person’s order; a new one comes last; hidden ones are left out', () => {
    const order = ['heatflow', 'mass', 'rate'];
    assert.deepEqual(
      arranged(lanes, order, []).map((l) => l.id),
      ['heatflow', 'mass', 'rate', 'ion(44)'],
    );
    assert.deepEqual(
      arranged(lanes, order, ['mass']).map((l) => l.id),
      ['heatflow', 'rate', 'ion(44)'],
    );
  });

  it('change places with the neighbour that is seen', () => {
    const all = ['mass', 'rate', 'heatflow'];
    assert.deepEqual(movedLane(all, ['mass', 'heatflow'], 'heatflow', -1), ['heatflow', 'rate', 'mass']);
    assert.deepEqual(movedLane(all, all, 'mass', -1), all);
  });

  it('are stacked without a gap but the bar, each head as high as its rows of tabs', () => {
    const { boxes, bottom } = stacked([
      { id: 'a', rows: 1, height: 100 },
      { id: 'b', rows: 3, height: 50 },
    ]);
    assert.equal(boxes[0].plotBottom - boxes[0].plotTop, 100);
    assert.ok(boxes[1].top > boxes[0].plotBottom && boxes[1].head > boxes[0].head);
    assert.equal(bottom, boxes[1].plotBottom);
  });
});

describe('names beside each other', () => {
  it('stand where they are wanted where there is room, and never on one another', () => {
    assert.deepEqual(
      besideEachOther(
        [
          { left: 10, width: 20 },
          { left: 100, width: 20 },
        ],
        0,
        300,
        5,
      ),
      [10, 100],
    );
    assert.deepEqual(
      besideEachOther(
        [
          { left: 10, width: 50 },
          { left: 30, width: 20 },
        ],
        0,
        300,
        5,
      ),
      [10, 65],
    );
    assert.deepEqual(
      besideEachOther(
        [
          { left: 200, width: 60 },
          { left: 280, width: 60 },
        ],
        0,
        300,
        5,
      ),
      [175, 240],
    );
  });
});
