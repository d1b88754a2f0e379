import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { version } from '../../server/src/presentation/version';
import { say } from './fakeTerminal';
import { sameAsGolden } from '../revisions/support/golden';
import type { TemporaryRepository } from '../revisions/support/repository';
import { htmlProblems } from '../support/htmlProblems';
import { limestoneReport, limestoneRepository } from '../support/exampleReport';

const folder = join('tests', 'cli', 'golden');

/** Of a picture what it says: the last digits of its coordinates are not the same on every machine. */
function readable(text: string): string {
  const told = text.replace(/<svg\b[^]*?<\/svg>/g, (svg) => {
    const words = [...svg.matchAll(/<(title|desc|text)\b[^>]*>([^<]*)</g)].map((m) => `  ${m[1]}: ${m[2]}`);
    return `[picture\n${words.join('\n')}\n]`;
  });
  return told.replaceAll(`Thermogloss ${version}`, 'Thermogloss VERSION');
}

describe('the report of the limestone example', () => {
  let repository: TemporaryRepository;
  before(() => (repository = limestoneRepository()));
  after(() => repository.remove());

  for (const [format, name] of [
    ['html', 'limestone.html.txt'],
    ['markdown', 'limestone.md.txt'],
  ] as const) {
    it(`is what the golden file says (${format}), with the same bytes twice`, async () => {
      const made = await limestoneReport(repository, format);
      assert.equal(await limestoneReport(repository, format), made);
      sameAsGolden(name, readable(made), folder);
    });
  }

  it('and a comparison of it are pages in which a validator finds nothing', async () => {
    assert.deepEqual(await htmlProblems(await limestoneReport(repository, 'html')), []);
    const text = readFileSync(join('examples', 'limestone', 'vq217-1.gloss'), 'utf8');
    repository.write({
      'vq217-1.gloss': `${text}\noverride step First 600..842 °C\n  because "<b>wider</b> & \\"quoted\\""\n`,
    });
    const { code, out } = await say(['diff', 'HEAD', '--format', 'html'], { cwd: repository.path });
    repository.write({ 'vq217-1.gloss': text });
    assert.equal(code, 1);
    assert.deepEqual(await htmlProblems(out), []);
  });
});
