import assert from 'node:assert/strict';
import type { FromView } from '../../server/src/protocol/messages';
import type { CursorAnswer, CursorRequest } from '../../server/src/protocol/view';
import { cursor } from '../../webview/src/control/cursor';
import { calls } from '../../webview/src/state/calls';
import { stateOf } from './state';
import { settled } from './turnedTimers';

function setUp() {
  const posted: FromView[] = [];
  const spoken: string[] = [];
  const asking = calls((m) => posted.push(m));
  const state = stateOf(3);
  const line = cursor({
    calls: asking,
    state: () => state,
    redraw: () => undefined,
    speak: (text) => spoken.push(text),
    arrived: () => undefined,
  });
  const requests = (): CursorRequest[] => posted.flatMap((m) => (m.type === 'cursor' ? [m.request] : []));
  /** Samples stand at whole degrees. */
  const reply = async (revision = 3): Promise<void> => {
    const last = posted.at(-1);
    assert.ok(last?.type === 'cursor');
    const temperature = Math.round(last.request.at) + last.request.step;
    const answer: CursorAnswer = {
      generation: { ...last.request.generation, revision },
      time: 6 * temperature,
      temperature,
      part: last.request.part ?? 'heating 1',
      values: [],
      spoken: `${temperature} °C`,
    };
    asking.answer({ type: 'cursor', call: last.call, answer });
    await settled();
  };
  return { line, requests, reply, spoken };
}

describe('the cursor', () => {
  it('follows the mouse with one question out at a time, and asks about the last place', async () => {
    const { line, requests, reply } = setUp();
    for (let x = 100; x < 200; x++) line.hover(x);
    assert.equal(requests().length, 1);
    assert.equal(line.at, 199);
    await reply();
    assert.deepEqual(
      requests().map((r) => r.at),
      [100, 199],
    );
  });

  it('walks from sample to sample by keys, and every step counts while an answer is out', async () => {
    const { line, requests, reply, spoken } = setUp();
    line.walk(1, 300.4);
    await reply();
    assert.equal(line.at, 300);
    for (let k = 0; k < 5; k++) line.walk(1, 0);
    await reply();
    await reply();
    assert.equal(line.at, 305);
    assert.deepEqual(
      requests().map((r) => r.step),
      [0, 1, 4],
    );
    assert.deepEqual(spoken, ['300 °C', '301 °C', '305 °C']);
  });

  it('is not spoken when the mouse moves it', async () => {
    const { line, reply, spoken } = setUp();
    line.hover(300);
    await reply();
    assert.deepEqual(spoken, []);
  });

  it('turns to the next part at the same place, as far as that part reaches', async () => {
    const { line, requests, reply } = setUp();
    line.to(50, 'heating 1');
    await reply();
    line.turn(1, 0);
    const last = requests().at(-1);
    assert.deepEqual([last?.part, last?.at], ['cooling 1', 100]);
  });

  it('shows nothing of another picture', async () => {
    const { line, reply } = setUp();
    line.hover(300);
    await reply(2);
    assert.equal(line.answer, null);
  });

  it('goes with the mouse, but not where keys put it', async () => {
    const { line, reply } = setUp();
    line.hover(300);
    line.hover(null);
    assert.equal(line.at, null);
    line.to(300, null);
    await reply();
    line.hover(null);
    assert.equal(line.at, 300);
    line.hide();
    assert.equal(line.at, null);
  });
});
