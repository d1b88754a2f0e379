import assert from 'node:assert/strict';
import type { FromView, ToView } from '../../server/src/protocol/messages';
import type { EdgeEdit, EdgeRequest, ViewState } from '../../server/src/protocol/view';
import { edges } from '../../webview/src/control/edges';
import { calls } from '../../webview/src/state/calls';
import { numberFrom } from '../../webview/src/parts/numberFrom';
import {
  begun,
  draggedTo,
  placeOf,
  requestOf,
  rounded,
  setTo,
  stepped,
  type EdgeMove,
} from '../../webview/src/geometry/edgeMove';
import { temperatureOfTime, timeOfTemperature } from '../../webview/src/geometry/timeOfTemperature';
import { bandOf, cooling, heating, stateOf } from './state';
import { settled, TurnedTimers } from './turnedTimers';

function setUp(state: ViewState = stateOf(5), choice: 'gloss' | 'method' | null = 'gloss') {
  const posted: FromView[] = [];
  const told: string[] = [];
  const timers = new TurnedTimers();
  const asking = calls((m) => posted.push(m));
  let isUp = true;
  const moving = edges({
    calls: asking,
    timers,
    state: () => state,
    isConnected: () => isUp,
    abscissa: () => state.choices.abscissa,
    redraw: () => undefined,
    tell: (text) => told.push(text),
    choose: () => Promise.resolve(choice),
  });
  const sent = (type: FromView['type']): FromView[] => posted.filter((m) => m.type === type);
  const edit = (): EdgeRequest => {
    const [one] = sent('edgeEdit');
    assert.ok(one?.type === 'edgeEdit');
    return one.request;
  };
  const reply = async (message: FromView | undefined, answer: EdgeEdit | null) => {
    assert.ok(message?.type === 'edgeEdit');
    asking.answer({ type: 'edgeEdit', call: message.call, answer } satisfies ToView);
    await settled();
  };
  return { moving, posted, sent, edit, told, reply, asking, timers, down: () => (isUp = false) };
}

const done: EdgeEdit = {
  ok: true,
  uri: 'file:///a.gloss',
  version: 1,
  edits: [],
  label: 'Move the start of First to 621.0 °C',
  touches: 1,
  caret: null,
};

describe('a moved edge', () => {
  it('is one edit, however many steps it took', async () => {
    const { moving, sent, edit } = setUp();
    assert.ok(moving.begin('step First', 'from', 'keys'));
    for (let k = 0; k < 25; k++) moving.step(1);
    moving.commit();
    moving.commit();
    await settled();
    assert.equal(sent('edgeEdit').length, 1);
    assert.deepEqual([edit().typed, edit().perPixel, edit().into], [622.5, null, 'gloss']);
    assert.equal(edit().generation.revision, 5);
  });

  it('that is left changes nothing: no edit is sent', async () => {
    const { moving, sent, told } = setUp();
    moving.begin('step First', 'from', 'pointer');
    moving.drag(650, 0.8);
    moving.cancel();
    moving.commit();
    await settled();
    assert.deepEqual(sent('edgeEdit'), []);
    assert.equal(moving.move, null);
    assert.match(told.join(), /620\.0 °C/);
  });

  it('that came back to where it was is no edit', async () => {
    const { moving, sent } = setUp();
    moving.begin('step First', 'from', 'keys');
    moving.step(1);
    moving.step(-1);
    moving.commit();
    await settled();
    assert.deepEqual(sent('edgeEdit'), []);
  });

  it('has one preview out at a time, and shows the last', async () => {
    const { moving, sent, asking } = setUp();
    moving.begin('step First', 'from', 'pointer');
    for (let x = 621; x < 640; x++) moving.drag(x, 0.8);
    assert.equal(sent('edgePreview').length, 1);
    const answer = async (written: string): Promise<void> => {
      const last = sent('edgePreview').at(-1);
      assert.ok(last?.type === 'edgePreview');
      asking.answer({
        type: 'edgePreview',
        call: last.call,
        answer: { generation: last.request.generation, written, rows: [] },
      });
      await settled();
    };
    await answer('621.0');
    assert.equal(sent('edgePreview').length, 2);
    const last = sent('edgePreview')[1];
    assert.ok(last.type === 'edgePreview' && last.request.typed === 639);
    await answer('639.0');
    assert.equal(moving.preview?.written, '639.0');
  });

  it('of the method waits for the choice, and goes where it was chosen', async () => {
    const state = stateOf(5, { bands: [bandOf({}, { from: { source: 'method' } })] });
    for (const [choice, count] of [
      ['gloss', 1],
      ['method', 1],
      [null, 0],
    ] as const) {
      const { moving, sent, edit } = setUp(state, choice);
      moving.begin('step First', 'from', 'keys');
      moving.step(10);
      moving.commit();
      await settled();
      assert.equal(sent('edgeEdit').length, count);
      if (count === 1) assert.equal(edit().into, choice);
      else assert.equal(moving.move, null);
    }
  });

  it('is refused in words where the text cannot be edited or the server is not there', () => {
    const closed = setUp(stateOf(5, { editable: false }));
    assert.ok(!closed.moving.begin('step First', 'from', 'pointer'));
    assert.equal(closed.told.length, 1);
    const offline = setUp();
    offline.down();
    assert.ok(!offline.moving.begin('step First', 'from', 'pointer'));
    assert.equal(offline.told.length, 1);
    assert.ok(!setUp().moving.begin('step Elsewhere', 'from', 'pointer'));
  });

  it('tells the reason where the edit was refused, and stands where the text has it', async () => {
    const { moving, sent, told, reply } = setUp();
    moving.begin('step First', 'from', 'keys');
    moving.step(1);
    moving.commit();
    await settled();
    await reply(sent('edgeEdit')[0], { ok: false, reason: 'The text is read-only.' });
    assert.match(told.join(), /read-only/);
    assert.equal(moving.move, null);
  });

  it('stays where it was put until the picture of the new text is there', async () => {
    const { moving, sent, reply } = setUp();
    moving.begin('step First', 'from', 'keys');
    moving.step(10);
    moving.commit();
    await settled();
    await reply(sent('edgeEdit')[0], done);
    assert.notEqual(moving.move, null);
    moving.stateCame(stateOf(6, { freshness: { state: 'computing', text: 'computing', error: null } }));
    assert.notEqual(moving.move, null);
    moving.stateCame(stateOf(7));
    assert.equal(moving.move, null);
  });

  it('comes loose by itself where no new picture follows', async () => {
    const { moving, sent, reply, timers } = setUp();
    moving.begin('step First', 'from', 'keys');
    moving.step(10);
    moving.commit();
    await settled();
    await reply(sent('edgeEdit')[0], done);
    timers.turn(10_000);
    assert.equal(moving.move, null);
  });
});

describe('the place of a moved edge', () => {
  const field = { parts: [heating, cooling], bands: [bandOf()] };
  const start = (more: Parameters<typeof bandOf>[1] = {}, part = 'heating 1'): EdgeMove => {
    const move = begun(field, bandOf({ part }, more), 'from', stateOf(1).generation, 'pointer');
    assert.ok(move !== null);
    return move;
  };

  it('over temperature is the temperature of the pointer, with the digits of the text or of a pixel', () => {
    const move = draggedTo(start(), field, 'temperature', 652.3417, 0.04);
    assert.deepEqual([requestOf(move).typed, requestOf(move).perPixel], [652.3, 0.04]);
    assert.equal(requestOf(draggedTo(start(), field, 'temperature', 652.3417, 1.3)).typed, 652);
    assert.equal(
      requestOf(draggedTo(start({ from: { decimals: 0 } }), field, 'temperature', 652.3417, 0.04)).typed,
      652,
    );
    assert.equal(placeOf(move, field, 'temperature'), 652.3);
  });

  it('over time is the time of the pointer; the server finds the temperature', () => {
    const request = requestOf(draggedTo(start(), field, 'time', 3600, 6));
    assert.deepEqual([request.time, request.typed], [3600, null]);
    // 10 K/min: 6 s are 1 K.
    assert.ok(Math.abs((request.perPixel ?? 0) - 1) < 1e-9);
  });

  it('of an edge in minutes counts from where the text counts', () => {
    const minutes = { from: { unit: 'min' as const, value: 4, decimals: 2 } };
    const move = draggedTo(start(minutes), field, 'time', 3540 + 90, 3);
    assert.equal(move.value, 5.5);
    assert.equal(setTo(start(minutes), field, 3).time, 3540 - 60);
  });

  it('by key is a step of the last decimal, without the noise of fractions', () => {
    let move = start();
    for (let k = 0; k < 3; k++) move = stepped(move, field, 1);
    assert.equal(move.value, 620.3);
    assert.equal(stepped(start({ from: { decimals: 0 } }), field, -10).value, 610);
  });

  it('is rounded as it would be written', () => {
    assert.equal(rounded(652.3417, 3, 0.004), 652.342);
    assert.equal(rounded(652.3417, 3, 0.04), 652.34);
    assert.equal(rounded(-12.36, 1, 1e-9), -12.4);
  });

  it('is exact at the edges that are known and goes on between them, also on a cooling ramp', () => {
    const known = [bandOf({}, { from: { time: 3500, temperature: 620 } })];
    assert.equal(timeOfTemperature(heating, known, 620), 3500);
    assert.equal(timeOfTemperature(heating, known, 30), 0);
    assert.ok(timeOfTemperature(heating, known, 500) < 3500);
    assert.equal(timeOfTemperature(cooling, [], 550), 7170);
    assert.equal(temperatureOfTime(cooling, [], 7170), 550);
  });
});

describe('a typed value', () => {
  it('may have a comma and a true minus, and must be a number', () => {
    assert.deepEqual(['620', ' 620.5 ', '620,5', '−3', '-3.25'].map(numberFrom), [620, 620.5, 620.5, -3, -3.25]);
    assert.deepEqual(['', '6 20', '1e3', '12 °C', '--3', '5.'].map(numberFrom), [null, null, null, null, null, null]);
  });
});
