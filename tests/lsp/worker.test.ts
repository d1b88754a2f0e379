import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';
import { Approvals } from '../../server/src/approval/approvals';
import { approve } from '../../server/src/approval/approve';
import { noAuthors } from '../../server/src/approval/evaluator';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { fileMethod } from '../../server/src/protocol/files';
import { method, type ApproveAnswer } from '../../server/src/protocol/messages';
import { lossRun } from './support/lossRun';

interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: unknown;
}

/** The built server in a context like a Worker's: no `require`, no `process`, messages as objects. */
class WorkerServer {
  private handler: (event: { data: Message }) => void = () => undefined;
  private next = 0;
  private readonly waiting = new Map<number, (message: Message) => void>();
  readonly told: Message[] = [];

  constructor(private readonly files: Readonly<Record<string, string>>) {
    const worker: Record<string, unknown> = {
      postMessage: (message: Message) => this.received(message),
      addEventListener: () => undefined,
      TextDecoder,
      TextEncoder,
      setTimeout,
      clearTimeout,
      setInterval,
      queueMicrotask,
      console,
      atob,
      btoa,
      Uint8Array,
    };
    worker['self'] = worker;
    Object.defineProperty(worker, 'onmessage', {
      set: (call: (event: { data: Message }) => void) => (this.handler = call),
    });
    runInNewContext(readFileSync('dist/serverWorker.js', 'utf8'), worker);
  }

  request(method: string, params: object): Promise<unknown> {
    const id = (this.next += 1);
    return new Promise((done, refuse) => {
      this.waiting.set(id, (m) =>
        m.error === undefined ? done(m.result) : refuse(new Error(JSON.stringify(m.error))),
      );
      this.send({ id, method, params });
    });
  }

  notify(method: string, params: object): void {
    this.send({ method, params });
  }

  private send(message: Message): void {
    this.handler({ data: { jsonrpc: '2.0', ...message } as Message });
  }

  private received(message: Message): void {
    if (message.method === undefined) return this.waiting.get(Number(message.id))?.(message);
    if (message.id === undefined) return void this.told.push(message);
    const { uri } = (message.params ?? {}) as { uri: string };
    const text = this.files[uri];
    const file =
      text === undefined ? { ok: false, reason: 'missing', message: 'no' } : { ok: true, base64: btoa(text) };
    const result =
      message.method === fileMethod.read
        ? file
        : message.method === fileMethod.glosses
          ? { uris: Object.keys(this.files).filter((u) => u.endsWith('.gloss')) }
          : { names: [] };
    this.send({ id: message.id, result });
  }
}

describe('the server in a Worker', () => {
  it('evaluates a gloss of a workspace that is no disk, to the number that Node computes', async () => {
    // Latin letters only: btoa of the double above takes bytes.
    const data = lossRun().replaceAll('°C', 'C');
    const root = 'vscode-vfs://lab/run';
    const gloss = 'run "a.csv"\n  hazard "none: invented"\nstep First 200..450 °C\nstep Second 400..560 °C\n';
    const server = new WorkerServer({ [`${root}/a.csv`]: data, [`${root}/a.gloss`]: 'read from the open text' });
    const init = (await server.request('initialize', {
      processId: null,
      rootUri: root,
      capabilities: { textDocument: { diagnostic: {} } },
      workspaceFolders: [{ uri: root, name: 'run' }],
    })) as { serverInfo: { name: string } };
    assert.equal(init.serverInfo.name, 'thermogloss');
    server.notify('initialized', {});
    const uri = `${root}/a.gloss`;
    server.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'gloss', version: 1, text: gloss } });
    const report = (await server.request('textDocument/diagnostic', { textDocument: { uri } })) as {
      items: { code: string }[];
    };
    assert.ok(
      report.items.some((d) => d.code === 'window-overlap'),
      JSON.stringify([report, server.told]),
    );
    const table = (await server.request('thermogloss/table', { uri, format: 'csv' })) as { text: string };
    const loss = table.text.split('\n').find((l) => l.startsWith('First,loss,'));
    assert.ok(loss !== undefined, table.text);
    const inNode = new Engine(new MemoryHost({ 'a.csv': data, 'a.gloss': gloss }));
    const { results } = await inNode.evaluate('/lab/a.gloss');
    assert.equal(Number(loss.split(',')[3]), results.find((r) => r.id === 'First.loss')?.value);

    // Without a disk and without Node's hashing the approval is the same, byte by byte.
    const approver = { by: 'M. Ruiz', on: '2026-10-02', because: 'a trial' };
    const approved = (await server.request(method.approve, { uri, ...approver })) as ApproveAnswer;
    assert.ok(approved.ok, JSON.stringify(approved));
    const host = new MemoryHost({ 'a.csv': data, 'a.gloss': gloss });
    const engine = new Engine(host);
    const approvals = new Approvals(engine, host, noAuthors);
    const other = await approve(engine, host, approvals, await engine.evaluate('/lab/a.gloss'), approver);
    assert.ok(other.ok);
    assert.equal(approved.digest, other.digest);
    assert.equal(approved.record.text, other.record);
    assert.equal(approved.record.uri, `${uri}.approved.json`);
  });
});
