import assert from 'node:assert/strict';
import type { Snapshot } from '../../server/src/engine/snapshot';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { failedResult, finding, result, snapshot, treeOf } from '../presentation/snapshots';
import { folderWith, say, type Said } from './fakeTerminal';

// What the commands make of snapshots, with snapshots made by hand: exit codes, streams, what is left out.
describe('results and check, for given snapshots', () => {
  const folder = folderWith({ 'a.gloss': 'run "b.csv"\n', 'b.gloss': 'run "b.csv"\n', 'm.gloss': 'method "M"\n' });
  after(() => folder.remove());

  const method = snapshot({
    gloss: { path: 'm.gloss', display: 'm.gloss', tree: treeOf('method "M"\n') },
    run: null,
    results: [],
    requirements: [],
    findings: [],
  });

  const call = (words: string[], ...given: Snapshot[]): Promise<Said> => {
    const left = [...given];
    const files = { 'a.gloss': 'run "b.csv"\n', 'b.gloss': 'run "b.csv"\n', 'm.gloss': 'method "M"\n' };
    const workspace = {
      host: new MemoryHost(files, folder.path),
      evaluate: () => Promise.resolve(left.shift()!),
    };
    return say(words, { cwd: folder.path, workspaces: { of: () => Promise.resolve(workspace) } });
  };

  it('results ends with 0, and with 1 where any result failed or errors left none', async () => {
    assert.equal((await call(['results', 'a.gloss'], snapshot())).code, 0);
    const failing = snapshot({ results: [result(), failedResult({ id: 'First.end', quantity: 'end' })] });
    assert.equal((await call(['results', 'a.gloss', 'b.gloss'], snapshot(), failing)).code, 1);
    const none = snapshot({ results: [], requirements: [], findings: [finding({ severity: 'error' })] });
    assert.equal((await call(['results', 'a.gloss'], none)).code, 1);
    const accepted = snapshot({
      results: [],
      requirements: [],
      findings: [finding({ severity: 'error', allowed: 'so' })],
    });
    assert.equal((await call(['results', 'a.gloss'], accepted)).code, 0);
  });

  it('results says standing errors and warnings on standard error, and notes and allowed ones not', async () => {
    const findings = [
      finding(),
      finding({ severity: 'note', code: 'below-noise' }),
      finding({ allowed: 'so', code: 'cycle' }),
    ];
    const { out, error } = await call(['results', 'a.gloss'], snapshot({ findings }));
    assert.match(error, /^b\.gloss:3:12: warning: .* \[window-edge-not-level\]\n$/);
    assert.ok(!out.includes('window-edge-not-level'));
    assert.equal((await call(['results', 'a.gloss', '--format', 'json'], snapshot({ findings }))).error, '');
  });

  it('results leaves a method out of tables, and keeps it in JSON', async () => {
    const one = await call(['results', 'a.gloss', 'm.gloss'], snapshot(), method);
    assert.match(one.error, /m\.gloss is a method, without a run of its own\n/);
    assert.match(one.out, /^b\.gloss: b\.csv, 5821 points/);
    const json = await call(['results', 'a.gloss', 'm.gloss', '--format', 'json'], snapshot(), method);
    assert.equal(json.out.trimEnd().split('\n').length, 2);
  });

  it('check ends with 1 from the severity of --fail-on up, counting what is allowed for nothing', async () => {
    const warned = snapshot({ findings: [finding()] });
    assert.equal((await call(['check', 'a.gloss'], warned)).code, 0);
    assert.equal((await call(['check', 'a.gloss', '--fail-on', 'warning'], warned)).code, 1);
    assert.equal((await call(['check', 'a.gloss', '--fail-on', 'note'], warned)).code, 1);
    const noted = snapshot({ findings: [finding({ severity: 'note' })] });
    assert.equal((await call(['check', 'a.gloss', '--fail-on', 'warning'], noted)).code, 0);
    const allowed = snapshot({ findings: [finding({ severity: 'error', allowed: 'so' })] });
    assert.equal((await call(['check', 'a.gloss', '--fail-on', 'note'], allowed)).code, 0);
  });

  it('a fault of the program ends with 2 and says that it is one', async () => {
    const broken = { of: () => Promise.reject(new RangeError('boom')) };
    const said = await say(['results', 'a.gloss'], { cwd: folder.path, workspaces: broken });
    assert.deepEqual([said.code, said.out], [2, '']);
    assert.match(said.error, /a fault of the program, not of the files: RangeError: boom/);
  });

  it('nothing is evaluated where one of the files cannot be read', async () => {
    const { code, out } = await call(['results', 'a.gloss', 'none.gloss']);
    assert.deepEqual([code, out], [2, '']);
  });
});
