import { clauseHeads } from '../vocabulary/clauseHeads';

/** What an editor does with keys and words without asking the server. */
export function generateLanguageConfiguration(): object {
  return {
    comments: { lineComment: '#' },
    brackets: [['(', ')']],
    autoClosingPairs: [
      { open: '(', close: ')', notIn: ['string', 'comment'] },
      { open: '"', close: '"', notIn: ['string', 'comment'] },
    ],
    surroundingPairs: [
      ['(', ')'],
      ['"', '"'],
    ],
    autoCloseBefore: ' \t\n),.#',
    // A name of the language (letters of any script, then letters, marks, digits and _), or a number.
    wordPattern: { pattern: '\\p{L}[\\p{L}\\p{M}\\p{Nd}_]*|\\d+(?:\\.\\d+)?', flags: 'u' },
    folding: { offSide: true },
    onEnterRules: [
      // A clause is indented by two blanks, however wide a tab is.
      {
        beforeText: `^(?:${clauseHeads.join('|')})(?:[ \\t].*)?$`,
        afterText: '^\\s*$',
        action: { indent: 'none', appendText: '  ' },
      },
      // An indented line left empty ends the clauses.
      { beforeText: '^[ \\t]+$', afterText: '^\\s*$', action: { indent: 'outdent' } },
    ],
  };
}
