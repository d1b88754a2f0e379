import type { Span } from '../../base/span';
import { bases } from '../../language/vocabulary/bases';
import { because } from '../../language/vocabulary/clauses';
import type { ClauseRecord, StatementRecord } from '../../language/vocabulary/record';
import { signalRecord } from '../../language/vocabulary/signals';
import { clauseOf } from '../../language/vocabulary/statements';
import { normalName } from '../../language/syntax/characters';
import { findCrucible } from '../../reference/crucibles';
import { findGas } from '../../reference/gases';
import { findSpecimen } from '../../reference/specimens';
import type { ClausePlace } from '../clauses';
import type { Block } from '../prose';
import { crucibleBlocks, gasBlocks, specimenBlocks } from '../substances';
import { basisBlocks, clauseBlocks, signalBlocks } from '../words';
import { amountBlocks } from './amounts';

/** The record of a clause as it stands; null where its statement has none of that word. */
export function recordOfClause(record: StatementRecord | null, { word }: ClausePlace): ClauseRecord | null {
  const name = normalName(/^\p{L}[\p{L}\p{M}\p{Nd}_]*/u.exec(word)?.[0] ?? '');
  if (record !== null && clauseOf(record, name) !== null) return clauseOf(record, name);
  return name === because.word ? because : null;
}

/** What is said of the value of a clause at an offset: a substance, a basis, a signal, a number; else of the clause. */
export function clauseValueBlocks(text: string, clause: ClauseRecord, value: Span, offset: number): readonly Block[] {
  const written = text.slice(value.start, value.end);
  const piece = pieceAt(written, offset - value.start);
  const words = piece
    .replace(/\s*\d.*$/, '')
    .trim()
    .replace(/^"(.*)"$/, '$1');
  const found = valueBlocks(clause, words, written);
  if (found.length > 0) return found;
  const amount = amountAt(written, offset - value.start);
  const blocks = amount === null ? [] : amountBlocks(amount);
  return blocks.length > 0 ? blocks : clauseBlocks(clause);
}

function valueBlocks(clause: ClauseRecord, words: string, written: string): readonly Block[] {
  switch (clause.argument.form) {
    case 'crucible': {
      const crucible = findCrucible(words);
      return crucible === null ? [] : crucibleBlocks(crucible);
    }
    case 'atmosphere': {
      const gas = findGas(words);
      return gas === null ? [] : gasBlocks(gas);
    }
    case 'words': {
      const specimen = findSpecimen(words);
      return specimen === null ? [] : specimenBlocks(specimen);
    }
    case 'basis': {
      const basis = bases.find((b) => written.replace(/\s+/g, ' ').startsWith(b.words));
      return basis === undefined ? [] : basisBlocks(basis);
    }
    case 'signal':
    case 'signals':
    case 'calibrated': {
      const signal = signalRecord(words.replace(/\(.*$/, ''));
      return signal === null ? [] : signalBlocks(signal);
    }
    default:
      return [];
  }
}

/** The item of a list, or of a mixture, around an offset. */
function pieceAt(written: string, offset: number): string {
  const before = Math.max(written.lastIndexOf(',', offset - 1), written.lastIndexOf('+', offset - 1));
  const after = [written.indexOf(',', offset), written.indexOf('+', offset)].filter((i) => i >= 0);
  return written.slice(before + 1, after.length === 0 ? written.length : Math.min(...after)).trim();
}

/** The number with its unit around an offset. */
function amountAt(written: string, offset: number): string | null {
  for (const match of written.matchAll(/[-\u2212]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?\s*[^\s,;.±]+/g)) {
    if (match.index <= offset && offset <= match.index + match[0].length) return match[0];
  }
  return null;
}
