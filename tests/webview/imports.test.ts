import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { allImports, sourceFiles } from '../architecture/imports';
import { cycle } from '../architecture/rules';

const root = join('webview', 'src');
const imports = allImports(root);
const texts = sourceFiles(root).map((path) => ({ path, text: readFileSync(path, 'utf8') }));
const found = (pattern: RegExp): string[] => texts.filter(({ text }) => pattern.test(text)).map(({ path }) => path);

describe('the source of the curves view', () => {
  it('lets one file know the charting library, and knows no other package', () => {
    const packages = imports.filter((i) => !i.ours);
    assert.deepEqual([...new Set(packages.map((i) => `${i.from} ${i.to}`))], ['draw/chart chart.js']);
  });

  it('knows of the server only its messages and its texts', () => {
    const outside = imports.filter((i) => i.ours && i.to.startsWith('..')).map((i) => i.to);
    assert.ok(outside.length > 10, 'the import lines were read');
    assert.deepEqual(
      outside.filter((to) => !/^\.\.\/\.\.\/server\/src\/(?:protocol|presentation)\//.test(to)),
      [],
    );
  });

  it('has no cycle of files that load each other', () => {
    assert.equal(cycle(imports), null);
  });

  it('makes no markup of text, runs no text, and opens no connection', () => {
    assert.deepEqual(
      found(/innerHTML|outerHTML|insertAdjacentHTML|document\.write|DOMParser|createContextualFragment/),
      [],
    );
    assert.deepEqual(found(/\beval\s*\(|new Function\b|setTimeout\(\s*['"`]/), []);
    assert.deepEqual(found(/\b(?:fetch\s*\(|WebSocket\b|XMLHttpRequest\b|EventSource\b|sendBeacon\b|import\s*\()/), []);
    assert.ok(/innerHTML/.test('a.innerHTML = b'), 'the pattern finds what it is for');
  });

  it('keeps what a page needs out of the files that only compute', () => {
    const pure = texts.filter(({ path }) => /[\\/](?:state|geometry|control)[\\/]/.test(path));
    assert.ok(pure.length > 20);
    assert.deepEqual(
      pure
        .filter(({ text }) =>
          /\b(?:document|window|navigator|HTML\w*Element)\b\s*[.)<]/.test(text.replace(/^\s*(?:\/?\*|\/\/).*$/gm, '')),
        )
        .map((p) => p.path),
      [],
    );
  });
});

describe('the words of the curves view', () => {
  it('stand in one file: no other hands a sentence of its own to the page', () => {
    const own = texts
      .filter(({ path }) => !path.endsWith('words.ts'))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/(?:\btext|title|'aria-label'|'aria-description'): '([^']*[a-z]{3,}[^']*)'/g)].map(
          (m) => `${path}: ${m[1]}`,
        ),
      );
    assert.deepEqual(own, []);
  });
});
