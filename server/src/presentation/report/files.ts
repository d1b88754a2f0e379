import type { Snapshot } from '../../engine/snapshot';
import { interpretationLines } from '../interpretation';
import type { ReportBlock, ReportSection } from './model';

/** The files that took part, by digest, and how each was read. */
export function filesSection({ run, inputs }: Snapshot): ReportSection {
  const files = [...(run === null ? [] : [{ ...run, role: 'run' }]), ...inputs];
  if (files.length === 0) return { title: 'Files', blocks: [{ block: 'text', text: 'No data file was read.' }] };
  const read = files.flatMap(({ display, interpretation }): ReportBlock[] =>
    interpretation === null
      ? []
      : [{ block: 'list', items: [`${display} as read: ${interpretationLines(interpretation).join('; ')}`] }],
  );
  return {
    title: 'Files',
    blocks: [
      {
        block: 'table',
        name: 'SHA-256 of the decoded text, byte order mark dropped, line ends as LF',
        headers: ['role', 'file', 'SHA-256'],
        rows: files.map((f) => [f.role, f.display, f.identity]),
        numbers: [],
      },
      ...read,
    ],
  };
}
