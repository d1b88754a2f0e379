import type { Statement } from '../../model';
import {
  readBlank,
  readColumns,
  readJoin,
  readMethodTitle,
  readProgramme,
  readReading,
  readRun,
  readUseMethod,
} from './data';
import { readCrossing, readGlass, readOnset, readPeak, readResidue, readStep } from './evaluations';
import type { HeadReader } from './head';
import {
  readAllowHead,
  readApproved,
  readGiven,
  readLet,
  readMask,
  readNote,
  readRequire,
  readRule,
} from './judgements';

/** One reader for each kind of statement. */
export const headReaders: Readonly<Record<Statement['kind'], HeadReader>> = {
  run: readRun,
  join: readJoin,
  columns: readColumns,
  reading: readReading,
  blank: readBlank,
  method: readMethodTitle,
  'use method': readUseMethod,
  programme: readProgramme,
  given: readGiven,
  step: readStep,
  peak: readPeak,
  glass: readGlass,
  onset: readOnset,
  crossing: readCrossing,
  residue: readResidue,
  let: readLet,
  require: readRequire,
  mask: readMask,
  rule: readRule,
  allow: readAllowHead,
  note: readNote,
  approved: readApproved,
};
