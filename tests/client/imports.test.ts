import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { importsOf, sourceFiles, type Import } from '../architecture/imports';

const root = join('client', 'src');
const imports: Import[] = sourceFiles(root).flatMap((path) =>
  importsOf(relative('.', path).split(sep).join('/').replace(/\.ts$/, ''), readFileSync(path, 'utf8')),
);

describe('the client', () => {
  it('imports its own files, the protocol and presentation of the server, and nothing else of it', () => {
    assert.ok(imports.length > 80, 'the import lines were read');
    const foreign = imports.filter(
      ({ ours, to }) => ours && !/^(?:client\/src\/|server\/src\/(?:protocol|presentation)\/)/.test(to),
    );
    assert.deepEqual(foreign, []);
  });

  it('uses the editor, its protocol library and the mirror of texts, and Node only in its entry for Node', () => {
    const packages = imports.filter((i) => !i.ours);
    const known =
      /^(?:vscode|vscode-languageclient(?:\/(?:node|browser))?|vscode-languageserver-textdocument|node:[a-z_/]+)$/;
    assert.deepEqual(
      packages.filter((i) => !known.test(i.to)),
      [],
    );
    const node = packages.filter((i) => i.to.startsWith('node:')).map((i) => `${i.from} ${i.to}`);
    assert.deepEqual(node, [
      'client/src/extension node:fs/promises',
      'client/src/server/nodeProcess node:child_process',
    ]);
  });

  it('loads the protocol library only when it is first needed', () => {
    const eager = imports.filter((i) => i.to.startsWith('vscode-languageclient') && !i.typeOnly).map((i) => i.from);
    const lazy = ['nodeClient', 'browserClient', 'languageClient', 'transports'].map((n) => `client/src/server/${n}`);
    assert.deepEqual(
      [...new Set(eager)].filter((from) => !lazy.includes(from)),
      [],
    );
    const loads = imports.filter((i) => !i.typeOnly && lazy.includes(i.to) && !lazy.includes(i.from));
    assert.deepEqual(loads.map((i) => i.from).sort(), ['client/src/browserExtension', 'client/src/extension']);
    for (const { from, to } of loads) {
      const name = to.split('/').at(-1)!;
      assert.match(readFileSync(`${from}.ts`, 'utf8'), new RegExp(`load: \\(\\) => import\\('\\./server/${name}'\\)`));
    }
  });

  it('opens no connection: no module and no global of Node or the browser that could', () => {
    const network = /^(?:node:)?(?:https?|http2|net|tls|dgram|dns|inspector)(?:\/|$)/;
    assert.deepEqual(
      imports.filter((i) => network.test(i.to)),
      [],
    );
    for (const path of sourceFiles(root)) {
      assert.doesNotMatch(
        readFileSync(path, 'utf8'),
        /\b(?:fetch|XMLHttpRequest|WebSocket|EventSource|sendBeacon|localhost)\b/,
        path,
      );
    }
  });
});
