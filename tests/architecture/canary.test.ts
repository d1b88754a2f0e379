import assert from 'node:assert/strict';
import { resolve } from 'node:path';
import ts from 'typescript';
import { folders } from './floors';

// A pure floor must not compile where it reaches for Node or a browser. One small file a forbidden name, as if it lay in
// each pure folder, is compiled together with all files of the unit: types that a package would pull in by way of any of
// them would let the canary live.
const forbidden: Readonly<Record<string, string>> = {
  process: 'export const x = process.pid;',
  Buffer: "export const x = Buffer.from('a');",
  document: 'export const x = document.title;',
  setTimeout: 'export const x = setTimeout(() => undefined, 1);',
  require: "export const x = require('fs');",
};
const harmless = 'export const x = Math.sqrt(2);';

describe('a pure floor', function () {
  // Compiling the unit takes seconds on a busy machine.
  this.timeout(120_000);
  const unit = resolve('server', 'tsconfig.pure.json');
  let diagnostics: (file: string) => readonly ts.Diagnostic[];
  const canary = (folder: string, name: string): string => resolve('server', 'src', folder, `canary-${name}.ts`);

  before('compiling the unit with its canaries', () => {
    const config = ts.parseJsonConfigFileContent(
      ts.readConfigFile(unit, ts.sys.readFile).config,
      ts.sys,
      resolve('server'),
    );
    const texts = new Map<string, string>();
    for (const { name } of folders.filter((f) => f.pure)) {
      for (const [word, text] of [...Object.entries(forbidden), ['nothing', harmless]])
        texts.set(canary(name, word), text);
    }
    const host = ts.createCompilerHost(config.options);
    const { fileExists, readFile, getSourceFile } = host;
    host.fileExists = (path) => texts.has(resolve(path)) || fileExists(path);
    host.readFile = (path) => texts.get(resolve(path)) ?? readFile(path);
    host.getSourceFile = (path, options, ...rest) => {
      const text = texts.get(resolve(path));
      return text === undefined ? getSourceFile(path, options, ...rest) : ts.createSourceFile(path, text, options);
    };
    const program = ts.createProgram([...config.fileNames, ...texts.keys()], config.options, host);
    assert.ok(config.fileNames.length > 20, 'the files of the unit were found');
    diagnostics = (file) => {
      const source = program.getSourceFile(file);
      assert.notEqual(source, undefined, file);
      return program.getSemanticDiagnostics(source);
    };
  });

  for (const { name } of folders.filter((f) => f.pure)) {
    it(`does not compile with ${Object.keys(forbidden).join(', ')} (${name})`, () => {
      for (const word of Object.keys(forbidden)) {
        const found = diagnostics(canary(name, word)).map((d) => ts.flattenDiagnosticMessageText(d.messageText, ' '));
        assert.match(found.join('; '), new RegExp(`Cannot find name '${word}'`));
      }
      assert.deepEqual(diagnostics(canary(name, 'nothing')), []);
    });
  }
});
