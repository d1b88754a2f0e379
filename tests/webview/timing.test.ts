import assert from 'node:assert/strict';
import type { FromView, ToView } from '../../server/src/protocol/messages';
import { calls, isOf } from '../../webview/src/state/calls';
import { freshnessWords } from '../../webview/src/state/freshness';
import { singleFlight } from '../../webview/src/state/singleFlight';
import { debounced } from '../../webview/src/state/timers';
import { settled, TurnedTimers } from './turnedTimers';

describe('what is done later', () => {
  it('is done once after the last call, and never lost', () => {
    const timers = new TurnedTimers();
    let done = 0;
    const soon = debounced(timers, 100, () => done++);
    for (let k = 0; k < 20; k++) {
      soon.later();
      timers.turn(50);
    }
    assert.equal(done, 0);
    timers.turn(50);
    assert.equal(done, 1);
    timers.turn(1000);
    assert.equal(done, 1);
  });

  it('is done at once when the page goes, and only where something waits', () => {
    const timers = new TurnedTimers();
    let done = 0;
    const soon = debounced(timers, 100, () => done++);
    soon.now();
    assert.equal(done, 0);
    soon.later();
    soon.now();
    timers.turn(500);
    assert.equal(done, 1);
  });
});

describe('the words of freshness', () => {
  const computing = { state: 'computing', text: 'computing', error: null } as const;
  const current = { state: 'current', text: 'current', error: null } as const;

  it('never say computing where it took less than 200 ms', () => {
    const timers = new TurnedTimers();
    const seen: string[] = [];
    const words = freshnessWords(timers, (f) => seen.push(f.text));
    for (let k = 0; k < 5; k++) {
      words.take(computing);
      timers.turn(199);
      words.take(current);
    }
    assert.deepEqual(new Set(seen), new Set(['current']));
  });

  it('say computing after 200 ms, also where states keep coming', () => {
    const timers = new TurnedTimers();
    const seen: string[] = [];
    const words = freshnessWords(timers, (f) => seen.push(f.text));
    words.take(computing);
    timers.turn(120);
    words.take(computing);
    timers.turn(79);
    assert.deepEqual(seen, []);
    timers.turn(1);
    assert.deepEqual(seen, ['computing']);
    words.take(current);
    assert.deepEqual(seen, ['computing', 'current']);
  });

  it('say an error at once', () => {
    const seen: string[] = [];
    freshnessWords(new TurnedTimers(), (f) => seen.push(f.text)).take({
      state: 'stale',
      text: 'revision 3: line 2 has an error',
      error: null,
    });
    assert.deepEqual(seen, ['revision 3: line 2 has an error']);
  });
});

describe('questions, one at a time', () => {
  const answering = () => {
    const open: ((answer: string) => void)[] = [];
    const asked: string[] = [];
    const taken: string[] = [];
    const flight = singleFlight<string, string>(
      (q) => {
        asked.push(q);
        return new Promise((resolve) => open.push(resolve));
      },
      (answer, q) => taken.push(`${q}=${answer}`),
    );
    return { open, asked, taken, flight };
  };

  it('skip those that were overtaken while one was out, and always ask the last', async () => {
    const { open, asked, taken, flight } = answering();
    for (const q of ['a', 'b', 'c', 'd']) flight.ask(q);
    assert.deepEqual(asked, ['a']);
    open[0]('1');
    await settled();
    assert.deepEqual(asked, ['a', 'd']);
    open[1]('2');
    await settled();
    assert.deepEqual(taken, ['a=1', 'd=2']);
    assert.equal(flight.busy, false);
  });

  it('drop the answer that comes after they were given up', async () => {
    const { open, taken, flight } = answering();
    flight.ask('a');
    flight.ask('b');
    flight.drop();
    open[0]('late');
    await settled();
    assert.deepEqual(taken, []);
    flight.ask('c');
    open[1]('1');
    await settled();
    assert.deepEqual(taken, ['c=1']);
  });

  it('join steps that wait', async () => {
    const asked: number[] = [];
    const open: (() => void)[] = [];
    const flight = singleFlight<number, void>(
      (q) => {
        asked.push(q);
        return new Promise((resolve) => open.push(resolve));
      },
      () => undefined,
      (a, b) => a + b,
    );
    for (let k = 0; k < 5; k++) flight.ask(1);
    open[0]();
    await settled();
    assert.deepEqual(asked, [1, 4]);
  });
});

describe('numbered questions', () => {
  const generation = { uri: 'file:///a.gloss', version: 1, revision: 7 };
  const request = { generation, abscissa: 'time', at: 1, part: null, step: 0 } as const;

  it('take the answer of their own number, in whatever order answers come', async () => {
    const posted: FromView[] = [];
    const asking = calls((m) => posted.push(m));
    const first = asking.ask({ type: 'cursor', request });
    const second = asking.ask({ type: 'cursor', request });
    const numbers = posted.map((m) => ('call' in m ? m.call : 0));
    assert.equal(new Set(numbers).size, 2);
    const answer = (call: number): ToView => ({ type: 'cursor', call, answer: null });
    assert.ok(asking.answer(answer(numbers[1])));
    assert.ok(asking.answer(answer(numbers[0])));
    assert.equal((await first).call, numbers[0]);
    assert.equal((await second).call, numbers[1]);
  });

  it('take none twice, none that was not asked for, and no other message', () => {
    const asking = calls(() => undefined);
    void asking.ask({ type: 'cursor', request });
    assert.ok(asking.answer({ type: 'cursor', call: 1, answer: null }));
    assert.ok(!asking.answer({ type: 'cursor', call: 1, answer: null }));
    assert.ok(!asking.answer({ type: 'cursor', call: 99, answer: null }));
    assert.ok(!asking.answer({ type: 'caret', statement: null }));
  });

  it('know answers of another picture', () => {
    assert.ok(isOf({ generation }, { ...generation, version: 2 }));
    assert.ok(!isOf({ generation }, { ...generation, revision: 8 }));
    assert.ok(!isOf({ generation }, { ...generation, uri: 'file:///b.gloss' }));
    assert.ok(!isOf(null, generation));
  });
});
