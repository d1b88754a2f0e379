import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import {
  checkFormats,
  commands,
  diffFormats,
  formats,
  help,
  reportFormats,
  versionOption,
} from '../../server/src/cli/commands';
import { commandHelp } from '../../server/src/cli/helpText';
import { findingTable } from '../../server/src/findings/table';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

/** The texts for people who use the program, examples among them. */
function documents(): string[] {
  const below = (folder: string): string[] =>
    readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return below(path);
      return /\.(?:md|yml|yaml)$/.test(entry.name) ? [path] : [];
    });
  return ['README.md', 'CHANGELOG.md', '.pre-commit-hooks.yaml', ...below('examples')];
}

describe('what the documents, the help and the program say of one another', () => {
  const options = new Set([...commands.flatMap((c) => c.options), help, versionOption].map((o) => o.long));
  const texts = documents().map((path) => ({ path, text: readFileSync(path, 'utf8') }));

  const folder = folderWith({
    'b.csv': smallRun,
    'b.gloss': smallGloss,
    'c.gloss': smallGloss.replace('620', '560').replace('in 14..16 %', 'in 1..2 %'),
  });
  after(() => folder.remove());

  it('every option named beside the program exists', () => {
    // Options of other programs stand in the words for those: git, npm, code, node.
    const others = new Set(['install-extension', 'save-dev', 'unshallow']);
    const named = texts.flatMap(({ path, text }) =>
      [...text.matchAll(/(?<=[\s`(|])--([a-z][a-z-]*)/g)].map((m) => ({ path, option: m[1] })),
    );
    assert.ok(named.length > 5);
    assert.deepEqual(
      named.filter(({ option }) => !options.has(option) && !others.has(option)),
      [],
    );
  });

  it('every command named after the program exists', () => {
    const names = new Set<string>(commands.map((c) => c.name));
    const named = texts.flatMap(({ path, text }) =>
      [...text.matchAll(/`?thermogloss ([a-z]+)\b/g)].map((m) => ({ path, line: m[0], name: m[1] })),
    );
    // In sentences the program is followed by a verb.
    const calls = named.filter(({ line }) => line.startsWith('`'));
    assert.ok(calls.length > 3);
    assert.deepEqual(
      calls.filter(({ name }) => !names.has(name)),
      [],
    );
  });

  it('the help of each command lists its formats, and each writes what no other does', async () => {
    for (const [name, wanted] of [
      ['results', formats],
      ['history', formats],
      ['check', checkFormats],
      ['diff', diffFormats],
      ['report', reportFormats],
    ] as const) {
      const command = commands.find((c) => c.name === name)!;
      const format = command.options.find((o) => o.long === 'format')!;
      assert.deepEqual(format.values, wanted, name);
      for (const one of wanted) assert.ok(commandHelp(command).includes(one), `${name} ${one}`);
      // It needs a repository; its formats have golden files beside those of revisions.
      if (name === 'history') continue;
      const operands = name === 'diff' ? ['b.gloss', 'c.gloss'] : ['b.gloss'];
      const outs = new Set<string>();
      for (const one of wanted) outs.add((await say([name, ...operands, '--format', one], { cwd: folder.path })).out);
      assert.equal(outs.size, wanted.length, name);
      assert.ok(!outs.has(''), name);
    }
  });

  it('every command documents the exit codes 0 and 2, and 1 where it has one', () => {
    for (const command of commands) {
      const codes = command.exit.map((line) => line.split(' ')[0]);
      assert.deepEqual(codes, [...new Set(codes)].sort(), command.name);
      assert.ok(codes[0] === '0' && codes.at(-1) === '2', command.name);
    }
    const row = /^\| 1 .*$/m.exec(texts[0].text)![0];
    for (const { name, exit } of commands) {
      if (exit.some((line) => line.startsWith('1 '))) assert.ok(row.includes(`\`${name}`), name);
    }
  });

  it('every code of a finding that the README names exists, and every file it points to', () => {
    const known = new Set<string>(findingTable.keys());
    const { text } = texts[0];
    const allowed = [...text.matchAll(/^\s*allow ([a-z-]+) because/gm)].map((m) => m[1]);
    assert.ok(allowed.length > 0);
    assert.deepEqual(
      allowed.filter((code) => !known.has(code)),
      [],
    );
    for (const { path, text: one } of texts) {
      for (const [, target] of one.matchAll(/\]\(([^)#:]+)\)/g)) {
        assert.ok(existsSync(join(dirname(path), target)), `${path}: ${target}`);
      }
    }
  });

  it('every schema of a machine format goes with the program and is named in the README', () => {
    const schemas = readdirSync('server/src/presentation').filter((n) => n.endsWith('.schema.json'));
    assert.ok(schemas.length >= 4);
    for (const name of schemas) {
      assert.ok(existsSync(join('dist', name)), name);
      assert.ok(texts[0].text.includes(`server/src/presentation/${name}`), name);
    }
  });
});
