import type { PlacedFinding, Snapshot } from '../../engine/snapshot';
import { limitText } from '../../findings/page';
import { isFindingCode, settableLimit } from '../../findings/table';
import { writeRange } from '../../language/writing/amounts';
import { placeOf } from '../findings';
import { inTextOrder } from '../order';
import { SnapshotTexts, statementsOf } from '../statements';
import type { ReportBlock, ReportSection } from './model';
import { otherNotes, runStatement } from './stated';

const places = ['place', 'severity', 'finding', 'message'];

function findingRow(f: PlacedFinding, texts: SnapshotTexts): string[] {
  return [placeOf(f, texts), f.severity, f.code, f.message];
}

const none = (text: string): ReportBlock => ({ block: 'text', text });

/** What speaks against the numbers: what stands, and what was accepted for which reason. */
export function findingsSection(snapshot: Snapshot): ReportSection {
  const texts = new SnapshotTexts(snapshot);
  const all = inTextOrder(snapshot.findings);
  const standing = all.filter((f) => f.allowed === null);
  const allowed = all.filter((f) => f.allowed !== null);
  return {
    title: 'Findings',
    blocks: [
      standing.length === 0
        ? none('No finding stands.')
        : {
            block: 'table',
            name: 'Findings that stand',
            headers: places,
            rows: standing.map((f) => findingRow(f, texts)),
            numbers: [],
          },
      allowed.length === 0
        ? none('No finding was allowed.')
        : {
            block: 'table',
            name: 'Findings allowed, with the reason',
            headers: [...places, 'allowed because'],
            rows: allowed.map((f) => [...findingRow(f, texts), f.allowed!]),
            numbers: [],
          },
    ],
  };
}

/** Where the gloss leaves its method or the usual limits, always with the reason written there. */
export function deviationsSection(snapshot: Snapshot): ReportSection {
  const blocks: ReportBlock[] = [];
  const add = (name: string, headers: readonly string[], rows: readonly string[][], empty: string): void => {
    blocks.push(rows.length === 0 ? none(empty) : { block: 'table', name, headers, rows, numbers: [] });
  };
  const overriding = snapshot.gloss.tree.statements.flatMap(({ statement, canonical }) =>
    statement?.override === true ? [[canonical.split('\n').join('; '), statement.because ?? 'no reason stated']] : [],
  );
  add('Overrides of the method', ['override', 'because'], overriding, 'Nothing of the method is overridden.');
  const rules = statementsOf(snapshot, 'rule').map(({ file, statement: s }) => {
    const usual = isFindingCode(s.code) ? settableLimit(s.code) : null;
    return [s.code, s.limit.text, usual === null ? '' : limitText(usual), file, s.reason];
  });
  add('Limits of findings changed', ['finding', 'limit', 'usual', 'in', 'because'], rules, 'No limit is changed.');
  const masks = statementsOf(snapshot, 'mask').map(({ statement: s }) => [writeRange(s.range, 'written'), s.reason]);
  add('Data taken out of every fit', ['range', 'because'], masks, 'No data are masked.');
  return { title: 'Decided otherwise than by method and defaults', blocks };
}

/** Reminders that defer to local codes and licensed practice; the hazards declared, or that none were. */
export function cautionsSection(snapshot: Snapshot): ReportSection {
  const hazards = runStatement(snapshot)?.hazards ?? [];
  const cautions = snapshot.findings.filter((f) => f.code.startsWith('caution-')).map((f) => f.message);
  return {
    title: 'Hazards and cautions',
    blocks: [
      hazards.length === 0 ? none('Hazards are not stated.') : { block: 'list', items: hazards },
      ...(cautions.length === 0 ? [] : [{ block: 'list', items: cautions } as const]),
      none('Local codes and licensed practice decide what is safe; this report does not.'),
    ],
  };
}

export function notesSection(snapshot: Snapshot): ReportSection[] {
  const notes = otherNotes(snapshot);
  return notes.length === 0 ? [] : [{ title: 'Notes', blocks: [{ block: 'list', items: notes }] }];
}
