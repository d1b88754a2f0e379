import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { generateLanguageConfiguration } from '../../server/src/language/grammar/languageConfiguration';
import { isName } from '../../server/src/language/syntax/characters';
import { statements } from '../../server/src/language/vocabulary/statements';

interface Configuration {
  readonly wordPattern: { readonly pattern: string; readonly flags: string };
  readonly onEnterRules: readonly {
    readonly beforeText: string;
    readonly afterText: string;
    readonly action: { readonly indent: string; readonly appendText?: string };
  }[];
}

describe('the language configuration', () => {
  const committed = JSON.parse(readFileSync('syntaxes/language-configuration.json', 'utf8')) as Configuration;

  it('is the one that the vocabulary gives (node .build/grammar.mjs writes it anew)', () => {
    assert.deepEqual(committed, generateLanguageConfiguration());
  });

  it('takes a name in any script for one word, as the language does', () => {
    const whole = new RegExp(`^(?:${committed.wordPattern.pattern})$`, committed.wordPattern.flags);
    for (const name of ['First', 'Carbon_black', 'β_relaxation', 'Щёлочь', '試料', 'e\u0301tape', 'T95']) {
      assert.ok(isName(name.normalize('NFC')) && whole.test(name), name);
    }
    assert.ok(!whole.test('First.loss') && !whole.test('_x') && !whole.test('a-b'));
  });

  it('indents by two blanks below heads whose clauses usually follow and only there, and goes back after an empty clause line', () => {
    const rule = (line: string) =>
      committed.onEnterRules.find((r) => new RegExp(r.beforeText).test(line) && new RegExp(r.afterText).test(''));
    for (const line of ['run "a.csv"', 'blank "b.gloss"', 'override step First', 'programme']) {
      assert.deepEqual(rule(line)?.action, { indent: 'none', appendText: '  ' }, line);
    }
    for (const line of [
      'let x = 1',
      'note "x"',
      'step First 640..800 °C',
      'peak Melting 200..280 °C',
      'runs "a.csv"',
      'runs',
      '  mass 20 mg',
      '# run "a.csv"',
      '',
    ]) {
      assert.equal(rule(line), undefined, line);
    }
    assert.equal(rule('  ')?.action.indent, 'outdent');
    for (const { keyword } of statements)
      assert.ok(new RegExp('^[a-z]+$').test(keyword), 'no sign that a pattern reads');
  });
});
