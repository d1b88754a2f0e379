import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { generateGrammar } from '../../server/src/language/grammar/grammar';
import { parse } from '../../server/src/language/syntax/parse';
import { splitLines } from '../../server/src/language/syntax/lines';
import { bases } from '../../server/src/language/vocabulary/bases';
import { because } from '../../server/src/language/vocabulary/clauses';
import { functions } from '../../server/src/language/vocabulary/functions';
import { signals } from '../../server/src/language/vocabulary/signals';
import { statements } from '../../server/src/language/vocabulary/statements';
import { tokenised, type Scoped } from './tokenise';

/** Every gloss of the examples, and of every statement, clause, function, basis and signal its example. */
const texts: readonly string[] = [
  ...['limestone', 'preform', 'faults'].flatMap((folder) =>
    readdirSync(join('examples', folder))
      .filter((name) => name.endsWith('.gloss'))
      .map((name) => readFileSync(join('examples', folder, name), 'utf8')),
  ),
  ...statements.flatMap((record) => [
    record.example,
    ...record.clauses.map((clause) => `${record.example.split('\n')[0]}\n  ${clause.example}`),
  ]),
  `override step First 1..2 °C\n  ${because.example}`,
  ...functions.map(({ example }) => `let x = ${example}`),
  ...bases.map(({ example }) => `step First 1..2 °C\n  ${example}`),
  ...signals.map(({ example }) => `crossing T ${example} = 5 %`),
  'language 1\nrun "a.csv"',
];

const has = (token: Scoped | undefined, scope: string): boolean =>
  token?.scopes.some((s) => s === `${scope}.gloss` || s.startsWith(`${scope}.`)) === true;

/** The token that holds a column of a line. */
function tokenAt(tokens: readonly Scoped[], column: number): Scoped | undefined {
  let at = 0;
  return tokens.find(({ text }) => (at += text.length) > column);
}

describe('the grammar for the first look', () => {
  it('is the one that the vocabulary gives (node .build/grammar.mjs writes it anew)', () => {
    const committed: unknown = JSON.parse(readFileSync('syntaxes/gloss.tmLanguage.json', 'utf8'));
    assert.deepEqual(committed, generateGrammar());
  });

  it('takes the first word of every line for a keyword, and of every clause for one', async () => {
    let seen = 0;
    for (const text of texts) {
      const lines = await tokenised(text);
      const kinds = splitLines(text);
      kinds.forEach(({ kind }, i) => {
        if (kind !== 'head' && kind !== 'clause') return;
        const first = lines[i].find((token) => token.text.trim() !== '');
        const due =
          first?.text === 'override'
            ? 'storage.modifier'
            : kind === 'head'
              ? 'keyword.control'
              : 'keyword.other.clause';
        assert.ok(has(first, due), `${JSON.stringify(first)} in ${text}`);
        seen += 1;
      });
    }
    assert.ok(seen > 500, `${seen} lines`);
  });

  it('gives every character of the examples that is no blank a scope, and takes none for invalid', async () => {
    for (const text of texts) {
      for (const token of (await tokenised(text)).flat()) {
        if (token.text.trim() !== '') assert.ok(token.scopes.length > 0, `\`${token.text}\` in ${text}`);
        assert.ok(!has(token, 'invalid'), `\`${token.text}\` in ${text}`);
      }
    }
  });

  it('takes for a comment what the parser does, and no # within a text', async () => {
    const more = [
      'run "a#1.csv" # "quoted"',
      'note "say \\"#\\" now" # end',
      'note "not closed # no comment',
      '  # in\n#out',
      'let x = M(CO2) # M(CO2)',
    ];
    for (const text of [...texts, ...more]) {
      const lines = await tokenised(text);
      splitLines(text).forEach((line, i) => {
        const comment = lines[i]
          .filter((token) => has(token, 'comment'))
          .map((token) => token.text)
          .join('');
        assert.equal(comment, line.comment === null ? '' : text.slice(line.comment, line.lineEnd), text);
      });
    }
  });

  it('knows every number with its unit, every text and every name that the parser reads', async () => {
    for (const text of texts) {
      const lines = await tokenised(text);
      const starts = splitLines(text).map(({ start }) => start);
      const at = (offset: number): Scoped | undefined => {
        const line = starts.filter((start) => start <= offset).length - 1;
        return tokenAt(lines[line], offset - starts[line]);
      };
      const tree = parse(text);
      for (const node of tree.statements) {
        for (const [token, { start, end }] of node.tokens) {
          const written = text.slice(start, end);
          const is = (scope: string): void =>
            assert.ok(has(at(start), scope), `${token} ${written}: ${JSON.stringify(at(start))}\n${text}`);
          if (
            /^(?:window|limit|atmosphere|crucible|calibrated|heat|cool|hold)\S*\.(?:from|to|at|within|flow|volume|purity|u|rate|time)$/.test(
              token,
            )
          ) {
            if (/^\d/.test(written)) is('constant.numeric');
            const unit = /[^\d\s.eE±-][^\s]*$/.exec(written);
            if (unit !== null && /\d\s/.test(written))
              assert.ok(has(at(start + unit.index), 'keyword.other.unit'), `${written} in ${text}`);
          }
          if (token === 'file' || token === 'title' || (token === 'because' && written.startsWith('"')))
            is('string.quoted.double');
          if (token === 'name')
            is(
              ['let', 'given'].includes(node.statement?.kind ?? '')
                ? 'variable.other.constant'
                : 'entity.name.function',
            );
          if (
            /^(?:expression|limit)[/\d]*\.name$/.test(token) ||
            /^(?:sum\/\d+|per\.name|on\.name|encloses\.name.*)$/.test(token)
          )
            is('variable.other.readwrite');
          if (/^expression[/\d]*\.quantity$/.test(token)) is('variable.other.property');
          if (/^expression[/\d]*\.formula$/.test(token)) is('string.unquoted.formula');
          if (token === 'segment') is('constant.language.segment');
          if (token === 'code' || token === 'allow.code') is('constant.other.code');
          if (token === 'unit' || token.endsWith('.unit') || token === 'show.value') is('keyword.other.unit');
        }
      }
    }
  });

  it('knows every function and every unit symbol in every spelling of the language', async () => {
    for (const { name, example } of functions) {
      const [line] = await tokenised(`let x = ${example}`);
      assert.ok(
        has(
          line.find((token) => token.text === name),
          'support.function',
        ),
        name,
      );
    }
    // SI Brochure, 9th edition: prefixed symbols and derived units as they are written there; the typed forms are ours.
    for (const unit of [
      'mg',
      'µg',
      'μg',
      'ug',
      '°C',
      '℃',
      'degC',
      'K/min',
      'mL/min',
      'J/(g·K)',
      'J/(g*K)',
      'K^2',
      's⁻¹',
      'W·s/g',
      '1/min',
      '%',
      'ppm',
      'kJ/mol',
      '%/min',
      'Pa',
      'bar',
    ]) {
      const [line] = await tokenised(`let x = 5 ${unit}`);
      const last = line.filter((token) => token.text.trim() !== '').at(-1);
      assert.ok(last?.text === unit && has(last, 'keyword.other.unit'), `${unit}: ${JSON.stringify(last)}`);
    }
    // By whole words: `mg/n` is mg divided by a name, `min` before `utes` is no unit.
    const [divided] = await tokenised('let x = 12 mg/n');
    assert.deepEqual(
      divided.filter((token) => has(token, 'keyword.other.unit')).map((token) => token.text),
      ['mg'],
    );
    const [word] = await tokenised('let x = 12 minutes');
    assert.ok(!word.some((token) => has(token, 'keyword.other.unit')));
  });

  it('takes names for names although they are keywords, units or functions elsewhere', async () => {
    const [step, , let_] = await tokenised('step step 1..2 °C\n\nlet mean = in + mg * run.loss');
    assert.ok(has(step[2], 'entity.name.function') && step[2].text === 'step');
    const names = let_.filter((token) => has(token, 'variable.other.readwrite')).map((token) => token.text);
    assert.deepEqual(names, ['in', 'mg', 'run']);
  });

  it('says invalid of a comma between digits and of an unknown sign after a backslash, and of nothing that is only unfinished', async () => {
    const wrong = async (text: string): Promise<string[]> =>
      (await tokenised(text)).flat().flatMap((token) => (has(token, 'invalid') ? [token.text] : []));
    assert.deepEqual(await wrong('run "a.csv"\n  mass 20,5 mg'), ['20,5']);
    assert.deepEqual(await wrong('run "a\\b.csv"'), ['\\b']);
    for (const text of [
      'st',
      'step First',
      'step First 640..',
      'run "a',
      '  mass',
      'let x = M(',
      'let x = mean(1 %, 2 %)',
    ])
      assert.deepEqual(await wrong(text), [], text);
  });

  it('goes on with the clauses of a statement over comments and empty lines, and ends them at the next head', async () => {
    const lines = await tokenised('run "a.csv"\n# between\n\n  mass 5 mg\nfoo\n  mass 5 mg');
    assert.ok(has(lines[3][1], 'keyword.other.clause'));
    assert.ok(!lines[5].some((token) => has(token, 'keyword.other.clause')));
  });
});
