import type { Host } from '../base/host';
import { writeText } from '../language/writing/writeText';
import { approvalSchema, type ApprovalRecord } from './record';

/**
 * The digest of a record (language.md, section 4): the first 32 hex digits of SHA-256 over lines: the schema; role, path and
 * identity of each data file; the statements, one a line; the results as stored. Numbers in it are those of the record, as
 * text: none is computed anew, so that the last bit of another machine changes no digest.
 */
export function digestOf(host: Pick<Host, 'digest'>, record: Omit<ApprovalRecord, 'approvers'>): string {
  return host.digest(digestedText(record)).slice(0, 32);
}

export function digestedText({ files, statements, stored }: Omit<ApprovalRecord, 'approvers'>): string {
  return [
    approvalSchema,
    ...files.map(({ role, path, identity }) => `${role} ${writeText(path)} ${identity}`),
    ...statements.map((text) => text.replaceAll('\n', ' ')),
    JSON.stringify(stored),
  ].join('\n');
}
