import assert from 'node:assert/strict';
import { CrashBudget } from '../../client/src/server/crashBudget';
import { serverCancelled } from '../../client/src/server/rpc';
import { Supervisor } from '../../client/src/server/supervisor';
import { greeted, open, supervised } from './support/supervised';

const uri = 'file:///runs/b.gloss';

describe('a supervised server', () => {
  it('is spoken to as if nothing stood between', () => {
    const { editor, servers, delivered } = greeted();
    editor({ id: 1, method: 'textDocument/hover', params: { at: 3 } });
    servers[0]!.says({ id: 1, result: 'a value' });
    servers[0]!.says({ method: 'thermogloss/status', params: { computing: false } });
    assert.deepEqual(servers[0]!.methods(), ['initialize', 'initialized', 'textDocument/hover']);
    assert.deepEqual(delivered.slice(1), [
      { jsonrpc: '2.0', id: 1, result: 'a value' },
      { jsonrpc: '2.0', method: 'thermogloss/status', params: { computing: false } },
    ]);
  });

  it('that is lost is replaced by one that is told the same, without the editor hearing of it', () => {
    const { editor, servers, delivered, happened } = greeted();
    editor(open(uri, 1, 'run "b.csv"\n'));
    const heard = delivered.length;
    servers[0]!.crashes();
    assert.equal(servers.length, 2);
    servers[1]!.answers('initialize', { capabilities: {} });
    assert.deepEqual(servers[1]!.received, servers[0]!.received);
    assert.equal(delivered.length, heard);
    assert.deepEqual(happened, ['lost', 'back']);
  });

  it('gets the texts as they were changed, also while it was away, and none that were closed', () => {
    const { editor, servers } = greeted();
    editor(open(uri, 1, 'step A 1..2 °C\n'));
    editor(open('file:///runs/c.gloss', 1, 'gone'));
    const change = (version: number, start: number, end: number, text: string): void =>
      editor({
        method: 'textDocument/didChange',
        params: {
          textDocument: { uri, version },
          contentChanges: [{ range: { start: { line: 0, character: start }, end: { line: 0, character: end } }, text }],
        },
      });
    change(2, 7, 8, '30');
    servers[0]!.crashes();
    change(3, 11, 12, '45');
    editor({ method: 'textDocument/didClose', params: { textDocument: { uri: 'file:///runs/c.gloss' } } });
    servers[1]!.answers('initialize', {});
    const opened = servers[1]!.received.filter((m) => m.method === 'textDocument/didOpen');
    assert.deepEqual(
      opened.map((m) => m.params),
      [{ textDocument: { uri, languageId: 'gloss', version: 3, text: 'step A 30..45 °C\n' } }],
    );
  });

  // LSP 3.17, ServerCancelled (-32802): "the server cancelled the request"; a client may then ask again.
  it('gives up the questions that were under way, with the code that lets the editor keep what it shows', () => {
    const { editor, servers, delivered } = greeted();
    editor({ id: 'h', method: 'textDocument/inlayHint', params: {} });
    servers[0]!.crashes();
    const answer = delivered.at(-1);
    assert.equal(answer?.id, 'h');
    assert.equal(answer?.error?.code, -32802);
    assert.equal(serverCancelled, -32802);
  });

  it('answers what was asked while it was away, in order, once it is back', () => {
    const { editor, servers, delivered } = greeted();
    servers[0]!.crashes();
    editor({ id: 5, method: 'textDocument/hover', params: {} });
    editor({ method: 'workspace/didChangeConfiguration', params: {} });
    assert.deepEqual(servers[1]!.methods(), ['initialize']);
    servers[1]!.answers('initialize', {});
    assert.deepEqual(servers[1]!.methods().slice(2), ['textDocument/hover', 'workspace/didChangeConfiguration']);
    servers[1]!.answers('textDocument/hover', 'there');
    assert.deepEqual(delivered.at(-1), { jsonrpc: '2.0', id: 5, result: 'there' });
  });

  it('is not asked what was taken back while it was away', () => {
    const { editor, servers, delivered } = greeted();
    servers[0]!.crashes();
    editor({ id: 5, method: 'textDocument/hover', params: {} });
    editor({ method: '$/cancelRequest', params: { id: 5 } });
    servers[1]!.answers('initialize', {});
    assert.ok(!servers[1]!.methods().includes('textDocument/hover'));
    assert.equal(delivered.at(-1)?.error?.code, serverCancelled);
  });

  it('never gets an answer that was meant for the one before it', () => {
    const { editor, servers, delivered } = greeted();
    servers[0]!.says({ id: 0, method: 'workspace/configuration', params: {} });
    const old = delivered.at(-1)!.id;
    servers[0]!.crashes();
    servers[1]!.answers('initialize', {});
    servers[1]!.says({ id: 0, method: 'workspace/configuration', params: {} });
    const young = delivered.at(-1)!.id;
    assert.notEqual(old, young);
    editor({ id: old!, result: 'for the old one' });
    editor({ id: young!, result: 'for the new one' });
    const answers = servers[1]!.received.filter((m) => m.method === undefined);
    assert.deepEqual(answers, [{ jsonrpc: '2.0', id: 0, result: 'for the new one' }]);
  });

  it('gets answers under its own ids, numbers and texts', () => {
    const { editor, servers, delivered } = greeted();
    for (const id of [7, '7', 'a/b']) {
      servers[0]!.says({ id, method: 'workspace/configuration', params: {} });
      editor({ id: delivered.at(-1)!.id!, result: null });
      assert.equal(servers[0]!.received.at(-1)!.id, id);
    }
  });

  it('is not heard any more once it was replaced', () => {
    const { servers, delivered } = greeted();
    servers[0]!.crashes();
    const heard = delivered.length;
    servers[0]!.says({ method: 'textDocument/publishDiagnostics', params: { diagnostics: [] } });
    servers[0]!.crashes();
    assert.equal(delivered.length, heard);
    assert.equal(servers.length, 2);
  });

  it('registers the same things again without the editor dropping and taking up anything', () => {
    const { editor, servers, delivered } = greeted();
    const registration = (id: string, section: string): object => ({
      registrations: [{ id, method: 'workspace/didChangeConfiguration', registerOptions: { section } }],
    });
    servers[0]!.says({ id: 0, method: 'client/registerCapability', params: registration('first', 'thermogloss') });
    editor({ id: delivered.at(-1)!.id!, result: null });
    servers[0]!.crashes();
    servers[1]!.answers('initialize', {});
    const heard = delivered.length;
    servers[1]!.says({ id: 0, method: 'client/registerCapability', params: registration('second', 'thermogloss') });
    assert.equal(delivered.length, heard);
    assert.deepEqual(servers[1]!.received.at(-1), { jsonrpc: '2.0', id: 0, result: null });
    servers[1]!.says({ id: 1, method: 'client/registerCapability', params: registration('third', 'other') });
    assert.equal(delivered.length, heard + 1);
    const unregisterations = [{ id: 'second', method: 'workspace/didChangeConfiguration' }];
    servers[1]!.says({ id: 2, method: 'client/unregisterCapability', params: { unregisterations } });
    assert.deepEqual(delivered.at(-1)!.params, {
      unregisterations: [{ id: 'first', method: 'workspace/didChangeConfiguration' }],
    });
  });

  it('leaves no progress running that it began', () => {
    const { servers, delivered } = greeted();
    const progress = (token: string, kind: string): void =>
      servers[0]!.says({ method: '$/progress', params: { token, value: { kind } } });
    progress('a', 'begin');
    progress('b', 'begin');
    progress('a', 'end');
    servers[0]!.crashes();
    assert.deepEqual(delivered.at(-1), {
      jsonrpc: '2.0',
      method: '$/progress',
      params: { token: 'b', value: { kind: 'end' } },
    });
  });

  it('that is lost before it ever answered is replaced, and the new one greets the editor', () => {
    const { editor, servers, delivered } = supervised();
    editor({ id: 0, method: 'initialize', params: {} });
    servers[0]!.crashes();
    servers[1]!.answers('initialize', { capabilities: { hoverProvider: true } });
    assert.deepEqual(delivered, [{ jsonrpc: '2.0', id: 0, result: { capabilities: { hoverProvider: true } } }]);
  });

  it('that is lost five times in three minutes is not started again, and every question is given up', () => {
    const { editor, servers, happened, delivered } = greeted();
    for (let i = 0; i < 4; i++) {
      servers[i]!.crashes();
      servers[i + 1]!.answers('initialize', {});
    }
    servers[4]!.crashes();
    assert.equal(servers.length, 5);
    assert.equal(happened.at(-1), 'gave up');
    editor({ id: 9, method: 'textDocument/hover', params: {} });
    assert.equal(delivered.at(-1)?.error?.code, serverCancelled);
  });

  it('that is lost now and then is always started again', () => {
    const made = greeted();
    for (let i = 0; i < 20; i++) {
      made.clock += 60_000;
      made.servers[i]!.crashes();
      made.servers[i + 1]!.answers('initialize', {});
    }
    assert.equal(made.servers.length, 21);
    assert.ok(!made.happened.includes('gave up'));
  });

  it('that cannot be started at all is given up like one that is lost too often', async () => {
    const happened: string[] = [];
    const delivered: unknown[] = [];
    const note = (what: string) => (): unknown => happened.push(what);
    const supervisor = new Supervisor(
      () => {
        throw new Error('no such worker');
      },
      new CrashBudget(() => 0),
      {
        deliver: (message) => delivered.push(message.error?.code),
        lost: note('lost'),
        back: note('back'),
        gaveUp: (why) => happened.push(why),
        ended: note('ended'),
        wrote: () => undefined,
      },
    );
    supervisor.start();
    supervisor.take({ jsonrpc: '2.0', id: 0, method: 'initialize', params: {} });
    await new Promise((done) => setImmediate(done));
    assert.deepEqual(happened, ['lost', 'lost', 'lost', 'lost', 'Error: no such worker']);
    assert.deepEqual(delivered, [serverCancelled]);
  });

  it('that leaves because it was asked to is not replaced', () => {
    const { editor, servers, happened } = greeted();
    editor({ id: 2, method: 'shutdown' });
    servers[0]!.says({ id: 2, result: null });
    editor({ method: 'exit' });
    servers[0]!.crashes('exit code 0');
    assert.equal(servers.length, 1);
    assert.deepEqual(happened, ['ended']);
  });
});
