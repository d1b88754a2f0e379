import assert from 'node:assert/strict';
import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

const validate = new Ajv().compile(
  JSON.parse(readFileSync('server/src/presentation/findings.schema.json', 'utf8')) as object,
);

describe('thermogloss check', () => {
  const missed = smallGloss.replace('in 14..16 %', 'in 1..2 %');
  const folder = folderWith({
    'b.csv': smallRun,
    'b.gloss': smallGloss,
    'missed.gloss': missed,
    'broken.gloss': smallGloss.replace('step First 380..620 °C', 'step First 380..620 °C\nstepp Second 700..800 °C'),
    'allowed.gloss': missed.replace(
      'as Loss',
      'as Loss\n  allow requirement-not-met because "agreed with the customer"',
    ),
  });
  after(() => folder.remove());
  const check = (...words: string[]) => say(['check', ...words], { cwd: folder.path });

  it('exits with 0 where nothing stands at the limit asked for, and counts on the last line', async () => {
    const { code, out, error } = await check('b.gloss');
    assert.deepEqual([code, error], [0, '']);
    assert.match(out, /(?:no findings|\d+ (?:warnings?|notes?).*) in 1 gloss\n$/);
  });

  it('exits with 1 on an error, marks its place in the line and names its code', async () => {
    const { code, out } = await check('missed.gloss');
    assert.equal(code, 1);
    assert.match(
      out,
      /^missed\.gloss:11:\d+: error: .* \[requirement-not-met\]\n {2}11 \| require First\.loss in 1\.\.2 % as Loss\n +\| +\^+$/m,
    );
    assert.match(out, /1 error.* in 1 gloss\n$/);
  });

  it('names a broken line in its place, and what was meant', async () => {
    const { code, out } = await check('broken.gloss');
    assert.equal(code, 1);
    assert.match(out, /^broken\.gloss:8:1: error: .* \[unknown-statement\]$/m);
  });

  it('takes an allowed finding for what it is, and the limit from --fail-on', async () => {
    const { code, out } = await check('allowed.gloss');
    assert.equal(code, 0);
    assert.match(out, /allowed error: .*\[requirement-not-met\]/);
    assert.match(out, /allowed because: agreed with the customer/);
    const strict = await check('b.gloss', '--fail-on', 'note', '--format', 'json');
    const { findings } = JSON.parse(strict.out) as { findings: { allowed: string | null }[] };
    assert.equal(strict.code, findings.some((f) => f.allowed === null) ? 1 : 0);
  });

  it('writes JSON that keeps its schema, CSV and Markdown', async () => {
    const json = await check('b.gloss', 'missed.gloss', '--format', 'json');
    const objects = json.out
      .trimEnd()
      .split('\n')
      .map((l) => JSON.parse(l) as unknown);
    assert.equal(objects.length, 2);
    for (const object of objects) assert.ok(validate(object), JSON.stringify(validate.errors));
    assert.match(
      (await check('missed.gloss', '--format', 'csv')).out,
      /^gloss,file,line,[^]*\r\nmissed\.gloss,missed\.gloss,11,9,11,19,error,requirement-not-met,/,
    );
    assert.match(
      (await check('missed.gloss', '--format', 'markdown')).out,
      /\| missed\.gloss:11:\d+ \| error \| requirement-not-met \|/,
    );
  });

  it('exits with 2 where a gloss is missing, is no UTF-8 or lies outside the root, and quotes nothing of it', async () => {
    assert.equal((await check('none.gloss')).code, 2);
    writeFileSync(join(folder.path, 'latin.gloss'), Buffer.from('run "b.csv"\n  sample "K\u00f6rner"\n', 'latin1'));
    const latin = await check('latin.gloss');
    assert.deepEqual([latin.code, latin.out], [2, '']);
    assert.match(latin.error, /latin\.gloss is not UTF-8/);
    const outside = folderWith({ 'secret.gloss': 'run "secret.csv"\n' });
    symlinkSync(join(outside.path, 'secret.gloss'), join(folder.path, 'link.gloss'));
    const refused = await check('link.gloss');
    outside.remove();
    assert.deepEqual([refused.code, refused.out], [2, '']);
    assert.ok(!refused.error.includes('secret.csv'));
  });
});
