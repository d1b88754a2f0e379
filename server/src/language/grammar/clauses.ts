import { bases } from '../vocabulary/bases';
import type { ClauseRecord } from '../vocabulary/record';
import { encodings } from '../vocabulary/statements/reading';
import { blank, code, name, nameLetter, unit, words } from './lexical';
import { captures, include, match, scope, type Pattern } from './pattern';

/** Small words of a written form, `at` of `heat [T] to T at RATE`: what is not in capitals. */
export function wordsOfForm(form: string, without: readonly string[]): readonly string[] {
  const found = form.match(/[A-Za-z]+/g) ?? [];
  return [...new Set(found.filter((word) => word === word.toLowerCase() && !without.includes(word)))];
}

/** The lines of one clause: its word, then what its argument may hold. */
export function clausePattern(clause: ClauseRecord): Pattern {
  return {
    begin: `^${blank}+(${clause.word})(?!${nameLetter})`,
    end: '$',
    beginCaptures: captures({ 1: 'keyword.other.clause' }),
    patterns: argumentPatterns(clause),
  };
}

function argumentPatterns(clause: ClauseRecord): readonly Pattern[] {
  const { argument } = clause;
  const line = ['comment', 'text', 'date', 'decimalComma'].map(include);
  const amounts = [include('amount'), include('operator')];
  const small = wordsOfForm(clause.form, [clause.word, 'none', ...('of' in argument ? argument.of : [])]);
  // `lines` is read in the singular too.
  const connecting = small.map((word) => (word === 'lines' ? 'line' : word));
  const joined = small.length === 0 ? [] : [match('keyword.operator.word', words([...small, ...connecting]))];
  const none = [match('constant.language', words(['none']))];
  switch (argument.form) {
    case 'nothing':
      return [include('comment')];
    case 'text':
    case 'date':
      return line;
    case 'text or none':
    case 'amount or none':
      return [...line, ...none, ...amounts];
    case 'choice':
      return [...line, match('constant.language', words(argument.of))];
    case 'words':
    case 'crucible':
      return [...line, ...amounts, include('words')];
    case 'atmosphere': {
      // `purity` may also be a word of a gas's name: it counts before its number.
      const before = small.map((word) => (word === 'purity' ? `${words([word])}(?=${blank}+\\d)` : words([word])));
      return [
        ...line,
        ...before.map((pattern) => match('keyword.operator.word', pattern)),
        include('segment'),
        ...amounts,
        include('words'),
      ];
    }
    case 'calibrated':
    case 'signal':
    case 'signals':
      return [...line, ...joined, include('signal'), ...amounts];
    case 'encoding':
      return [...line, match('constant.language', words(encodings))];
    case 'name':
    case 'names':
      return [...line, include('name'), ...amounts];
    case 'basis':
      return [...line, basisPattern(), include('name')];
    case 'unit':
      return [include('comment'), include('unit')];
    case 'allow':
      return [{ match: `\\G${blank}+(${code})`, captures: captures({ 1: 'constant.other.code' }) }, ...line, ...joined];
    case 'column':
      return [
        ...line,
        {
          match: `(${words(['in'])})${blank}+(${unit}|1)`,
          captures: captures({ 1: 'keyword.operator.word', 2: 'keyword.other.unit' }),
        },
        ...joined,
        ...amounts,
      ];
    case 'amount':
    case 'count':
    case 'ramp':
    case 'hold':
      return [...line, ...joined, ...amounts];
  }
}

/** The words of a basis, at the end of which a statement may be named. */
function basisPattern(): Pattern {
  const phrases = bases.map((basis) => basis.words);
  return { name: scope('constant.language.basis'), match: `\\G${blank}*${words(phrases)}` };
}

/** A clause that is not known (yet): its values are. */
export const unknownClause: Pattern = {
  begin: `^${blank}+(?:${name})`,
  end: '$',
  patterns: ['comment', 'text', 'date', 'decimalComma', 'amount', 'operator'].map(include),
};
