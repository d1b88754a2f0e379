import assert from 'node:assert/strict';
import { CaretSync, type CaretTarget } from '../../client/src/curves/caretSync';
import type { TextRange } from '../../server/src/protocol/view';
import { seeded } from '../support/random';

const uri = 'file:///b.gloss';

function at(line: number): TextRange {
  return { start: { line, character: 0 }, end: { line, character: 0 } };
}

class View implements CaretTarget {
  listening = true;
  selected: string | null = null;
  messages = 0;
  constructor(
    readonly uri: string,
    private readonly method: string | null = null,
  ) {}

  shows(text: string): boolean {
    return text === this.uri || text === this.method;
  }

  caret(statement: string | null): void {
    this.messages++;
    this.selected = statement;
  }
}

interface Desk {
  readonly sync: CaretSync<View>;
  readonly asked: number[];
  /** The editor's own behaviour: a report where the caret moves, none where it stands already. */
  move(line: number): Promise<void>;
  reveal(view: View, line: number): Promise<void>;
}

function desk(views: readonly View[]): Desk {
  const asked: number[] = [];
  let caret = 0;
  const sync = new CaretSync<View>(
    (_, position) => {
      asked.push(position.line);
      return Promise.resolve(`statement ${position.line}`);
    },
    () => views,
  );
  const move = async (line: number): Promise<void> => {
    if (line === caret) return;
    caret = line;
    await sync.moved(uri, at(line));
  };
  return {
    sync,
    asked,
    move,
    reveal: async (view, line) => {
      view.selected = `statement ${line}`;
      sync.revealing(view, uri, at(line), `statement ${line}`);
      await move(line);
    },
  };
}

describe('the caret and the curves', () => {
  it('move each other 200 times in turn without one message too many', async () => {
    const view = new View(uri);
    const { move, reveal, asked } = desk([view]);
    for (let i = 0; i < 100; i++) {
      await move(2 * i + 1);
      assert.equal(view.selected, `statement ${2 * i + 1}`);
      await reveal(view, 2 * i + 2);
      assert.equal(view.selected, `statement ${2 * i + 2}`);
    }
    assert.equal(view.messages, 100, 'one message for each move of the caret, none for those by the view');
    assert.equal(asked.length, 100);
  });

  it('agree after any mixture of moves, also to places where the caret stands already', async () => {
    const random = seeded(11);
    const view = new View(uri);
    const { move, reveal, sync } = desk([view]);
    await sync.moved(uri, at(0));
    let line = 0;
    for (let i = 0; i < 500; i++) {
      line = random.integer(4);
      if (random.uniform() < 0.5) await move(line);
      else await reveal(view, line);
      assert.equal(view.selected, `statement ${line}`, `turn ${i}`);
    }
  });

  it('say nothing twice, and nothing to a view that is hidden, paused or of another gloss', async () => {
    const [shown, hidden, other] = [new View(uri), new View(uri), new View('file:///c.gloss')] as const;
    hidden.listening = false;
    const { sync } = desk([shown, hidden, other]);
    await sync.moved(uri, at(3));
    await sync.moved(uri, { start: at(3).start, end: { line: 3, character: 5 } });
    assert.deepEqual([shown.messages, hidden.messages, other.messages], [1, 0, 0]);
  });

  it('follow into the method a view shows statements of, and back', async () => {
    const method = 'file:///m.gloss';
    const [of, other] = [new View(uri, method), new View(uri)] as const;
    const { sync } = desk([of, other]);
    await sync.moved(method, at(4));
    assert.deepEqual([of.selected, other.selected], ['statement 4', null]);
    await sync.moved(uri, at(5));
    assert.deepEqual([of.selected, other.selected], ['statement 5', 'statement 5']);
    await sync.moved('file:///c.gloss', at(6));
    assert.deepEqual([of.messages, other.messages], [2, 1]);
  });

  it('ask the server nothing while no view listens', async () => {
    const view = new View(uri);
    view.listening = false;
    const { sync, asked } = desk([view]);
    for (let i = 0; i < 50; i++) await sync.moved(uri, at(i));
    assert.deepEqual(asked, []);
  });

  it('that runs ahead of the answers is told of once, where it has come to', async () => {
    const view = new View(uri);
    const answers: ((statement: string) => void)[] = [];
    const sync = new CaretSync<View>(
      () => new Promise((done) => answers.push(done)),
      () => [view],
    );
    const all = [1, 2, 3, 4].map((line) => sync.moved(uri, at(line)));
    answers.shift()!('first');
    await new Promise((done) => setImmediate(done));
    assert.equal(view.messages, 0, 'the answer about a place that was left is dropped');
    answers.shift()!('last');
    await Promise.all(all);
    assert.equal(answers.length, 0);
    assert.deepEqual([view.messages, view.selected], [1, 'last']);
  });

  it('that the view moves while a question is on its way stays where the view sent it', async () => {
    const view = new View(uri);
    const answers: ((statement: string) => void)[] = [];
    const sync = new CaretSync<View>(
      () => new Promise((done) => answers.push(done)),
      () => [view],
    );
    const moved = sync.moved(uri, at(1));
    view.selected = 'fifth';
    sync.revealing(view, uri, at(5), 'fifth');
    await sync.moved(uri, at(5));
    answers.shift()!('first');
    await moved;
    assert.deepEqual([view.selected, view.messages, answers.length], ['fifth', 0, 0]);
  });

  it('tell a view again that has lost what it was told', async () => {
    const view = new View(uri);
    const { sync } = desk([view]);
    await sync.moved(uri, at(3));
    sync.forget(view);
    await sync.moved(uri, at(3));
    assert.equal(view.messages, 2);
  });

  it('go on after a question that failed', async () => {
    const view = new View(uri);
    let fail = true;
    const sync = new CaretSync<View>(
      () => (fail ? Promise.reject(new Error('no server')) : Promise.resolve('there')),
      () => [view],
    );
    await assert.rejects(sync.moved(uri, at(1)));
    fail = false;
    await sync.moved(uri, at(2));
    assert.equal(view.selected, 'there');
  });
});
