import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type CompletionItem,
  type CompletionList,
  type DocumentDiagnosticReport,
  type Hover,
  type InitializeResult,
  type ProtocolConnection,
} from 'vscode-languageserver-protocol/node';

describe('thermogloss lsp', () => {
  it('serves a plain client over standard input and output, and ends with 0 when it is told to', async () => {
    const child = spawn(process.execPath, ['dist/thermogloss.js', 'lsp'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    connection.listen();
    const root = pathToFileURL(resolve('examples/limestone')).href;
    const initialized: InitializeResult = await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: root,
      capabilities: { textDocument: { diagnostic: {} } },
      workspaceFolders: [{ uri: root, name: 'limestone' }],
    });
    assert.equal(initialized.serverInfo?.name, 'thermogloss');
    await connection.sendNotification('initialized', {});
    const text = readFileSync('examples/limestone/vq217-1.gloss', 'utf8');
    const uri = `${root}/vq217-1.gloss`;
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'gloss', version: 1, text },
    });
    const report: DocumentDiagnosticReport = await connection.sendRequest('textDocument/diagnostic', {
      textDocument: { uri },
    });
    // The example meets its requirements and has no error.
    assert.ok(report.kind === 'full' && report.items.every((d) => d.severity !== 1));
    const line = text.split('\n').findIndex((l) => l.startsWith('require dolomite'));
    const hover: Hover | null = await connection.sendRequest('textDocument/hover', {
      textDocument: { uri },
      position: { line, character: 10 },
    });
    assert.match(JSON.stringify(hover?.contents), /61\.98 ± 0\.11/);
    const offered: CompletionList | CompletionItem[] | null = await connection.sendRequest('textDocument/completion', {
      textDocument: { uri },
      position: { line, character: 'require d'.length },
    });
    const items = offered === null ? [] : 'items' in offered ? offered.items : offered;
    assert.ok(items.some(({ label }) => label === 'dolomite'));
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
    const [code] = (await once(child, 'exit')) as [number];
    assert.equal(code, 0);
    connection.dispose();
  });

  it('ends with 1 where its client says exit without shutting it down, and with the channel', async () => {
    for (const leave of [
      (connection: ProtocolConnection) => connection.sendNotification('exit'),
      (connection: ProtocolConnection) => Promise.resolve(connection.end()),
    ]) {
      const child = spawn(process.execPath, ['dist/thermogloss.js', 'lsp', '--stdio'], {
        stdio: ['pipe', 'pipe', 'inherit'],
      });
      const connection = createProtocolConnection(
        new StreamMessageReader(child.stdout),
        new StreamMessageWriter(child.stdin),
      );
      connection.listen();
      await connection.sendRequest('initialize', { processId: null, rootUri: null, capabilities: {} });
      await leave(connection);
      const [code] = (await once(child, 'exit')) as [number];
      assert.equal(code, 1);
      connection.dispose();
    }
  });

  it('is started by the words that the README gives two other editors', () => {
    const readme = readFileSync('README.md', 'utf8');
    assert.match(readme, /cmd = \{ 'thermogloss', 'lsp' \}/);
    assert.match(readme, /command = "thermogloss"\nargs = \["lsp"\]/);
    const { contributes } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      contributes: { languages: { id: string; extensions: string[] }[]; grammars: { scopeName: string }[] };
    };
    // The same name of the language, ending of its files and scope as in the extension.
    const [language] = contributes.languages;
    assert.ok(readme.includes(`{ ${language.extensions[0].slice(1)} = '${language.id}' }`));
    assert.ok(readme.includes(`file-types = ["${language.extensions[0].slice(1)}"]`));
    assert.ok(readme.includes(`name = "${language.id}"\nscope = "${contributes.grammars[0].scopeName}"`));
  });
});
