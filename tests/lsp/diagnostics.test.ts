import assert from 'node:assert/strict';
import type { DocumentDiagnosticReport, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import { startClient } from './support/client';
import { MemoryOutside, StoppedTimers } from './support/memoryOutside';

// A straight mass curve with one loss, invented: 10 K/min from 30 °C, 10 mg, 2 mg lost about 300 °C.
const data = ['time,temperature,mass', 'min,°C,mg'];
for (let i = 0; i <= 600; i += 1) {
  const temperature = 30 + i;
  data.push(`${i / 10},${temperature},${10 - 2 / (1 + Math.exp(-(temperature - 330) / 8))}`);
}
const files = { 'a.csv': data.join('\n') };
const gloss = 'run "a.csv"\n  hazard "none: invented"\nstep First 200..450 °C\nstep Second 400..560 °C\n';

describe('diagnostics', () => {
  it('are pushed with the version they belong to, with code, page and related places', async () => {
    const client = await startClient(new MemoryOutside(files));
    const pushed = new Promise<PublishDiagnosticsParams>((done) =>
      client.connection.onNotification('textDocument/publishDiagnostics', done),
    );
    const uri = client.open('a.gloss', gloss, 7);
    const { version, diagnostics, uri: of } = await pushed;
    assert.equal(of, uri);
    assert.equal(version, 7);
    const overlap = diagnostics.find((d) => d.code === 'window-overlap');
    assert.ok(overlap, diagnostics.map((d) => d.code).join());
    assert.equal(overlap.source, 'thermogloss');
    assert.equal(overlap.codeDescription?.href, 'file:///docs/finding-window-overlap.md');
    assert.equal(overlap.relatedInformation?.length, 1);
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('are pulled with a result id, unchanged while nothing changed, empty for what is not open', async () => {
    const client = await startClient(new MemoryOutside(files), { textDocument: { diagnostic: {} } });
    const uri = client.open('a.gloss', gloss);
    const pull = (of: string, previousResultId?: string): Promise<DocumentDiagnosticReport> =>
      client.connection.sendRequest('textDocument/diagnostic', { textDocument: { uri: of }, previousResultId });
    const first = await pull(uri);
    assert.equal(first.kind, 'full');
    assert.ok(first.kind === 'full' && first.items.some((d) => d.code === 'window-overlap'));
    const again = await pull(uri, first.resultId);
    assert.deepEqual(again, { kind: 'unchanged', resultId: first.resultId });
    assert.deepEqual(await pull('file:///lab/other.gloss'), { kind: 'full', items: [] });
    assert.deepEqual(await pull('git:/lab/a.gloss'), { kind: 'full', items: [] });
    client.close();
  });

  it('are cut at the number that the settings allow, errors first, then warnings, then notes', async () => {
    const client = await startClient(new MemoryOutside(files), { workspace: { configuration: true } });
    let most = 200;
    client.connection.onRequest('workspace/configuration', ({ items }: { items: readonly object[] }) =>
      items.map(() => ({ mostFindings: most })),
    );
    const told = (): Promise<PublishDiagnosticsParams> =>
      new Promise((done) => client.connection.onNotification('textDocument/publishDiagnostics', done));
    // Notes of the run come first in the text, warnings of the windows behind them, the error on the last line.
    const text = `${gloss.replace('  hazard "none: invented"\n', '')}let broken = 1 +\n`;
    let next = told();
    client.open('a.gloss', text, 1);
    const all = (await next).diagnostics.map(({ severity }) => severity!);
    assert.deepEqual([...new Set(all)], [1, 2, 3], 'of each severity (LSP 3.17: error 1, warning 2, information 3)');
    assert.deepEqual(
      all,
      [...all].sort((a, b) => a - b),
    );
    for (most of [1, 2, 3]) {
      next = told();
      await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
      assert.deepEqual(
        (await next).diagnostics.map(({ severity }) => severity),
        all.slice(0, most),
      );
    }
    client.close();
  });

  it('after 1000 bursts of typing are those of the last version, and no older result is ever told', async () => {
    const timers = new StoppedTimers();
    const client = await startClient(new MemoryOutside(files, timers));
    let seen = 0;
    let last: PublishDiagnosticsParams | null = null;
    client.connection.onNotification('textDocument/publishDiagnostics', (p: PublishDiagnosticsParams) => {
      assert.ok(p.version! >= seen, `${p.version} after ${seen}`);
      seen = p.version!;
      last = p;
    });
    const uri = client.open('a.gloss', gloss, 0);
    let version = 0;
    // A fixed sequence, not drawn: bursts of one to five changes, the pause going off at each place among them.
    for (let burst = 0; burst < 1000; burst += 1) {
      for (let k = 0; k <= burst % 5; k += 1) {
        version += 1;
        client.change(uri, version, gloss.replace('450', String(430 + ((burst + k) % 40))));
        if (burst % 7 === k) {
          await new Promise(setImmediate);
          timers.fire();
        }
      }
      if (burst % 3 === 0) await new Promise(setImmediate);
    }
    for (let turn = 0; turn < 50_000 && seen < version; turn += 1) {
      await new Promise(setImmediate);
      timers.fire();
    }
    assert.equal(seen, version);
    assert.ok(last !== null);
    client.close();
  }).timeout(60_000);
});
