import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { globSync } from 'tinyglobby';
import { codes } from '../../server/src/findings/codes';
import { packagedFiles } from '../served/extensionFolder';

/** What the package holds beside schemas, pages of findings and examples, each name by hand. */
const listed = [
  'CHANGELOG.md',
  'LICENSE',
  'README.md',
  'client/media/curves-dark.svg',
  'client/media/curves-light.svg',
  'client/media/file-dark.svg',
  'client/media/file-light.svg',
  'client/media/icon.png',
  'client/media/icon.svg',
  'client/media/walkthrough/curves.svg',
  'client/media/walkthrough/draft.svg',
  'client/media/walkthrough/example.svg',
  'client/media/walkthrough/results.svg',
  'client/media/walkthrough/window.svg',
  'dist/client.js',
  'dist/clientBrowser.js',
  'dist/delimitedText.js',
  'dist/program.js',
  'dist/server.js',
  'dist/serverWorker.js',
  'dist/thermogloss.js',
  'dist/webview.css',
  'dist/webview.js',
  'package.json',
  'package.nls.json',
  'syntaxes/gloss.tmLanguage.json',
  'syntaxes/language-configuration.json',
];

describe('what is packaged', () => {
  const names = packagedFiles();

  it('is the files listed here, the schemas, the pages and the examples, and nothing else', () => {
    const others = /^(?:dist\/[\w-]+\.schema\.json|dist\/docs\/[\w-]+\.md|examples\/.*)$/;
    assert.deepEqual(
      names.filter((name) => !others.test(name)),
      listed,
    );
  });

  it('has each committed schema and a page for every finding, of the language and of the rules', () => {
    const schemas = globSync('server/src/presentation/**/*.schema.json').map((path) => `dist/${basename(path)}`);
    assert.deepEqual(
      names.filter((name) => name.endsWith('.schema.json')),
      schemas.sort(),
    );
    const pages = [...codes.map((code) => `finding-${code}`), 'findings', 'findings-coverage', 'language'];
    assert.deepEqual(
      names.filter((name) => name.startsWith('dist/docs/')),
      pages.map((page) => `dist/docs/${page}.md`).sort(),
    );
  });

  it('has of the examples glosses, their data and their truth, and nothing that makes them', () => {
    const examples = names.filter((name) => name.startsWith('examples/'));
    assert.ok(examples.length > 20);
    assert.deepEqual(
      examples.filter(
        (name) =>
          !/^examples\/(?:README\.md|\w+\/[\w-]+\.(?:gloss|csv|txt)|\w+\/(?:truth|[\w-]+\.gloss\.approved)\.json)$/.test(
            name,
          ),
      ),
      [],
    );
  });

  // The rule asks for https addresses; a repository nobody has named yet has none, so a picture is a file of it.
  it('has pictures in its pages that are PNG or GIF and are there, or come by https', () => {
    for (const page of ['README.md', 'CHANGELOG.md']) {
      const pictures = [...readFileSync(page, 'utf8').matchAll(/!\[[^\]]*\]\(([^)]*)\)|<img\b[^>]*src="([^"]*)"/g)];
      for (const [, plain, marked] of pictures) {
        const address = plain ?? marked;
        assert.match(address, /\.(?:png|gif)$/);
        assert.ok(address.startsWith('https:') || existsSync(address), address);
      }
    }
  });
});
