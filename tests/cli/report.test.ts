import assert from 'node:assert/strict';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

const validator = new HtmlValidate({ extends: ['html-validate:recommended', 'html-validate:document'] });

async function problems(page: string): Promise<string[]> {
  const { results } = await validator.validateString(page);
  return results.flatMap((r) => r.messages.map((m) => `${m.line}: ${m.ruleId}: ${m.message}`));
}

describe('thermogloss report', () => {
  const hostile = '</title><script>alert(1)</script><img src=x onerror=alert(1)>';
  const folder = folderWith({
    'b.csv': smallRun,
    'b.gloss': smallGloss,
    'full.gloss': `${smallGloss}\nnote "customer: Velmora Quarry"\nrule boundary-not-level 12 % because "broad"\nmask 800..810 °C because "a knock"\n`,
    'hostile.gloss': smallGloss.replace('  mass', `  sample "${hostile}"\n  mass`),
    'failed.gloss': smallGloss.replace('380..620', '1380..1620'),
  });
  after(() => folder.remove());
  const report = (...words: string[]) => say(['report', ...words], { cwd: folder.path });

  it('is a page in which a validator finds nothing, though it finds an unclosed element there', async () => {
    const { code, out } = await report('b.gloss', 'hostile.gloss');
    assert.equal(code, 0);
    assert.deepEqual(await problems(out), []);
    assert.notDeepEqual(await problems(out.replace('</dl>', '')), []);
  });

  it('holds no script, loads nothing from elsewhere and shows hostile names as text', async () => {
    const { out } = await report('hostile.gloss');
    assert.ok(
      !/<script|<img|<link|<iframe|\bhref=|\bsrc=|@import|<[^>]*\son\w+=/i.test(out.replace(/&[a-z#0-9]+;[^<]*/g, '')),
    );
    assert.ok(out.includes('&lt;/title&gt;&lt;script&gt;alert(1)&lt;/script&gt;'));
    const addresses = [...out.matchAll(/https?:[^"'\s<]*/g)].map((m) => m[0]);
    assert.deepEqual([...new Set(addresses)], ['http://www.w3.org/2000/svg']);
  });

  it('has the same bytes twice, and the day of issue from --date alone', async () => {
    const [one, two] = [await report('b.gloss'), await report('b.gloss')];
    assert.equal(one.out, two.out);
    assert.match(one.out, /<dt>issued<\/dt><dd>not issued<\/dd>/);
    assert.match((await report('b.gloss', '--date', '2026-10-05')).out, /<dt>issued<\/dt><dd>2026-10-05<\/dd>/);
    for (const day of ['2026-02-30', '5.10.2026', '2026-13-01']) {
      assert.equal((await report('b.gloss', '--date', day)).code, 2, day);
    }
  });

  it('names what is missing and stops naming it once a note states it', async () => {
    const bare = (await report('b.gloss', '--format', 'markdown')).out;
    for (const label of ['operator', 'evaluator', 'sample', 'customer', 'instrument', 'gas purity', 'calibrated']) {
      assert.match(bare, new RegExp(`^- not stated: ${label} \\(ISO`, 'm'), label);
    }
    const full = (await report('full.gloss', '--format', 'markdown')).out;
    assert.match(full, /^- customer: Velmora Quarry$/m);
    assert.doesNotMatch(full, /not stated: customer/);
    assert.doesNotMatch(bare, /not stated: mass of the specimen/);
  });

  it('prints verdicts with their rule, limits changed, masks, hazards and digests', async () => {
    const { out } = await report('full.gloss', '--format', 'markdown');
    assert.match(out, /JCGM 106:2012/);
    assert.match(out, /^\| met \| Loss: First\.loss in 14\.\.16 % \|/m);
    assert.match(out, /^\| boundary-not-level \| 12 % \| 10 % \| gloss \| broad \|/m);
    assert.match(out, /800\.\.810 °C \| a knock/);
    assert.match(out, /^- none: invented$/m);
    assert.match(out, /^\| run \| b\.csv \| [0-9a-f]{64} \|/m);
    assert.match(out, /End of report\.\n$/);
  });

  it('names who approved, the digest and whether it holds, and is issued on the day of an approval that holds', async () => {
    const own = folderWith({ 'b.csv': smallRun, 'b.gloss': smallGloss });
    const call = (...words: string[]) => say(words, { cwd: own.path, clock: { today: () => '2026-10-02' } });
    const markdown = async (...words: string[]) =>
      (await call('report', 'b.gloss', '--format', 'markdown', ...words)).out;
    assert.match(await markdown(), /^These results are not approved\.$/m);
    const { error } = await call('approve', 'b.gloss', '--by', 'M. Ruiz', '--because', 'a | trial');
    const digest = /digest ([0-9a-f]{32})/.exec(error)![1];
    await call('approve', 'b.gloss', '--by', 'C. Lund', '--date', '2026-09-30');
    const holding = await markdown();
    assert.match(
      holding,
      new RegExp(`^\\| M\\. Ruiz \\| 2026-10-02 \\| a \\\\\\| trial \\| ${digest} \\| holds \\| +\\|$`, 'm'),
    );
    assert.match(holding, new RegExp(`^\\| C\\. Lund \\| 2026-09-30 \\| +\\| ${digest} \\| holds \\|`, 'm'));
    assert.match(holding, /^An approval is a record, not an electronic signature/m);
    assert.match(holding, /^- issued: 2026-10-02$/m);
    assert.match(await markdown('--date', '2026-10-05'), /^- issued: 2026-10-05$/m);
    assert.deepEqual(await problems((await call('report', 'b.gloss')).out), []);

    const path = join(own.path, 'b.gloss');
    writeFileSync(path, readFileSync(path, 'utf8').replace('380..620', '440..620'));
    const broken = await markdown();
    assert.match(broken, /\| broken \| step First 380\.\.620 °C → step First 440\.\.620 °C; First\.loss from /);
    assert.match(broken, /^- issued: not issued$/m);
    rmSync(join(own.path, 'b.gloss.approved.json'));
    assert.match(await markdown(), /\| not known \| there is no file b\.gloss\.approved\.json \|/);
    own.remove();
  });

  it('exits with 1 where a result failed, and is written nevertheless', async () => {
    const { code, out } = await report('failed.gloss');
    assert.equal(code, 1);
    assert.match(out, /window-outside-run/);
  });
});
