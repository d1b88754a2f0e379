import assert from 'node:assert/strict';
import type { InlayHint } from 'vscode-languageserver-protocol';
import { method, type StateParams } from '../../server/src/protocol/messages';
import { defaultChoices } from '../../server/src/protocol/view';
import { seeded } from '../support/random';
import { startClient } from './support/client';
import { lossRun } from './support/lossRun';
import { MemoryOutside, StoppedTimers } from './support/memoryOutside';

const gloss = (edge: number): string => `run "a.csv"\n  hazard "none: invented"\nstep First 200..${edge} °C\n`;

describe('bursts of typing', () => {
  it('1000 of them at random leave curves and inline results of the last version, and no older picture is told', async () => {
    const timers = new StoppedTimers();
    const client = await startClient(new MemoryOutside({ 'a.csv': lossRun(330, 121) }, timers));
    const seen: { readonly version: number; readonly state: string; readonly edge: number | undefined }[] = [];
    client.connection.onNotification(method.state, ({ state }: StateParams) => {
      const edge = state.bands[0]?.to.value;
      seen.push({ version: state.generation.version, state: state.freshness.state, edge });
    });
    const uri = client.open('a.gloss', gloss(450), 1);
    const watching = client.connection.sendRequest(method.watch, {
      id: 'p',
      uri,
      choices: defaultChoices,
      editable: true,
    });
    const random = seeded(20268);
    let version = 1;
    let edge = 450;
    for (let burst = 0; burst < 1000; burst += 1) {
      for (let k = random.integer(5); k >= 0; k -= 1) {
        version += 1;
        edge = 420 + random.integer(60);
        client.change(uri, version, gloss(edge));
        if (random.integer(7) === 0) {
          await new Promise(setImmediate);
          timers.fire();
        }
      }
      if (random.integer(3) === 0) await new Promise(setImmediate);
    }
    const last = (): boolean => seen.at(-1)?.version === version && seen.at(-1)?.state === 'current';
    for (let turn = 0; turn < 50_000 && !last(); turn += 1) {
      await new Promise(setImmediate);
      timers.fire();
    }
    await watching;
    assert.ok(seen.length > 100, `${seen.length} pictures`);
    assert.deepEqual(
      seen.filter((s, i) => i > 0 && s.version < seen[i - 1].version),
      [],
    );
    assert.deepEqual(seen.at(-1), { version, state: 'current', edge });
    const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
    const hints: InlayHint[] = await client.connection.sendRequest('textDocument/inlayHint', {
      textDocument: { uri },
      range,
    });
    const shown = hints.map(({ label }) => (typeof label === 'string' ? label : label.map((p) => p.value).join('')));
    assert.ok(shown.length > 0);
    assert.ok(
      shown.every((text) => !text.includes('stale')),
      shown.join(),
    );
    assert.equal(client.workspace.results(uri)?.version, version);
    assert.deepEqual(client.logged, []);
    client.close();
  }).timeout(60_000);
});
