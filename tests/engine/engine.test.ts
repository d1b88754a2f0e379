import assert from 'node:assert/strict';
import { Counters } from '../../server/src/base/counters';
import { Cancelled } from '../../server/src/base/cancellation';
import { Engine } from '../../server/src/engine/engine';
import type { Snapshot } from '../../server/src/engine/snapshot';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { syntheticRun } from '../support/syntheticRun';

const data = syntheticRun({
  steps: [
    { at: 300, width: 8, loss: 10 },
    { at: 600, width: 10, loss: 25 },
  ],
});

const gloss = `run "a.csv"
  mass 20.000 ± 0.010 mg
step First 200..420 °C
step Second 480..750 °C
residue Rest at 950 °C
let share = First.loss / Second.loss
let total = First.loss + Second.loss
require total in 34..36 %
`;

function engineOn(files: Record<string, string>): { engine: Engine; host: MemoryHost; counters: Counters } {
  const host = new MemoryHost(files, '/lab');
  const counters = new Counters();
  return { engine: new Engine(host, counters), host, counters };
}

const path = '/lab/a.gloss';

async function evaluate(engine: Engine, text: string): Promise<Snapshot> {
  return engine.evaluate(path, text);
}

const value = (s: Snapshot, id: string) => s.results.find((r) => r.id === id)?.value ?? NaN;

describe('engine', () => {
  it('gives known losses of a computed run within their expanded uncertainty', async () => {
    const { engine } = engineOn({ 'a.csv': data });
    const s = await evaluate(engine, gloss);
    for (const [id, truth] of [
      ['First.loss', 10],
      ['Second.loss', 25],
      ['Rest.remaining', 65],
      ['total', 35],
    ] as const) {
      const r = s.results.find((x) => x.id === id)!;
      assert.equal(r.state, 'number', id);
      assert.ok(Math.abs(r.value! - truth) <= r.k * r.uncertainty!, `${id}: ${r.value} ± ${r.uncertainty}`);
    }
    assert.equal(s.requirements[0].verdict, 'met');
  });

  it('recomputes one moved window and its dependants, nothing else', async () => {
    const { engine, counters } = engineOn({ 'a.csv': data });
    await evaluate(engine, gloss);
    const evaluations = counters.of('evaluations');
    const reads = counters.of('reads');
    assert.equal(evaluations, 3);
    const moved = await evaluate(engine, gloss.replace('200..420', '205..420'));
    assert.equal(counters.of('evaluations') - evaluations, 1);
    assert.equal(counters.of('reads'), reads);
    assert.equal(moved.results.find((r) => r.id === 'First.loss')!.window!.from, 205);
  });

  it('recomputes nothing for a comment, blank lines or another order of statements, and gives the same numbers', async () => {
    const { engine, counters } = engineOn({ 'a.csv': data });
    const before = await evaluate(engine, gloss);
    const evaluations = counters.of('evaluations');
    const lines = gloss.trimEnd().split('\n');
    const head = lines.slice(0, 2);
    const shuffled = [...head, '# a remark', '', ...lines.slice(2).reverse(), ''].join('\n');
    const after = await evaluate(engine, shuffled);
    assert.equal(counters.of('evaluations'), evaluations);
    for (const r of before.results) assert.equal(value(after, r.id), r.value, r.id);
  });

  it('gives the same numbers whatever the file and the folder are called', async () => {
    const one = engineOn({ 'a.csv': data });
    const two = engineOn({ 'deep/folder/b.csv': data });
    const s = await evaluate(one.engine, gloss);
    const t = await evaluate(two.engine, gloss.replace('a.csv', 'deep/folder/b.csv'));
    for (const r of s.results) {
      const other = t.results.find((x) => x.id === r.id)!;
      assert.equal(other.value, r.value, r.id);
      assert.equal(other.uncertainty, r.uncertainty, r.id);
    }
  });

  it('a broken line costs itself and its dependants only', async () => {
    const { engine } = engineOn({ 'a.csv': data });
    const s = await evaluate(engine, gloss.replace('step First 200..420 °C', 'step First 200..42,0 °C'));
    assert.ok(Number.isFinite(value(s, 'Second.loss')));
    assert.ok(Number.isFinite(value(s, 'Rest.remaining')));
    assert.ok(!s.results.some((r) => r.name === 'First' && r.value !== null));
    assert.deepEqual(
      s.findings.filter((f) => f.severity === 'error').map((f) => f.code),
      ['decimal-comma'],
    );
  });

  it('a mass without a unit, as while it is typed, or in one that is none of mass, costs itself and its dependants only', async () => {
    const { engine } = engineOn({ 'a.csv': data });
    for (const [mass, code] of [
      ['20', 'unit-missing'],
      ['20 ± 0.01', 'unit-missing'],
      ['20 °C', 'wrong-dimension'],
    ] as const) {
      const s = await evaluate(engine, gloss.replace('20.000 ± 0.010 mg', mass));
      const codes = s.findings.map((f) => f.code);
      assert.ok(codes.includes(code), `${mass}: ${codes.join()}`);
      assert.ok(!codes.includes('mass-implausible') && !codes.includes('mass-mismatch'), codes.join());
      assert.ok(s.run !== null && s.run.segments.length > 0);
    }
  });

  it('notices a changed file once it is told, and reads it once', async () => {
    const { engine, counters, host } = engineOn({ 'a.csv': data });
    await evaluate(engine, gloss);
    host.put('a.csv', syntheticRun({ steps: [{ at: 300, width: 8, loss: 12 }] }));
    const stale = await evaluate(engine, gloss);
    assert.ok(Math.abs(value(stale, 'First.loss') - 10) < 0.1);
    engine.invalidate(host.resolve(path, 'a.csv'));
    const fresh = await evaluate(engine, gloss);
    assert.ok(Math.abs(value(fresh, 'First.loss') - 12) < 0.1, `${value(fresh, 'First.loss')}`);
    assert.equal(counters.of('reads'), 2);
  });

  it('a cancelled evaluation stops and a later one succeeds', async () => {
    const { engine } = engineOn({ 'a.csv': data });
    await assert.rejects(engine.evaluate(path, gloss, { cancelled: true }), Cancelled);
    const s = await evaluate(engine, gloss);
    assert.ok(Number.isFinite(value(s, 'First.loss')));
  });

  it('a missing data file is a finding at its name, and nothing is thrown', async () => {
    const { engine } = engineOn({});
    const s = await evaluate(engine, gloss);
    const missing = s.findings.find((f) => f.code === 'file-missing')!;
    assert.equal(gloss.slice(missing.span.start, missing.span.end), '"a.csv"');
    assert.deepEqual(s.results, []);
  });

  it('a path out of the root is refused without being read', async () => {
    const { engine } = engineOn({ 'a.csv': data });
    const s = await evaluate(engine, gloss.replace('a.csv', '../../etc/hosts'));
    assert.equal(s.findings[0].code, 'file-outside-workspace');
  });

  it('every fix is a text edit inside its file, and inserting the clause it names removes the finding', async () => {
    const { engine } = engineOn({ 'a.csv': data.replace('mass / mg', 'heat flow / mW') });
    const text = 'run "a.csv"\n  mass 20 mg\npeak P 200..420 °C\n';
    const s = await evaluate(engine, text);
    const finding = s.findings.find((f) => f.code === 'direction-not-declared')!;
    const fix = finding.fixes.find((f) => f.title.includes('up'))!;
    const [edit] = fix.edits;
    const mended = text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end);
    assert.equal(mended, 'run "a.csv"\n  mass 20 mg\n  endothermic up\npeak P 200..420 °C\n');
    const t = await evaluate(engine, mended);
    assert.ok(!t.findings.some((f) => f.code === 'direction-not-declared'));
  });
});
