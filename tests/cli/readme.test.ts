import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readCommandLine } from '../../server/src/cli/commandLine';
import { commands } from '../../server/src/cli/commands';
import { say } from './fakeTerminal';

describe('the README', () => {
  const text = readFileSync('README.md', 'utf8');
  const blocks = (language: string): string[] =>
    [...text.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'gm'))].map((m) => m[1]);

  it('shows a gloss that has no error and meets its requirements on the example it names', async () => {
    const [gloss] = blocks('gloss');
    const at = ['-', '--at', 'examples/limestone/readme.gloss'];
    const checked = await say(['check', ...at], { input: gloss });
    assert.equal(checked.code, 0, checked.out);
    const results = await say(['results', ...at], { input: gloss });
    assert.equal(results.code, 0, results.error);
    assert.equal(results.out.match(/^met /gm)?.length, gloss.match(/^require /gm)?.length, results.out);
    const laidOut = await say(['format', '-', '--check'], { input: gloss });
    assert.equal(laidOut.code, 0, 'and it is laid out as format does');
  });

  it('shows an allowance that the language knows', async () => {
    const fragment = `run "vq217-n2.csv"\n${blocks('gloss')[1]}`;
    const { out } = await say(['check', '-', '--at', 'examples/limestone/readme.gloss', '--format', 'json'], {
      input: fragment,
    });
    const { findings } = JSON.parse(out) as { findings: { code: string }[] };
    assert.deepEqual(
      findings.filter((f) => /^(?:unknown|unexpected|later|allow-not)/.test(f.code)),
      [],
    );
  });

  it('shows calls that the command line takes, with every command among them', () => {
    const lines = blocks('sh').flatMap((b) => b.split('\n').filter((l) => l.startsWith('thermogloss ')));
    const called = lines.map((line) => {
      const words = line.replace(/ #.*/, '').trim().split(/\s+/).slice(1);
      const read = readCommandLine(words.map((w) => w.replaceAll('"', '')));
      assert.equal(read.wants, 'run', line);
      return words[0];
    });
    assert.deepEqual([...new Set(called)].sort(), commands.map((c) => c.name).sort());
  });

  it('names only scripts that exist, and paths that exist', () => {
    const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
    for (const [, name] of text.matchAll(/npm run ([a-z:]+)/g)) assert.ok(name in scripts, name);
    for (const [, path] of text.matchAll(/\]\(([^)#:]+)\)/g)) assert.ok(readFileSync(path).length > 0, path);
  });
});
