import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packagedFiles } from '../served/extensionFolder';
import { temporaryFolder } from '../served/temporaryFolder';
import { zipNames } from './support/zipNames';

describe('the package of the extension', function () {
  // The packer is fetched on its first use.
  this.timeout(300_000);
  let names: string[];

  before(() => {
    const { folder, remove } = temporaryFolder('package');
    const file = join(folder, 'thermogloss.vsix');
    const run = spawnSync('npm', ['run', 'package', '--', '--out', file], { encoding: 'utf8' });
    assert.equal(run.status, 0, `${run.stdout}\n${run.stderr}`);
    names = zipNames(file)
      .filter((name) => name.startsWith('extension/'))
      .map((name) => name.slice('extension/'.length));
    remove();
  });

  it('holds what the manifest lists, as the tests of the editor install it', () => {
    // The packer has names of its own for these.
    const renamed: Readonly<Record<string, string>> = {
      'README.md': 'readme.md',
      'CHANGELOG.md': 'changelog.md',
      LICENSE: 'LICENSE.txt',
    };
    assert.deepEqual(
      names,
      packagedFiles()
        .map((name) => renamed[name] ?? name)
        .sort(),
    );
  });

  it('holds each file that the manifest names', () => {
    const manifest = readFileSync('package.json', 'utf8');
    const named = [...manifest.matchAll(/": "(?:\.\/)?((?:dist|syntaxes|client)\/[\w./-]+)"/g)].map((m) => m[1]!);
    // Both entries and the icon at least.
    assert.equal(named.length >= 3, true);
    assert.deepEqual(
      named.filter((name) => !names.includes(name)),
      [],
    );
  });

  it('holds no tests, no sources, no maps and no packages', () => {
    const unwanted = names.filter((name) =>
      /(?:^|\/)(?:node_modules|tests?|src|out)\/|\.(?:ts|map|tsbuildinfo)$|\.cache$/.test(name),
    );
    assert.deepEqual(unwanted, []);
    const scripts = names.filter((name) => name.endsWith('.js'));
    assert.equal(scripts.length >= 5, true);
    const mapped = scripts.filter((name) => /^\/\/# sourceMappingURL=/m.test(readFileSync(name, 'utf8')));
    assert.deepEqual(mapped, []);
  });
});
