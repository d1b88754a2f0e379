import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

interface Manifest {
  readonly version: string;
  readonly engines: Readonly<Record<string, string>>;
}

const manifest = (path: string): Manifest => JSON.parse(readFileSync(path, 'utf8')) as Manifest;

describe('the extension', () => {
  // Types of a newer editor would let calls through that the oldest one does not have.
  it('is typed against the oldest editor that the manifest allows', () => {
    const [, allowed] = /^\^(\d+\.\d+)\.\d+$/.exec(manifest('package.json').engines['vscode']!)!;
    const { version } = manifest(join('node_modules', '@types', 'vscode', 'package.json'));
    assert.equal(version.split('.').slice(0, 2).join('.'), allowed);
  });
});
