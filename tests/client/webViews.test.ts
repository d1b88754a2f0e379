import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sourceFiles } from '../architecture/imports';

describe('the web views of the client', () => {
  const sources = sourceFiles(join('client', 'src')).map((path) => [path, readFileSync(path, 'utf8')] as const);

  it('are made anew whenever their tab is shown: none asks to be kept while hidden', () => {
    const made = sources.filter(([, text]) => /createWebviewPanel\s*\(/.test(text));
    assert.equal(made.length, 1, 'one file makes them');
    const keeps = /retainContextWhenHidden/;
    assert.deepEqual(
      sources.filter(([, text]) => keeps.test(text)).map(([path]) => path),
      [],
    );
    assert.ok(keeps.test('{ enableScripts: true, retainContextWhenHidden: true }'));
  });

  it('may read the built files of the extension alone', () => {
    const roots = sources.flatMap(([, text]) => [...text.matchAll(/localResourceRoots: (\[.*?\])/g)].map((m) => m[1]!));
    assert.deepEqual(roots, ["[Uri.joinPath(context.extensionUri, 'dist')]"]);
  });
});
