import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { folders } from './floors';
import { sourceFiles } from './imports';

interface Place {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

function places(files: readonly string[], pattern: RegExp): Place[] {
  return files.flatMap((path) =>
    readFileSync(path, 'utf8')
      .split('\n')
      .map((text, i) => ({ file: path.split(sep).join('/'), line: i + 1, text: code(text) }))
      .filter(({ text }) => pattern.test(text)),
  );
}

/** A line without what stands behind `//` or in a comment block of its own. */
function code(line: string): string {
  return /^\s*(?:\/?\*|\/\/)/.test(line) ? '' : line;
}

const server = (folder: string): string[] => sourceFiles(join('server', 'src', folder));

describe('the source of the server', () => {
  it('turns numbers into text in presentation and in the one formatter of messages only', () => {
    const pattern = /\.to(?:Fixed|Precision|Exponential|LocaleString)\s*\(|\bIntl\.NumberFormat/;
    const found = places(sourceFiles(join('server', 'src')), pattern).map((p) => p.file);
    const allowed = /^server\/src\/(?:presentation\/.*|findings\/numberText)\.ts$/;
    assert.deepEqual(
      found.filter((file) => !allowed.test(file)),
      [],
    );
    assert.ok(found.length > 0, 'the pattern finds the formatter itself');
  });

  it('knows no clock and no unseeded randomness on its pure floors', () => {
    const pattern = /\bDate\b\s*[.(]|\bnew Date\b|\bMath\.random\b|\bperformance\b/;
    for (const { name } of folders.filter((f) => f.pure)) assert.deepEqual(places(server(name), pattern), []);
    assert.ok(pattern.test('const t = Date.now();') && pattern.test('Math.random()') && pattern.test('new Date()'));
  });

  it('opens no connection', () => {
    const pattern = /\b(?:fetch\s*\(|WebSocket\b|XMLHttpRequest\b|EventSource\b|sendBeacon\b)/;
    assert.deepEqual(places(sourceFiles(join('server', 'src')), pattern), []);
    assert.ok(pattern.test("await fetch('x')"));
  });

  it('runs nothing that comes from a workspace', () => {
    const pattern = /\beval\s*\(|\bnew Function\b|\bchild_process\b|\bnode:vm\b|\bworker_threads\b/;
    // The git program is run with plumbing commands that execute nothing of a repository.
    const others = sourceFiles(join('server', 'src')).filter((f) => !f.endsWith(join('host', 'git.ts')));
    assert.deepEqual(places(others, pattern), []);
    assert.ok(pattern.test('new Function(text)'));
  });
});
