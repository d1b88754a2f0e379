import type { Position, SignatureHelp, SignatureInformation } from 'vscode-languageserver-types';
import { because } from '../../language/vocabulary/clauses';
import { functionRecord, molarMassRecord } from '../../language/vocabulary/functions';
import { clauseOf } from '../../language/vocabulary/statements';
import { normalName } from '../../language/syntax/characters';
import type { Abilities } from '../abilities';
import { isSign, type CompletionContext } from '../completion/context';
import { cursorAt } from '../cursor';
import type { LineToken } from '../lineTokens';
import { markup, prose, type Block } from '../prose';
import type { GlossDocument } from '../workspace';
import { activeOfClause, activeOfStatement } from './active';
import { clauseForm, functionForm, isChannel, statementForm, type Form } from './forms';

interface Told {
  readonly form: Form;
  readonly words: readonly Block[];
  readonly active: number | null;
}

/** The form of what is being written at a place: a function, a clause or a statement; null where nothing is. */
export function signatureHelp(document: GlossDocument, position: Position, abilities: Abilities): SignatureHelp | null {
  const cursor = cursorAt(document.tree, document.positions.offset(position));
  const told = cursor.place === 'comment' ? null : formAt(cursor);
  if (told === null) return null;
  const active = told.active ?? (abilities.noActiveParameter ? null : undefined);
  return {
    signatures: [information(told, abilities)],
    activeSignature: 0,
    ...(active === undefined ? {} : { activeParameter: active }),
  };
}

function information({ form, words, active }: Told, abilities: Abilities): SignatureInformation {
  return {
    label: form.label,
    documentation: markup(words, abilities.signatureFormat),
    parameters: form.parameters.map(({ at, meaning }) => ({
      label: abilities.labelOffsets ? [at.start, at.end] : form.label.slice(at.start, at.end),
      ...(meaning === null ? {} : { documentation: markup([prose(meaning)], abilities.signatureFormat) }),
    })),
    ...(active === null && abilities.noActiveParameter ? { activeParameter: null } : {}),
  };
}

function formAt(cursor: CompletionContext['cursor']): Told | null {
  const { before, record, place, override } = cursor;
  if (before.length === 0 || record === null) return null;
  if (cursor.formula !== null)
    return { form: functionForm(molarMassRecord), words: [prose(molarMassRecord.prose)], active: 0 };
  if (place === 'clause') return clauseAt(cursor);
  const call = openCall(before);
  if (call !== null) return call;
  const args = before.slice(override ? 2 : 1);
  return { form: statementForm(record), words: [prose(record.prose)], active: activeOfStatement(record, args) };
}

function clauseAt({ before, record, override }: CompletionContext['cursor']): Told | null {
  const word = normalName(before[0]!.text);
  const clause = override && word === because.word ? because : clauseOf(record!, word);
  if (clause === null || clause.argument.form === 'nothing') return null;
  const args = before.slice(clause.argument.form === 'column' && isChannel(word) ? 4 : 1);
  const normal = clause.default === null ? [] : [prose(`Where it is not written: ${clause.default}.`)];
  return { form: clauseForm(clause), words: [prose(clause.prose), ...normal], active: activeOfClause(clause, args) };
}

/** The innermost function whose bracket is open, with the argument being written. */
function openCall(tokens: readonly LineToken[]): Told | null {
  const open: { readonly name: string; commas: number }[] = [];
  tokens.forEach((token, i) => {
    const top = open.at(-1);
    if (isSign(token, '(')) open.push({ name: normalName(tokens[i - 1]?.text ?? ''), commas: 0 });
    else if (isSign(token, ')')) open.pop();
    else if (isSign(token, ',') && top !== undefined) top.commas += 1;
  });
  for (const { name, commas } of open.reverse()) {
    const record = functionRecord(name);
    if (record === null) continue;
    const form = functionForm(record);
    // The last place of `mean(x, …)` stands for any number of values.
    const last = form.parameters.length - 1;
    const active = commas <= last || record.most === null ? Math.min(commas, last) : null;
    return { form, words: [prose(record.prose)], active };
  }
  return null;
}
