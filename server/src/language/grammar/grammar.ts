import type { ClauseRecord } from '../vocabulary/record';
import { clausePattern } from './clauses';
import { headPatterns } from './heads';
import { blank, nameLetter } from './lexical';
import { captures, include, type Pattern } from './pattern';
import { onAnyLine, values } from './values';

/** The TextMate grammar, from the records that the parser reads: for the first look of a text and where no server runs. */
export function generateGrammar(): object {
  const clauses = new Map<string, Pattern>();
  const names = new Map<string, string>();
  /** Clauses of one word that are read alike share their rule. */
  const ruleOf = (clause: ClauseRecord): string => {
    const pattern = clausePattern(clause);
    const key = JSON.stringify(pattern);
    const known = names.get(key);
    if (known !== undefined) return known;
    const usual = `clause ${clause.word}`;
    let free = usual;
    for (let i = 2; clauses.has(free); i += 1) free = `${usual} ${i}`;
    names.set(key, free);
    clauses.set(free, pattern);
    return free;
  };
  const heads = headPatterns(ruleOf);
  return {
    information: 'Generated from the vocabulary of the language by .build/grammar.mjs; changes here are lost.',
    name: 'Gloss',
    scopeName: 'source.gloss',
    fileTypes: ['gloss'],
    patterns: [version, ...heads, ...onAnyLine.map(include)],
    repository: { ...values, ...Object.fromEntries(clauses) },
  };
}

/** The very first line may say the version of the language. */
const version: Pattern = {
  match: `^(language)(?!${nameLetter})${blank}+(1)`,
  captures: captures({ 1: 'keyword.control.statement', 2: 'constant.numeric' }),
};
