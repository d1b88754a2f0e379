import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { NodeOutside } from '../../server/src/lsp/nodeOutside';
import { compareMethod, type ReportAnswer, type ReportParams } from '../../server/src/protocol/compare';
import { say } from '../cli/fakeTerminal';
import { TemporaryRepository } from '../revisions/support/repository';
import { startClient, type TestClient } from './support/client';
import { lossRun } from './support/lossRun';

// Invented data, computed from a formula; no laboratory measured this.
const gloss = 'run "a.csv"\n  hazard "none: invented"\n\nstep First 200..450 °C\n';

describe('a report over the protocol', () => {
  let repository: TemporaryRepository;
  let client: TestClient;
  let root: string;

  before(async () => {
    repository = TemporaryRepository.make();
    repository.commit('start', { 'a.csv': lossRun(), 'a.gloss': gloss, 'm.gloss': 'method "M"\n\nstep A 1..2 °C\n' });
    root = pathToFileURL(repository.path).href;
    client = await startClient(new NodeOutside(), {}, [root]);
  });
  after(() => {
    assert.deepEqual(client.logged, []);
    client.close();
    repository.remove();
  });

  const ask = (uri: string, more: Partial<ReportParams> = {}): Promise<ReportAnswer> =>
    client.connection.sendRequest(compareMethod.report, { uri, format: 'html', issued: null, ...more });
  const text = async (...of: Parameters<typeof ask>): Promise<string> => {
    const answer = await ask(...of);
    assert.ok(answer.ok, answer.ok ? '' : answer.message);
    return answer.text;
  };

  for (const format of ['html', 'markdown'] as const) {
    it(`has the bytes of \`thermogloss report\` (${format}), asked for twice`, async () => {
      const uri = client.open(`${root}/a.gloss`, gloss);
      const words = ['report', 'a.gloss', '--format', format, '--date', '2026-10-05'];
      const { out } = await say(words, { cwd: repository.path });
      assert.ok(out.includes('2026-10-05'));
      const asked = { format, issued: '2026-10-05' } as const;
      assert.equal(await text(uri, asked), out);
      assert.equal(await text(uri, asked), out);
    });
  }

  it('of a gloss that is not open says what is found about its approval, as `thermogloss report` does', async () => {
    // Nothing fits: line and record are of other results.
    const line = `approved by "M. Ruiz" on 2026-10-02 digest ${'0'.repeat(32)}\n`;
    writeFileSync(join(repository.path, 'b.gloss'), gloss + line);
    for (const record of [null, '{}']) {
      if (record !== null) writeFileSync(join(repository.path, 'b.gloss.approved.json'), record);
      const { out } = await say(['report', 'b.gloss', '--format', 'markdown'], { cwd: repository.path });
      assert.match(out, record === null ? /approval-record-missing/ : /approval-broken/);
      assert.equal(await text(`${root}/b.gloss`, { format: 'markdown' }), out);
    }
  });

  it('is that of the text in the editor, and says that it differs from the commit', async () => {
    const uri = client.open(`${root}/a.gloss`, gloss.replace('200..450', '210..450'), 2);
    const made = await text(uri, { format: 'markdown' });
    assert.match(made, /210\.\.450 °C/);
    assert.match(made, /^- revision: [0-9a-f]{40}, differing in a\.gloss$/m);
    client.change(uri, 3, gloss);
    const back = await text(uri, { format: 'markdown' });
    assert.match(back, /^- revision: [0-9a-f]{40}$/m);
  });

  it('is refused with the reason: a method alone, no such file, no such day', async () => {
    const method = client.open(`${root}/m.gloss`, 'method "M"\n\nstep A 1..2 °C\n');
    const refusals = [
      await ask(method),
      await ask(`${root}/none.gloss`),
      await ask(`${root}/a.gloss`, { issued: '2026-02-30' }),
    ];
    assert.deepEqual(
      refusals.map((r) => (r.ok ? 'written' : r.message)),
      [
        'It evaluates nothing: there is nothing to report.',
        'The gloss cannot be read.',
        '2026-02-30 is no day as YYYY-MM-DD.',
      ],
    );
  });
});
