import type { ReportApproval, ReportBlock, ReportInput, ReportSection } from './model';

const stateWords: Readonly<Record<ReportApproval['state'], string>> = {
  holds: 'holds',
  broken: 'broken',
  unknown: 'not known',
};

/** Who stands for these results, and whether what was approved is what stands here. */
export function approvalSection({ approvals }: ReportInput): ReportSection {
  const title = 'Approval';
  if (approvals.length === 0) return { title, blocks: [{ block: 'text', text: 'These results are not approved.' }] };
  const table: ReportBlock = {
    block: 'table',
    name: 'Approved',
    headers: ['by', 'on', 'because', 'digest', 'state', 'why'],
    rows: approvals.map((a) => [a.by, a.on, a.because ?? '', a.digest, stateWords[a.state], a.why.join('; ')]),
    numbers: [],
  };
  const text =
    'An approval is a record, not an electronic signature: who it was is told by the signed commit that brought its line.';
  return { title, blocks: [table, { block: 'text', text }] };
}

/** The day of the latest approval that holds; null: none does. A report of what nobody approved is not issued by it. */
export function approvedOn({ approvals }: ReportInput): string | null {
  const days = approvals.filter((a) => a.state === 'holds').map((a) => a.on);
  return days.sort().at(-1) ?? null;
}
