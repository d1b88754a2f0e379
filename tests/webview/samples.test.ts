import assert from 'node:assert/strict';
import { float64Base64 } from '../../server/src/engine/curves/float64Base64';
import type { FromView } from '../../server/src/protocol/messages';
import {
  defaultChoices,
  type SamplesAnswer,
  type SamplesRequest,
  type ViewState,
} from '../../server/src/protocol/view';
import { samples } from '../../webview/src/control/samples';
import { calls } from '../../webview/src/state/calls';
import { dataRange } from '../../webview/src/geometry/abscissa';
import { stateOf } from './state';
import { settled, TurnedTimers } from './turnedTimers';

function setUp() {
  const timers = new TurnedTimers();
  const posted: FromView[] = [];
  const asking = calls((m) => posted.push(m));
  let arrivals = 0;
  const sampled = samples(asking, timers, () => arrivals++);
  const requests = (): (SamplesRequest & { readonly call: number })[] =>
    posted.flatMap((m) => (m.type === 'samples' ? [{ ...m.request, call: m.call }] : []));
  const reply = async (
    request: SamplesRequest & { readonly call: number },
    answer: SamplesAnswer | null = full(request),
  ) => {
    asking.answer({ type: 'samples', call: request.call, answer });
    await settled();
  };
  return { timers, sampled, requests, reply, arrivals: () => arrivals };
}

function full(request: SamplesRequest): SamplesAnswer {
  const xs = Float64Array.from([request.from, request.to]);
  const curves = request.curves.map((id) => ({
    id,
    x: float64Base64(xs),
    y: float64Base64(xs),
    count: 2,
    complete: false,
  }));
  return { generation: request.generation, curves };
}

const whole = (state: ViewState) => dataRange(state.parts, state.choices.abscissa);

describe('samples for what is looked at', () => {
  it('are asked for at the width of the view, once, and then they are all there', async () => {
    const { sampled, requests, reply } = setUp();
    const state = stateOf(1);
    const view = whole(state);
    for (let k = 0; k < 5; k++) sampled.want(state, view, 800, []);
    assert.equal(requests().length, 1);
    const [one] = requests();
    assert.ok(one.from <= view.from && one.to >= view.to);
    const perPixel = (one.to - one.from) / one.pixels;
    assert.ok(perPixel <= ((view.to - view.from) / 800) * 1.001, 'a column asked for is no wider than a pixel');
    assert.ok(!sampled.hasAll(state, view, 800, []));
    await reply(one);
    assert.ok(sampled.hasAll(state, view, 800, []));
    sampled.want(state, view, 800, []);
    assert.equal(requests().length, 1);
  });

  it('of a closer look come with half a view on either side, and the whole after them', async () => {
    const { sampled, requests, reply } = setUp();
    const state = stateOf(1);
    const close = { from: 300, to: 310 };
    sampled.want(state, close, 500, []);
    const [one] = requests();
    assert.deepEqual([one.from, one.to, one.pixels], [295, 315, 1000]);
    await reply(one);
    assert.ok(sampled.hasAll(state, close, 500, []));
    sampled.want(state, close, 500, []);
    const [, two] = requests();
    assert.ok(two.from < 30 && two.to > 900);
    await reply(two);
    sampled.want(state, { from: 303, to: 313 }, 500, []);
    assert.equal(requests().length, 2, 'a small pan needs nothing new');
  });

  it('of lanes that are hidden are not asked for', () => {
    const { sampled, requests } = setUp();
    const state = stateOf(1);
    sampled.want(state, whole(state), 800, ['mass']);
    assert.ok(requests()[0].curves.every((id) => !id.startsWith('mass')));
  });

  it('that come late, for a picture that is gone, are dropped', async () => {
    const { sampled, requests, reply } = setUp();
    const [old, now] = [stateOf(1), stateOf(2)];
    sampled.want(old, whole(old), 800, []);
    sampled.want(now, whole(now), 800, []);
    const [first, second] = requests();
    assert.deepEqual([first.generation.revision, second.generation.revision], [1, 2]);
    await reply(second);
    const before = sampled.blocksOf(now);
    await reply(first);
    assert.equal(sampled.blocksOf(now), before);
    assert.ok(sampled.hasAll(now, whole(now), 800, []) && !sampled.hasAll(old, whole(old), 800, []));
  });

  it('of an older revision go on being drawn until their own are there', async () => {
    const { sampled, requests, reply } = setUp();
    sampled.want(stateOf(1), whole(stateOf(1)), 800, []);
    await reply(requests()[0]);
    sampled.want(stateOf(2), whole(stateOf(2)), 800, []);
    assert.ok([...sampled.blocksOf(stateOf(2)).values()].every((b) => b.drawn.length === 2));
  });

  it('over another abscissa never stand in for those over this one', async () => {
    const { sampled, requests, reply } = setUp();
    const [warm, timed] = [stateOf(1), stateOf(2, { choices: { ...defaultChoices, abscissa: 'time' } })];
    sampled.want(warm, whole(warm), 800, []);
    await reply(requests()[0]);
    const before = sampled.blocksOf(warm);
    sampled.want(timed, whole(timed), 800, []);
    assert.equal(sampled.blocksOf(timed).size, 0);
    await reply(requests()[1]);
    assert.deepEqual(sampled.blocksOf(warm), before);
    assert.equal(sampled.blocksOf(timed).size, 4);
    const more = { ...warm, lanes: [...warm.lanes, { ...warm.lanes[0], id: 'difference:mass', curves: [] }] };
    assert.deepEqual(sampled.blocksOf(more), before, 'a lane more takes nothing from the others');
  });

  it('that are refused or lost are asked for again, a few times and later each time, not for ever', async () => {
    const { timers, sampled, requests, reply } = setUp();
    const state = stateOf(1);
    for (let k = 0; k < 40; k++) {
      sampled.want(state, whole(state), 800, []);
      const last = requests().at(-1);
      if (k % 2 === 0 && last !== undefined) await reply(last, null);
      timers.turn(5000);
    }
    assert.ok(requests().length > 2 && requests().length < 10, String(requests().length));
    sampled.retry();
    sampled.want(state, whole(state), 800, []);
    await reply(requests().at(-1)!);
    assert.ok(sampled.hasAll(state, whole(state), 800, []), 'the connection came back');
  });
});
