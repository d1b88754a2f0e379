import assert from 'node:assert/strict';
import type { ClientCapabilities } from 'vscode-languageserver-protocol';
import { startClient, type TestClient } from './support/client';
import { lossRun } from './support/lossRun';
import { MemoryOutside, StoppedTimers } from './support/memoryOutside';

const files = { 'data/a.csv': lossRun() };
const gloss = 'run "data/a.csv"\n  hazard "none: invented"\nstep First 200..450 °C\n';

/** A host whose files are given out only when a test says so. */
class SlowOutside extends MemoryOutside {
  private release: () => void = () => undefined;
  private readonly released = new Promise<void>((done) => (this.release = done));

  constructor(timers: StoppedTimers) {
    super(files, timers);
    const { host } = this;
    const read = host.read.bind(host);
    host.read = async (path, encoding) => {
      if (path.endsWith('.csv')) await this.released;
      return read(path, encoding);
    };
  }

  letGo(): void {
    this.release();
  }
}

interface Told {
  readonly kind: string;
  readonly title?: string;
  readonly cancellable?: boolean;
}

describe('progress', () => {
  let client: TestClient;
  let timers: StoppedTimers;
  let outside: SlowOutside;
  let told: Told[];
  let tokens: (string | number)[];

  async function start(capabilities: ClientCapabilities): Promise<void> {
    timers = new StoppedTimers();
    outside = new SlowOutside(timers);
    told = [];
    tokens = [];
    client = await startClient(outside, capabilities);
    client.connection.onRequest('window/workDoneProgress/create', ({ token }: { token: string | number }) => {
      tokens.push(token);
      return null;
    });
    client.connection.onNotification('$/progress', ({ value }: { value: Told }) => void told.push(value));
  }
  afterEach(() => {
    assert.deepEqual(client.logged, [], 'no fault');
    client.close();
  });

  /** Lets messages pass until something is so. */
  async function until(so: () => boolean): Promise<void> {
    for (let turn = 0; turn < 5000 && !so(); turn += 1) await new Promise(setImmediate);
    assert.ok(so(), 'it never came');
  }
  const passed = async (): Promise<void> => {
    await client.connection.sendRequest('workspace/symbol', { query: '' });
  };
  const withProgress: ClientCapabilities = { window: { workDoneProgress: true } };

  /** Opened, the pause of the typing over, computing, and waiting for its file. */
  async function computing(): Promise<string> {
    const uri = client.open('a.gloss', gloss);
    await until(() => timers.waiting === 1);
    timers.fire();
    await passed();
    return uri;
  }

  it('of an evaluation that takes longer than the pause begins with its file and ends with it', async () => {
    await start(withProgress);
    await computing();
    assert.equal(told.length, 0);
    timers.fire();
    await until(() => told.length === 1);
    assert.deepEqual(told, [{ kind: 'begin', title: 'Reading a.csv', cancellable: true }]);
    outside.letGo();
    await until(() => told.length === 2);
    assert.equal(told[1].kind, 'end');
    assert.equal(tokens.length, 1);
  });

  it('is not shown for an evaluation that is over before, nor to a client that shows none', async () => {
    await start(withProgress);
    outside.letGo();
    const uri = await computing();
    assert.ok((await client.workspace.currentResults(uri)) !== null);
    assert.equal(timers.waiting, 0, 'nothing is left to go off');
    client.close();
    await start({});
    await computing();
    assert.equal(timers.waiting, 0);
    assert.deepEqual([told, tokens], [[], []]);
  });

  it('called off stops the evaluation and ends; the next change computes again', async () => {
    await start(withProgress);
    const uri = await computing();
    timers.fire();
    await until(() => told.length === 1);
    await client.connection.sendNotification('window/workDoneProgress/cancel', { token: tokens[0] });
    await passed();
    outside.letGo();
    await until(() => told.length === 2);
    assert.equal(told[1].kind, 'end');
    assert.equal(client.workspace.results(uri), null);
    client.change(uri, 2, `${gloss}# again\n`);
    await until(() => timers.waiting === 1);
    timers.fire();
    await until(() => client.workspace.results(uri) !== null);
    assert.equal(client.workspace.results(uri)?.version, 2);
  });

  it('is one for a document whose text changes meanwhile, and ends when the last evaluation does', async () => {
    await start(withProgress);
    const uri = await computing();
    timers.fire();
    await until(() => told.length === 1);
    client.change(uri, 2, `${gloss}# more\n`);
    await passed();
    timers.fire();
    await passed();
    outside.letGo();
    await until(() => client.workspace.results(uri)?.version === 2);
    await until(() => told.length === 2);
    assert.deepEqual(
      told.map(({ kind }) => kind),
      ['begin', 'end'],
    );
  });
});
