import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CrashBudget } from '../../client/src/server/crashBudget';
import { startNodeProcess } from '../../client/src/server/nodeProcess';
import { record, type RpcMessage } from '../../client/src/server/rpc';
import { Supervisor } from '../../client/src/server/supervisor';

const gloss = resolve('examples', 'limestone', 'vq217-1.gloss');
const uri = pathToFileURL(gloss).href;

/** The server as it is built, in a process of its own, and an editor that says what a test makes it say. */
class Bench {
  readonly heard: RpcMessage[] = [];
  readonly happened: string[] = [];
  private waiting: (() => void)[] = [];
  readonly supervisor = new Supervisor(
    (events) => startNodeProcess(join('dist', 'server.js'), events),
    new CrashBudget(() => 0),
    {
      deliver: (message) => this.hear(message),
      lost: () => this.note('lost'),
      back: () => this.note('back'),
      gaveUp: () => this.note('gave up'),
      ended: () => this.note('ended'),
      wrote: () => undefined,
    },
  );

  say(message: Omit<RpcMessage, 'jsonrpc'>): void {
    this.supervisor.take({ jsonrpc: '2.0', ...message });
  }

  async until<T>(find: () => T | undefined): Promise<T> {
    for (;;) {
      const found = find();
      if (found !== undefined) return found;
      await new Promise<void>((done) => this.waiting.push(done));
    }
  }

  answer(id: number): Promise<RpcMessage> {
    return this.until(() => this.heard.find((m) => m.id === id && m.method === undefined));
  }

  findings(version: number, after = 0): Promise<readonly unknown[]> {
    return this.until(() => {
      const params = this.heard
        .slice(after)
        .filter((m) => m.method === 'textDocument/publishDiagnostics')
        .map((m) => record(m.params))
        .find((p) => p['uri'] === uri && p['version'] === version);
      return params?.['diagnostics'] as readonly unknown[] | undefined;
    });
  }

  note(what: string): void {
    this.happened.push(what);
    this.wake();
  }

  private hear(message: RpcMessage): void {
    this.heard.push(message);
    this.wake();
  }

  private wake(): void {
    const waiting = this.waiting;
    this.waiting = [];
    waiting.forEach((done) => done());
  }
}

describe('the language server in a process of its own', () => {
  let bench: Bench;

  beforeEach(async () => {
    bench = new Bench();
    bench.supervisor.start();
    bench.say({ id: 0, method: 'initialize', params: { processId: process.pid, rootUri: null, capabilities: {} } });
    assert.equal((await bench.answer(0)).error, undefined);
    bench.say({ method: 'initialized', params: {} });
  });
  afterEach(() => bench.supervisor.kill());

  it('is replaced when it is killed, and the new one finds in the edited text what the old one would have', async () => {
    // The fault is typed by a change, so that the file on disk does not have it.
    const text = readFileSync(gloss, 'utf8');
    const textDocument = { uri, languageId: 'gloss', version: 1, text };
    bench.say({ method: 'textDocument/didOpen', params: { textDocument } });
    const clean = await bench.findings(1);
    const line = text.split('\n').length - 1;
    const at = { line, character: text.split('\n')[line]!.length };
    bench.say({
      method: 'textDocument/didChange',
      params: {
        textDocument: { uri, version: 2 },
        contentChanges: [{ range: { start: at, end: at }, text: '\nlet broken = 1 +\n' }],
      },
    });
    const before = await bench.findings(2);
    assert.ok(before.length > clean.length);

    const heard = bench.heard.length;
    const { pid } = bench.supervisor;
    process.kill(pid!, 'SIGKILL');
    await bench.until(() => (bench.happened.includes('back') ? true : undefined));
    assert.notEqual(bench.supervisor.pid, pid);
    assert.deepEqual(await bench.findings(2, heard), before);
  });

  it('leaves when it is asked to, and is not replaced', async () => {
    bench.say({ id: 1, method: 'shutdown' });
    await bench.answer(1);
    bench.say({ method: 'exit' });
    await bench.until(() => (bench.happened.includes('ended') ? true : undefined));
    assert.deepEqual(bench.happened, ['ended']);
  });
});
