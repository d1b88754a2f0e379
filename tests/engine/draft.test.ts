import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { draftGloss } from '../../server/src/engine/draft';
import { Engine } from '../../server/src/engine/engine';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { format } from '../../server/src/language/format';
import { pinkNoise, seeded, whiteNoise } from '../support/random';
import { needReference } from '../support/reference';

async function drafted(name: string, text: string | Uint8Array) {
  const host = new MemoryHost({ [name]: text }, '/lab');
  const draft = await draftGloss(host, `/lab/${name}`);
  assert.ok(draft.ok, draft.ok ? '' : draft.failure.message);
  const gloss = draft.value.text;
  assert.equal(format(gloss), gloss, 'formatting leaves a draft as it is');
  const s = await new Engine(host).evaluate('/lab/draft.gloss', gloss);
  assert.deepEqual(
    s.findings.filter((f) => f.severity === 'error').map((f) => `${f.code}: ${f.message}`),
    [],
    gloss,
  );
  const heads = gloss
    .split('\n')
    .flatMap((line) => /^(step|peak|glass) +(\S+) .* in (\w+ \d)/.exec(line)?.slice(1, 4).join(' ') ?? []);
  return { gloss, heads, notes: draft.value.notes };
}

describe('a drafted gloss', () => {
  it('finds exactly one peak, one glass step and three steps on the exact curves', async function () {
    const folder = needReference(this);
    const read = (name: string) => drafted(name, readFileSync(join(folder, name)));
    assert.deepEqual((await read('b_emg_peak.csv')).heads, ['peak Endo1 heating 1']);
    assert.deepEqual((await read('c_glass_parallel.csv')).heads, ['glass Glass1 heating 1']);
    assert.deepEqual((await read('c_glass_nonparallel.csv')).heads, ['glass Glass1 heating 1']);
    assert.deepEqual((await read('e_three_step.csv')).heads, [
      'step Loss1 heating 1',
      'step Loss2 heating 1',
      'step Loss3 heating 1',
    ]);
  });

  it('finds the effects of each segment of a heat-cool-heat run', async () => {
    const { heads } = await drafted('pet-07.txt', readFileSync('examples/preform/pet-07.txt'));
    const of = (segment: string) =>
      heads.filter((h) => h.endsWith(segment)).map((h) => h.replace(/\d* \w+ \d$/, '').replace(/\d+$/, ''));
    // What went into the data: glass step, cold crystallisation, melting; crystallisation and glass step; glass step, melting.
    assert.deepEqual(of('heating 1'), ['glass Glass', 'peak Exo', 'peak Endo']);
    assert.deepEqual(of('cooling 1'), ['peak Exo', 'glass Glass']);
    assert.deepEqual(of('heating 2'), ['glass Glass', 'peak Endo']);
  });

  it('proposes at most two effects in all on fifty seeded runs of noise alone', async function () {
    this.timeout(60_000);
    let effects = 0;
    for (let seed = 0; seed < 50; seed++) {
      const random = seeded(4000 + seed);
      const n = 900;
      const noise = seed % 2 === 0 ? whiteNoise : pinkNoise;
      const mass = noise(n, 0.0008, random);
      const heat = noise(n, 0.02, random);
      const rows = Array.from({ length: n }, (_, i) => {
        const t = 6 * i;
        return `${t},${(30 + t / 6).toFixed(3)},${(20 + mass[i]).toFixed(5)},${(-2 + 0.002 * (t / 6) + heat[i]).toFixed(4)}`;
      });
      const { heads } = await drafted(
        'n.csv',
        `time / s,temperature / °C,mass / mg,heat flow / mW\n${rows.join('\n')}\n`,
      );
      effects += heads.length;
    }
    assert.ok(effects <= 2, `${effects} effects`);
  });

  it('says what was assumed and what to beware of', async () => {
    const { gloss, notes } = await drafted('pet-07.txt', readFileSync('examples/preform/pet-07.txt'));
    assert.match(gloss, /endothermic up {2}# assumed/);
    assert.ok(notes.some((n) => n.includes('assumes up')));
    assert.ok(notes.some((n) => n.includes('local codes and licensed practice')));
  });

  it('says it in whole sentences, also of columns that it had to decide', async () => {
    const { notes } = await drafted('a 5 K min.csv', 'T,w\n361,0.99\n380,0.99\n400,0.9\n420,0.8\n440,0.8\n460,0.8\n');
    assert.match(notes[0], /"w".*the draft decides it/);
    for (const note of notes) assert.match(note, /^[A-Z].*\.$/s);
  });

  it('names a method instead of proposing windows', async () => {
    const host = new MemoryHost(
      { 'a.csv': 'time / s,temperature / °C,mass / mg\n0,30,20\n60,40,20\n120,50,20\n180,60,20\n' },
      '/lab',
    );
    const draft = await draftGloss(host, '/lab/a.csv', { method: 'm.gloss' });
    assert.ok(draft.ok);
    assert.match(draft.value.text, /^method "m.gloss"$/m);
    assert.doesNotMatch(draft.value.text, /^step/m);
  });
});
