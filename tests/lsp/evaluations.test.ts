import assert from 'node:assert/strict';
import type { Cancellation } from '../../server/src/base/cancellation';
import type { Snapshot } from '../../server/src/engine/snapshot';
import type { GlossDocument } from '../../server/src/features/workspace';
import { Evaluations } from '../../server/src/lsp/evaluations';

interface Started {
  readonly version: number;
  readonly cancellation: Cancellation;
  /** Lets the evaluation come to its end. */
  readonly end: () => void;
}

/** One document whose evaluations end when a test says so, whether or not they were called off. */
class World {
  version = 1;
  readonly started: Started[] = [];
  readonly published: number[] = [];
  /** Pauses asked for, in ms, and what to do when they are over. */
  readonly pauses: { readonly milliseconds: number; readonly call: () => void; dropped: boolean }[] = [];
  readonly evaluations = new Evaluations(
    {
      document: () => Promise.resolve(this.document()),
      versionOf: () => this.version,
      checked: (_, snapshot) => Promise.resolve(snapshot),
      finished: (_, results) => this.published.push(results.version),
      started: () => undefined,
      ended: () => undefined,
      failed: (_, error) => {
        throw error;
      },
    },
    {
      after: (milliseconds, call) => {
        const pause = { milliseconds, call, dropped: false };
        this.pauses.push(pause);
        return () => (pause.dropped = true);
      },
    },
  );

  private document(): GlossDocument {
    const { version } = this;
    const evaluate = (_: string, __: string, cancellation: Cancellation): Promise<Snapshot> =>
      new Promise((done) => this.started.push({ version, cancellation, end: () => done({} as Snapshot) }));
    return { uri: 'a', version, method: null, project: { engine: { evaluate } } } as unknown as GlossDocument;
  }

  /** A change of the text; with `over` the pause after it is over at once. */
  async change(over: boolean): Promise<void> {
    this.version += 1;
    this.evaluations.changed('a', true);
    if (over) this.pauses.at(-1)!.call();
    await turn();
  }
}

const turn = (): Promise<void> => new Promise((done) => setImmediate(done));

describe('evaluations while typing', () => {
  it('begin one pause of 100 to 200 ms after the last change, whatever came before it', async () => {
    const world = new World();
    for (let k = 0; k < 20; k += 1) await world.change(false);
    assert.equal(world.pauses.length, 20);
    assert.ok(world.pauses.every(({ milliseconds }) => milliseconds >= 100 && milliseconds <= 200));
    assert.deepEqual(
      world.pauses.map(({ dropped }) => dropped),
      [...Array.from({ length: 19 }, () => true), false],
    );
    assert.equal(world.started.length, 0, 'nothing is computed while the typing goes on');
    world.pauses.at(-1)!.call();
    await turn();
    assert.deepEqual(
      world.started.map(({ version }) => version),
      [21],
    );
  });

  it('are called off by each new version, and one that ends late all the same is never published', async () => {
    const world = new World();
    for (let k = 0; k < 50; k += 1) await world.change(true);
    assert.equal(world.started.length, 50);
    const last = world.started.at(-1)!;
    for (const one of world.started) assert.equal(one.cancellation.cancelled, one !== last, `version ${one.version}`);
    // The newest first: what comes after it is all of older versions.
    for (const one of [...world.started].reverse()) one.end();
    await turn();
    assert.deepEqual(world.published, [51]);
    assert.equal(world.evaluations.results('a')?.version, 51);
  });

  it('of a version that is still the newest are published, one after the other', async () => {
    const world = new World();
    for (let k = 0; k < 3; k += 1) {
      await world.change(true);
      world.started.at(-1)!.end();
      await turn();
    }
    assert.deepEqual(world.published, [2, 3, 4]);
  });
});
