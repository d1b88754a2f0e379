import { isFindingCode } from '../../findings/table';
import { basisBlocks, clauseBlocks, functionBlocks, quantityBlocks, signalBlocks, statementBlocks } from '../words';
import { codeBlocks, crucibleBlocks, formulaBlocks, gasBlocks, specimenBlocks } from '../substances';
import { bases } from '../../language/vocabulary/bases';
import { functionRecord } from '../../language/vocabulary/functions';
import { quantities, quantityRecord, type EvaluationKind } from '../../language/vocabulary/quantities';
import { signalRecord } from '../../language/vocabulary/signals';
import { clauseOf, statements } from '../../language/vocabulary/statements';
import { because } from '../../language/vocabulary/clauses';
import { findCrucible } from '../../reference/crucibles';
import { findGas } from '../../reference/gases';
import { findSpecimen } from '../../reference/specimens';
import type { Block } from '../prose';
import type { Workspace } from '../workspace';

/** What a completion is about. Small and plain, for it travels to the client and back. */
export type DocKey =
  | { readonly of: 'statement'; readonly kind: string }
  | { readonly of: 'clause'; readonly kind: string; readonly word: string }
  | { readonly of: 'quantity'; readonly kind: string; readonly name: string }
  | {
      readonly of: 'function' | 'signal' | 'basis' | 'gas' | 'crucible' | 'specimen' | 'formula' | 'code';
      readonly name: string;
    };

/** The documentation of a completion; empty where its key is not one of ours. */
export function docBlocks(key: DocKey, workspace: Pick<Workspace, 'pageOf'>): readonly Block[] {
  switch (key.of) {
    case 'statement': {
      const record = statements.find((s) => s.kind === key.kind);
      return record === undefined ? [] : statementBlocks(record);
    }
    case 'clause': {
      const record = statements.find((s) => s.kind === key.kind);
      const clause = record === undefined ? null : clauseOf(record, key.word);
      if (clause !== null) return clauseBlocks(clause);
      return key.word === because.word ? clauseBlocks(because) : [];
    }
    case 'quantity': {
      const record = key.kind in quantities ? quantityRecord(key.kind as EvaluationKind, key.name) : null;
      return record === null ? [] : quantityBlocks(record);
    }
    case 'function': {
      const record = functionRecord(key.name);
      return functionBlocks(record);
    }
    case 'signal': {
      const record = signalRecord(key.name);
      return record === null ? [] : signalBlocks(record);
    }
    case 'basis': {
      const record = bases.find((b) => b.of === key.name);
      return record === undefined ? [] : basisBlocks(record);
    }
    case 'gas': {
      const gas = findGas(key.name);
      return gas === null ? [] : gasBlocks(gas);
    }
    case 'crucible': {
      const crucible = findCrucible(key.name);
      return crucible === null ? [] : crucibleBlocks(crucible);
    }
    case 'specimen': {
      const specimen = findSpecimen(key.name);
      return specimen === null ? [] : specimenBlocks(specimen);
    }
    case 'formula':
      return formulaBlocks(key.name);
    case 'code':
      return isFindingCode(key.name) ? codeBlocks(key.name, workspace.pageOf(key.name)) : [];
  }
}
