import assert from 'node:assert/strict';
import { cursorAt } from '../../../server/src/engine/curves/cursor';
import { cursorAnswer } from '../../../server/src/presentation/plot/cursorAnswer';
import type { PlotCurves } from '../../../server/src/presentation/plot/plotCurves';
import { evaluated, limestone } from './evaluated';

const generation = { uri: 'file:///lab/a.gloss', version: 1, revision: 2 };

describe('the reading of a cursor', () => {
  it('says every signal with the digits its range can tell, in print and in one sentence', async () => {
    const { curves } = await evaluated(limestone(), '/lab/limestone/vq217-1.gloss');
    const reading = cursorAt(curves, [], {
      abscissa: 'temperature',
      at: 700,
      part: null,
      step: 0,
      shownParts: curves.parts.map((p) => p.name),
      units: { mass: 'mg' },
    })!;
    const answer = cursorAnswer(generation, reading, curves, new Map());
    const texts = answer.values.map((v) => v.text);
    assert.match(texts[0], /^T 700\.\d °C$/);
    assert.match(texts[1], /^t \d+\.\d\d min$/);
    assert.match(texts[2], /^m 19\.\d{2,3} mg$/);
    assert.match(texts[3], /^−dm\/dt \d\.\d{2,3} %\/min$/);
    assert.match(texts[4], /^Φ -\d+\.\d\d mW$/);
    assert.deepEqual(
      answer.values.map((v) => v.lane),
      ['', '', 'mass', 'rate', 'heatflow'],
    );
    assert.match(
      answer.spoken,
      /^700\.\d °C, \d+\.\d\d min, heating 1; mass 19\.\d+ mg; rate of mass loss [\d.]+ %\/min; heat flow -[\d.]+ mW, endothermic down\.$/,
    );
    assert.equal(answer.time, reading.time);
  });

  it('names the runs laid over, and counts the minutes of the part', () => {
    const curves: PlotCurves = {
      endothermic: null,
      parts: [{ name: 'hold 1', start: 600, end: 1200, from: 850, to: 850, rate: null }],
      lanes: [
        {
          id: 'mass',
          signal: 'mass',
          units: ['%'],
          curves: [],
          factor: () => 1,
          extent: () => ({ from: 99, to: 99 }),
        },
      ],
      time: { from: 0, to: 1200 },
      temperatureAt: () => 850,
      timeAt: () => null,
    };
    const values = [
      { lane: 'mass', unit: '%', y: 98.76543, key: '' },
      { lane: 'mass', unit: '%', y: 97.5, key: '1:' },
    ];
    const answer = cursorAnswer(
      generation,
      { part: 'hold 1', time: 690, temperature: 850.04, values },
      curves,
      new Map([['1:', 'vq217-2']]),
    );
    assert.deepEqual(
      answer.values.map((v) => [v.label, v.text]),
      [
        ['T', 'T 850.0 °C'],
        ['t', 't 11.50 min (1.50 min of hold 1)'],
        ['m', 'm 98.77 %'],
        ['m, vq217-2', 'm 97.50 %'],
      ],
    );
    assert.equal(answer.spoken, '850.0 °C, 11.50 min, hold 1; mass 98.77 %; vq217-2 mass 97.50 %.');
  });
});
