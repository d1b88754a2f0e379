import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readCommandLine } from '../../server/src/cli/commandLine';
import { commands } from '../../server/src/cli/commands';
import { commandHelp, fullHelp } from '../../server/src/cli/helpText';
import { say } from './fakeTerminal';

describe('the command line', () => {
  it('reads switches, values and operands in any order, and takes what follows -- as operands', () => {
    const line = readCommandLine([
      'results',
      'a.gloss',
      '--all',
      '--format=csv',
      '-o',
      'x.csv',
      '-',
      '--',
      '--b.gloss',
    ]);
    assert.ok(line.wants === 'run');
    assert.deepEqual(line.typed.operands, ['a.gloss', '-', '--b.gloss']);
    assert.deepEqual([...line.typed.switches], ['all']);
    assert.deepEqual(
      [...line.typed.values],
      [
        ['format', 'csv'],
        ['output', 'x.csv'],
      ],
    );
  });

  it('says brief help on standard error and exits with 2 where nothing was asked', async () => {
    const said = await say([]);
    assert.equal(said.code, 2);
    assert.equal(said.out, '');
    assert.ok(said.error.split('\n').length < 10 && said.error.includes('--help shows more'));
  });

  it('shows help with examples first, of all and of each command, on standard output', async () => {
    const all = await say(['--help']);
    assert.deepEqual([all.code, all.error], [0, '']);
    assert.ok(all.out.startsWith('Examples\n'));
    for (const { name } of commands) {
      for (const words of [
        [name, '--help'],
        [name, '-h'],
        ['help', name],
      ]) {
        const { code, out } = await say(words);
        assert.equal(code, 0);
        assert.ok(out.startsWith('Examples\n  thermogloss '), words.join(' '));
      }
    }
  });

  it('shows the version of package.json', async () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    assert.deepEqual(await say(['--version']), { code: 0, out: `thermogloss ${version}\n`, error: '' });
  });

  const refusals: readonly (readonly [string, readonly string[], RegExp])[] = [
    ['a mistyped command', ['result', 'x'], /no command "result"; did you mean results\?/],
    [
      'a command that does not exist',
      ['publish', 'x'],
      /there is no command "publish" \(new, check, results, diff, history, report, format, approve, lsp\)/,
    ],
    ['a file where none is taken', ['lsp', 'x.gloss'], /lsp takes no file/],
    ['a mistyped option', ['results', 'x', '--explian'], /results has no option --explian; did you mean --explain\?/],
    ['an option of another command', ['format', 'x', '--explain'], /format has no option --explain/],
    ['an unknown short option', ['check', 'x', '-q'], /check has no option -q/],
    [
      'a format that is not written',
      ['results', 'x', '--format', 'sarif'],
      /--format knows no "sarif" \(text, json, csv, markdown\)/,
    ],
    ['a mistyped value', ['check', 'x', '--fail-on', 'warnings'], /knows no "warnings"; did you mean warning\?/],
    ['a value that is missing', ['check', 'x', '--format'], /--format needs a value: --format FORMAT/],
    ['a value where there is none to give', ['results', 'x', '--all=yes'], /--all takes no value/],
    ['an option in front of the command', ['--format', 'json', 'results'], /the command comes first/],
    ['a command without its operand', ['results'], /results needs a gloss/],
    ['--at without standard input', ['check', 'package.json', '--at', 'x'], /--at places standard input/],
    ['an explanation that is no text', ['results', 'x', '--explain', '--format', 'json'], /--explain is text/],
    [
      'geometry in a table',
      ['results', 'x', '--geometry', '--format', 'csv'],
      /--geometry does not go with --format csv/,
    ],
  ];
  for (const [what, words, message] of refusals) {
    it(`refuses ${what} with exit code 2, on standard error alone`, async () => {
      const said = await say(words);
      assert.equal(said.code, 2);
      assert.equal(said.out, '');
      assert.match(said.error, message);
      assert.match(said.error, /--help shows how it is called/);
    });
  }

  it('mentions in its help every option it takes, and none that it does not', () => {
    for (const command of commands) {
      const text = commandHelp(command);
      for (const option of command.options) {
        assert.ok(text.includes(`--${option.long}`), option.long);
        const value = option.values === null ? [] : ['--' + option.long, option.values[0]];
        const words =
          option.value === null ? [`--${option.long}`] : value.length > 0 ? value : [`--${option.long}`, 'x'];
        assert.equal(readCommandLine([command.name, 'operand', ...words]).wants, 'run');
      }
      const mentioned = [...text.matchAll(/--([a-z-]+)/g)].map((m) => m[1]);
      const known = [...command.options.map((o) => o.long), 'help'];
      assert.deepEqual(
        mentioned.filter((m) => !known.includes(m)),
        [],
        command.name,
      );
    }
  });

  it('can read every example of its help', () => {
    const lines = commands.flatMap((c) => c.examples.map((e) => e.line));
    for (const line of lines) {
      const words = line
        .replace(/ < .*/, '')
        .split(' ')
        .slice(1)
        .map((w) => w.replaceAll('"', ''));
      assert.equal(readCommandLine(words).wants, 'run', line);
    }
    assert.ok(
      fullHelp()
        .split('\n')
        .every((l) => l.length <= 130),
    );
  });
});
