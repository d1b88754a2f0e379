import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const skipped = new Set(['.git', 'node_modules', 'out', 'dist', '.cache']);
const binary = /\.(?:png|ico|vsix)$/;

function committedTexts(folder = '.'): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return skipped.has(entry.name) ? [] : committedTexts(path);
    return entry.isFile() && !binary.test(entry.name) ? [path] : [];
  });
}

function found(pattern: RegExp, files: readonly string[]): string[] {
  return files.flatMap((path) =>
    readFileSync(path, 'utf8')
      .split('\n')
      .flatMap((line, i) => (pattern.test(line) ? [`${path}:${i + 1}: ${line.trim().slice(0, 80)}`] : [])),
  );
}

describe('the repository', () => {
  const texts = committedTexts();
  const sources = texts.filter((path) => /\.(?:ts|mjs|json|md|css)$/.test(path) && path !== 'package-lock.json');

  it('holds no path of a single machine', () => {
    // Put together from parts, so that this line does not find itself.
    const pattern = new RegExp(
      `(?<![\\w.~}*-])/(?:${['work', 'tmp', 'root', 'home', 'Users', 'mnt'].join('|')})(?:/|\\b)`,
    );
    assert.ok(
      pattern.test(`open('${['', 'tmp', 'x'].join('/')}')`) && !pattern.test('a/work/b') && !pattern.test('/worker'),
    );
    assert.deepEqual(found(pattern, sources), []);
  });

  it('names no host but that of the schema language and of sources cited', () => {
    const known =
      /https?:\/\/(?:json-schema\.org|doi\.org|www\.w3\.org|physics\.nist\.gov|www\.bipm\.org|ciaaw\.org|www\.ciaaw\.org|json\.schemastore\.org|git-lfs\.github\.com|view\.example|127\.0\.0\.1|localhost|\$\{)/g;
    const left = sources.filter((path) => /https?:\/\//.test(readFileSync(path, 'utf8').replace(known, '')));
    assert.deepEqual(left, []);
  });

  it('holds no unfinished mark and no test that is switched off or alone', () => {
    const words = ['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX'];
    const pattern = new RegExp(
      `\\b(?:${words.join('|')})\\b|not ${'implemented'}|\\b(?:it|describe)\\.(?:${'only'}|${'skip'})\\(`,
    );
    assert.ok(pattern.test(`// ${words[0]} later`) && pattern.test(['it', 'only('].join('.')));
    assert.deepEqual(found(pattern, sources), []);
  });

  it('advises no conversion of texts to be compared: git takes what that gives for the text itself', () => {
    const pattern = new RegExp(['text', 'conv'].join(''), 'i');
    assert.ok(pattern.test(`*.gloss diff=gloss ${['text', 'conv'].join('')}`));
    assert.deepEqual(found(pattern, texts), []);
  });

  it('keeps the fixed top level', () => {
    const wanted = [
      'README.md',
      'DEVELOPERS.md',
      'CHANGELOG.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
    ];
    const present = readdirSync('.', { withFileTypes: true }).map((e) => e.name);
    assert.deepEqual(
      wanted.filter((name) => !present.includes(name)),
      [],
    );
    // The words of the manifest are a copy that the build makes, where an editor looks for them.
    const built = ['package.nls.json'];
    const allowed = [...wanted, ...built, 'client', 'server', 'webview', 'tests', 'syntaxes', 'examples', ...skipped];
    assert.deepEqual(
      present.filter((name) => !name.startsWith('.') && !allowed.includes(name)),
      [],
    );
  });
});
