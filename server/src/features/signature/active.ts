import type { ClauseRecord, StatementRecord } from '../../language/vocabulary/record';
import { isSign, isWord, lastIndex } from '../completion/context';
import type { LineToken } from '../lineTokens';

/** Which parameter of a statement is being written behind these tokens; null: all are. */
export function activeOfStatement(record: StatementRecord, args: readonly LineToken[]): number | null {
  const name = activeName(record, args);
  const index = record.parameters.findIndex((p) => p.name === name);
  return index < 0 ? null : index;
}

function activeName(record: StatementRecord, args: readonly LineToken[]): string | null {
  const has = (word: string): boolean => args.some((t) => isWord(t, word));
  switch (record.kind) {
    case 'step':
    case 'peak':
    case 'glass':
    case 'onset':
      if (args.length === 0) return 'NAME';
      return isSign(args[1], '=') && inSum(args) ? 'A + B' : 'PLACE';
    case 'crossing': {
      if (args.length === 0) return 'NAME';
      const equals = args.findIndex((t) => isSign(t, '='));
      if (equals < 0) return 'SIGNAL';
      const level = args.slice(equals + 1);
      return level.length < (isWord(level[2], 'of') ? 4 : 2) ? 'Q' : 'PLACE';
    }
    case 'residue':
      if (args.length === 0) return 'NAME';
      return has('end') || has('in') ? 'SEGMENT' : 'Q';
    case 'let':
      return isSign(args[1], '=') ? 'EXPRESSION' : 'NAME';
    case 'given':
      return has('in') ? 'UNIT' : 'NAME';
    case 'require':
      return has('as') ? 'NAME' : has('in') ? 'RANGE' : 'EXPRESSION';
    case 'allow':
      return has('because') ? 'TEXT' : has('on') ? 'NAME' : 'CODE';
    case 'rule':
      return has('because') ? 'TEXT' : behindCode(args) ? 'Q' : 'CODE';
    case 'approved':
      return has('digest') ? 'HEX' : has('on') ? 'DATE' : 'TEXT';
    case 'mask':
      return has('because') ? 'TEXT' : 'RANGE';
    case 'columns':
    case 'reading':
      return args.length === 1 && has('of') ? 'FILE' : null;
    default:
      return args.length === 0 ? (record.parameters[0]?.name ?? null) : null;
  }
}

/** Between `=` and the last part of a sum. */
function inSum(args: readonly LineToken[]): boolean {
  const plus = lastIndex(args, (t) => isSign(t, '+') || isSign(t, '='));
  return args.length <= plus + 2;
}

/** A code is cut at its hyphens: it ends where a blank stands. */
function behindCode(args: readonly LineToken[]): boolean {
  return args.some((t, i) => i > 0 && args[i - 1]!.span.end < t.span.start);
}

/** Which part of a clause is being written behind these tokens. */
export function activeOfClause(clause: ClauseRecord, args: readonly LineToken[]): number {
  const has = (word: string): boolean => args.some((t) => isWord(t, word));
  switch (clause.argument.form) {
    case 'allow':
      return has('because') ? 1 : 0;
    case 'column':
      return has('in') ? 1 : 0;
    case 'calibrated':
      return args.length === 0 ? 0 : has('u') ? 2 : 1;
    case 'ramp':
      return has('at') ? 2 : has('to') ? 1 : 0;
    case 'crucible':
      return args.some((t) => isSign(t, ',')) ? 2 : args.some((t) => t.kind === 'number') ? 1 : 0;
    case 'atmosphere': {
      if (has('from')) return 4;
      if (has('purity')) return 3;
      const share = args.some((t) => t.text === '%');
      const flow = lastIndex(args, (t) => t.kind === 'number');
      if (flow < 0) return 0;
      return share && (flow === lastIndex(args, (t) => t.text === '%') - 1 || isSign(args.at(-1), '+'))
        ? 1
        : share || args.at(-1)?.kind === 'unit'
          ? 2
          : 1;
    }
    default:
      return 0;
  }
}
