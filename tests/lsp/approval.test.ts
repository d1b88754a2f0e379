import assert from 'node:assert/strict';
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import type { CodeAction, Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import { withEdits } from '../../server/src/approval/lines';
import { TextPositions } from '../../server/src/features/positions';
import { NodeOutside } from '../../server/src/lsp/nodeOutside';
import { method, type ApproveAnswer, type ApproveParams } from '../../server/src/protocol/messages';
import { files, gloss as path, record } from '../approval/support/lab';
import { folderWith } from '../cli/fakeTerminal';
import { startClient, type TestClient } from './support/client';
import { MemoryOutside } from './support/memoryOutside';

type Written = Extract<ApproveAnswer, { ok: true }>;

const able = {
  textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
  experimental: { thermogloss: { commands: ['thermogloss.approve'] } },
};

/** A client with an open gloss; `told` waits for diagnostics of a version that a test is content with. */
async function opened(of: Readonly<Record<string, string>> = files, capabilities: object = able) {
  const outside = new MemoryOutside(of);
  const client = await startClient(outside, capabilities);
  const seen: PublishDiagnosticsParams[] = [];
  let wake = (): void => undefined;
  client.connection.onNotification('textDocument/publishDiagnostics', (p: PublishDiagnosticsParams) => {
    seen.push(p);
    wake();
  });
  const uri = client.open(path, of[path]);
  const told = async (content: (codes: string[]) => boolean, version = 1): Promise<Diagnostic[]> => {
    for (;;) {
      const last = seen.filter((p) => p.version === version).at(-1);
      if (last !== undefined && content(last.diagnostics.map((d) => String(d.code)))) return last.diagnostics;
      await new Promise<void>((done) => (wake = done));
    }
  };
  return { outside, client, uri, told };
}

const ask = (client: TestClient, params: Partial<ApproveParams> & { readonly uri: string }): Promise<ApproveAnswer> =>
  client.connection.sendRequest(method.approve, { by: 'M. Ruiz', on: '2026-10-02', because: null, ...params });

function edited(text: string, { edits }: Written): string {
  const positions = new TextPositions(text, 'utf-16');
  return withEdits(
    text,
    edits.map(({ range, text: put }) => ({ span: positions.span(range), text: put })),
  );
}

const silent = (codes: string[]): boolean => !codes.some((c) => c.startsWith('appro'));

describe('approving over the protocol', () => {
  it('answers with the line and the record to write, and writes nothing itself', async () => {
    const { client, uri, outside } = await opened();
    const answer = (await ask(client, { uri })) as Written;
    assert.equal(answer.ok, true);
    assert.equal(answer.version, 1);
    assert.equal(answer.record.uri, `file:///lab/${record}`);
    assert.equal(
      edited(files[path], answer),
      `${files[path]}approved by "M. Ruiz" on 2026-10-02 digest ${answer.digest}\n`,
    );
    assert.equal((await outside.host.read(`/lab/${record}`)).ok, false);
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('says that a reason is due, and takes it', async () => {
    const text = files[path].replace('<= 32.0 %', '<= 29 %');
    const { client, uri } = await opened({ ...files, [path]: text });
    const refused = await ask(client, { uri });
    assert.ok(!refused.ok && refused.needs === 'reason');
    assert.match(refused.message, /line 17: requirement-not-met/);
    const answer = (await ask(client, { uri, because: 'a trial' })) as Written;
    assert.match(edited(text, answer), /digest [0-9a-f]{32}\n {2}because "a trial"\n$/);
    client.close();
  });

  it('refuses in words what is not open, and a gloss that is not saved yet', async () => {
    const { client } = await opened();
    for (const [uri, words] of [
      ['file:///lab/gone.gloss', /no gloss with results/],
      [client.open('untitled:x', files[path]), /^A gloss is approved once it is saved: the record lies beside it\.$/],
    ] as const) {
      const refused = await ask(client, { uri });
      assert.ok(!refused.ok && refused.needs === 'other');
      assert.match(refused.message, words);
    }
    client.close();
  });

  it('refuses where a link stands in the place of the record', async () => {
    const { client, uri, outside } = await opened();
    outside.links.add(`/lab/${record}`);
    const refused = await ask(client, { uri });
    assert.ok(!refused.ok && refused.needs === 'other');
    assert.match(refused.message, /b\.gloss\.approved\.json is a link/);
    outside.links.clear();
    assert.equal((await ask(client, { uri })).ok, true);
    client.close();
  });

  it('sees a link on the machine of the server, also one that leads nowhere', () => {
    const folder = folderWith({ 'a.txt': 'x' });
    symlinkSync(join(folder.path, 'a.txt'), join(folder.path, 'b'));
    symlinkSync(join(folder.path, 'none'), join(folder.path, 'c'));
    const links = ['a.txt', 'b', 'c', 'd'].map((name) => new NodeOutside().isLink(join(folder.path, name)));
    assert.deepEqual(links, [false, true, true, false]);
    folder.remove();
  });

  for (const name of ['m.gloss', 'blanks/z.gloss']) {
    it(`refuses while ${name} is open with another text than its file, and takes it once it is saved`, async () => {
      const { client, uri, outside } = await opened();
      const beside = client.open(name, files[name]);
      assert.equal((await ask(client, { uri })).ok, true);
      const text = files[name].replace('span 12 K', 'span 12.1 K').replace('none: empty', 'none: an empty');
      client.change(beside, 2, text);
      const refused = await ask(client, { uri });
      assert.ok(!refused.ok && refused.needs === 'other');
      assert.equal(refused.message, `Save ${name} first: the approval is compared with what is saved.`);
      outside.host.put(name, text);
      assert.equal((await ask(client, { uri })).ok, true);
      client.close();
    });
  }

  it('proposes the name that version control has, and none where there is none', async () => {
    const { client, uri } = await opened();
    assert.deepEqual(await client.connection.sendRequest(method.approver, { uri }), { name: 'M. Ruiz' });
    client.close();
  });
});

describe('an approval while somebody types', () => {
  async function approved(gloss = files[path]) {
    const first = await opened({ ...files, [path]: gloss });
    const answer = (await ask(first.client, { uri: first.uri })) as Written;
    first.client.close();
    return { text: edited(gloss, answer), record: answer.record.text };
  }

  it('is found broken with the first change of a number, and stands again with the last taken back', async () => {
    const { text, record: saved } = await approved();
    const { client, uri, told } = await opened({ ...files, [path]: text, [record]: saved });
    await told(silent);
    client.change(uri, 2, text.replace('32.0 %', '33 %'));
    const found = await told((codes) => codes.includes('approval-broken'), 2);
    const [broken] = found.filter((d) => d.code === 'approval-broken');
    assert.equal(text.split('\n')[broken.range.start.line].slice(0, 22), 'approved by "M. Ruiz" ');
    assert.match(String(broken.message), /require double <= 32 % as Double → require double <= 33 % as Double/);
    client.change(uri, 3, `# More.\n${text}`);
    await told(silent, 3);
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('is found broken by a file beside it that changes, and its record is found when it comes', async () => {
    const { text, record: saved } = await approved();
    const { client, told, outside } = await opened({ ...files, [path]: text });
    await told((codes) => codes.includes('approval-record-missing'));
    const changed = (name: string, content: string): void => {
      outside.host.put(`/lab/${name}`, content);
      void client.connection.sendNotification('workspace/didChangeWatchedFiles', {
        changes: [{ uri: `file:///lab/${name}`, type: 1 }],
      });
    };
    changed(record, saved);
    await told(silent);
    changed('m.gloss', files['m.gloss'].replace('span 12 K', 'span 12.1 K'));
    const found = await told((codes) => codes.includes('approval-broken'));
    assert.match(String(found.find((d) => d.code === 'approval-broken')!.message), /span 12 K → span 12\.1 K/);
    client.close();
  });

  it('is found to be by the author of the last change as soon as that change is committed', async () => {
    const { text, record: saved } = await approved(files[path].replace('  evaluator "A. Berg"\n', ''));
    const { client, told, outside } = await opened({ ...files, [path]: text, [record]: saved });
    await told(silent);
    outside.lastAuthor = 'M. Ruiz';
    void client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: 'file:///lab/.git/logs/HEAD', type: 2 }],
    });
    const found = await told((codes) => codes.includes('approved-by-evaluator'));
    assert.equal(found.filter((d) => d.code === 'approved-by-evaluator').length, 1);
    client.close();
  });

  it('takes the record apart once, however often the text changes', async () => {
    const { text, record: saved } = await approved();
    const { client, uri, told, outside } = await opened({ ...files, [path]: text, [record]: saved });
    await told(silent);
    let hashed = 0;
    const { digest } = outside.host;
    outside.host.digest = (of) => {
      hashed++;
      return digest.call(outside.host, of);
    };
    for (let version = 2; version < 6; version++) {
      client.change(uri, version, text.replace('32.0 %', `${40 + version} %`));
      await told((codes) => codes.includes('approval-broken'), version);
    }
    assert.equal(hashed, 0);
    client.close();
  });

  it('offers to approve again on its line, with the findings that it answers, to a client that has the command', async () => {
    const { text, record: saved } = await approved();
    const actions = async (
      client: TestClient,
      uri: string,
      of: string,
      diagnostics: Diagnostic[],
    ): Promise<CodeAction[]> => {
      const line = text.split('\n').findIndex((l) => l.startsWith(of));
      const at = { line, character: 1 };
      const all: CodeAction[] = await client.connection.sendRequest('textDocument/codeAction', {
        textDocument: { uri },
        range: { start: at, end: at },
        context: { diagnostics },
      });
      return all.filter((a) => a.command?.command === 'thermogloss.approve');
    };
    const { client, uri, told } = await opened({ ...files, [path]: text, [record]: saved });
    await told(silent);
    const [standing, ...more] = await actions(client, uri, 'approved', []);
    assert.deepEqual([standing.kind, standing.command?.arguments, more.length], ['refactor.rewrite', [uri], 0]);
    assert.deepEqual(await actions(client, uri, 'let', []), []);
    client.change(uri, 2, text.replace('32.0 %', '33 %'));
    const found = await told((codes) => codes.includes('approval-broken'), 2);
    const [again] = await actions(client, uri, 'approved', found);
    assert.equal(again.kind, 'quickfix');
    assert.deepEqual(
      again.diagnostics?.map((d) => d.code),
      ['approval-broken'],
    );
    client.close();

    const other = await opened({ ...files, [path]: text, [record]: saved }, { ...able, experimental: {} });
    await other.told(silent);
    assert.deepEqual(await actions(other.client, other.uri, 'approved', []), []);
    other.client.close();
  });

  it('is read and checked on the machine of the server too', async () => {
    const { text, record: saved } = await approved();
    const folder = folderWith({ ...files, [path]: text, [record]: saved });
    const outside = new NodeOutside();
    const root = outside.uriOf(folder.path);
    outside.setRoots([root]);
    const { engine, approvals } = outside.project(`${folder.path}/${path}`);
    const states = async () =>
      (await approvals.of(await engine.evaluate(`${folder.path}/${path}`))).map((a) => a.state);
    assert.deepEqual(await states(), ['holds']);
    folder.remove();
  });
});
