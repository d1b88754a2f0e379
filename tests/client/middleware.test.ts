import assert from 'node:assert/strict';
import { Holding } from '../../client/src/server/holding';
import { middleware } from '../../client/src/server/middleware';

const document = { uri: { toString: () => 'file:///b.gloss' } };
const token = { isCancellationRequested: false };

type Hints = (document: unknown, range: unknown, token: unknown, next: () => unknown) => Promise<unknown>;
type Diagnostics = (uri: unknown, diagnostics: unknown, next: (uri: unknown, d: unknown) => void) => void;

function parts(shown = true): { holding: Holding; hints: Hints; diagnostics: Diagnostics } {
  const holding = new Holding();
  const ours = middleware(holding, { shown });
  return {
    holding,
    hints: ours.provideInlayHints as unknown as Hints,
    diagnostics: ours.handleDiagnostics as unknown as Diagnostics,
  };
}

async function settled(promise: Promise<unknown>): Promise<boolean> {
  const turns = new Promise((done) => setImmediate(() => setImmediate(() => done('waiting'))));
  return (await Promise.race([promise, turns])) !== 'waiting';
}

describe('results of a server that was lost', () => {
  it('are not asked for before the new one is done with the text: an early answer would clear what is shown', async () => {
    const { holding, hints } = parts();
    holding.hold(['file:///b.gloss']);
    let asked = 0;
    const answer = hints(document, null, token, () => [++asked]);
    assert.equal(await settled(answer), false);
    assert.equal(asked, 0);
    holding.release('file:///b.gloss');
    assert.deepEqual(await answer, [1]);
  });

  it('are asked for again where the server went over the question', async () => {
    const { holding, hints } = parts();
    let asked = 0;
    const answer = hints(document, null, token, () => {
      if (++asked === 1) {
        holding.hold(['file:///b.gloss']);
        throw new Error('cancelled');
      }
      return ['a value'];
    });
    assert.equal(await settled(answer), false);
    holding.releaseAll();
    assert.deepEqual(await answer, ['a value']);
    assert.equal(asked, 2);
  });

  it('are a failure as before where the server is there', async () => {
    const { hints } = parts();
    const answer = hints(document, null, token, () => {
      throw new Error('a fault');
    });
    await assert.rejects(answer, /a fault/);
  });

  it('do not clear the findings shown: what comes early waits', async () => {
    const { holding, diagnostics } = parts();
    const shown: unknown[] = [];
    holding.hold(['file:///b.gloss']);
    diagnostics(document.uri, [], (_, d) => shown.push(d));
    await settled(Promise.resolve());
    assert.deepEqual(shown, []);
    holding.release('file:///b.gloss');
    await new Promise((done) => setImmediate(done));
    assert.deepEqual(shown, [[]]);
  });

  it('are asked for from the start: an id of the server before would name another answer', async () => {
    const holding = new Holding();
    const pull = middleware(holding, { shown: true }).provideDiagnostics as unknown as (
      document: unknown,
      previous: string,
      token: unknown,
      next: (document: unknown, previous?: string) => string,
    ) => Promise<string>;
    const ask = (): Promise<string> => pull(document, '3', token, (_, previous) => previous ?? 'from the start');
    assert.equal(await ask(), '3');
    holding.hold(['file:///b.gloss']);
    holding.releaseAll();
    assert.equal(await ask(), 'from the start');
    assert.equal(await ask(), '3');
  });

  it('of one text do not keep another waiting', async () => {
    const { holding, hints } = parts();
    holding.hold(['file:///c.gloss']);
    assert.deepEqual(await hints(document, null, token, () => [1]), [1]);
  });
});

describe('inline results that are switched off', () => {
  it('are not asked for', async () => {
    const { hints } = parts(false);
    let asked = 0;
    assert.deepEqual(await hints(document, null, token, () => [++asked]), []);
    assert.equal(asked, 0);
  });
});
