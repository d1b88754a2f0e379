import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { NodeOutside } from '../../server/src/lsp/nodeOutside';
import { method, type StateParams } from '../../server/src/protocol/messages';
import { defaultChoices, type SamplesAnswer, type ViewState } from '../../server/src/protocol/view';
import { startClient } from './support/client';
import { lossRun } from './support/lossRun';

describe('a view of a gloss in a repository', () => {
  let folder: string;
  let git: (...words: readonly string[]) => void;
  const gloss = 'run "a.csv"\n  hazard "none: invented"\nstep First 200..450 °C\n';

  before(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'against-')));
    git = (...words) => {
      const name = ['-c', 'user.name=A', '-c', 'user.email=a@example.invalid'];
      execFileSync('git', [...name, ...words], { cwd: folder, stdio: 'ignore' });
    };
    git('init', '-q');
    writeFileSync(join(folder, 'a.csv'), lossRun());
    writeFileSync(join(folder, 'a.gloss'), gloss);
    git('add', '-A');
    git('commit', '-q', '-m', 'first');
    // The data are replaced: the whole loss comes 20 K later.
    writeFileSync(join(folder, 'a.csv'), lossRun(350));
  });

  after(() => rmSync(folder, { recursive: true, force: true }));

  it('says how far each result is from HEAD, and lays HEAD and the difference over the curves where asked', async () => {
    const root = pathToFileURL(folder).href;
    const client = await startClient(new NodeOutside(), {}, [root]);
    const seen: ViewState[] = [];
    const waiting: ((state: ViewState) => void)[] = [];
    client.connection.onNotification(method.state, ({ state }: StateParams) => {
      seen.push(state);
      waiting.splice(0).forEach((call) => call(state));
    });
    const next = async (wanted: (state: ViewState) => boolean): Promise<ViewState> => {
      let state = seen.find(wanted);
      while (state === undefined) {
        const come = await new Promise<ViewState>((done) => waiting.push(done));
        state = wanted(come) ? come : undefined;
      }
      return state;
    };
    const uri = client.open(`${root}/a.gloss`, gloss);
    const watch = (choices: typeof defaultChoices): Promise<unknown> =>
      client.connection.sendRequest(method.watch, { id: 'p', uri, choices, editable: true });
    await watch(defaultChoices);
    const row = (s: ViewState): ViewState['ledger']['rows'][number] | undefined =>
      s.ledger.rows.find((r) => r.id === 'First.inflection');
    const compared = await next((s) => row(s)?.since !== undefined && row(s)!.since !== '');
    assert.match(row(compared)!.since, /^\+(19\.\d+|20(\.\d+)?) (°C|K)$/);
    assert.equal(row(compared)!.sinceMoved, true);
    assert.ok(!compared.lanes.some((l) => l.id.startsWith('difference:')));

    await watch({ ...defaultChoices, against: 'HEAD' });
    const laid = await next((s) => s.lanes.some((l) => l.id === 'difference:mass'));
    const lane = laid.lanes.find((l) => l.id === 'difference:mass')!;
    const answer: SamplesAnswer = await client.connection.sendRequest(method.samples, {
      generation: laid.generation,
      curves: lane.curves.map((c) => c.id),
      abscissa: 'temperature',
      from: 300,
      to: 380,
      pixels: 1000,
    });
    const y = new Float64Array(Uint8Array.from(Buffer.from(answer.curves[0].y, 'base64')).buffer);
    // Largest where the one is through and the other is not: at 340 °C, 20 %·tanh(10/16) by the two logistic curves.
    assert.ok(Math.abs(Math.max(...y) - 20 * Math.tanh(10 / 16)) < 0.05, `${Math.max(...y)}`);

    // The log of HEAD tells that the data are committed: nothing is away from it, and nothing is edited to see that.
    git('commit', '-q', '-a', '-m', 'second');
    seen.splice(0);
    void client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: `${root}/.git/logs/HEAD`, type: 2 }],
    });
    const committed = await next((s) => row(s)?.sinceMoved === false);
    assert.ok(committed.generation.revision > laid.generation.revision);
    assert.deepEqual(client.logged, []);
    client.close();
  });
});
