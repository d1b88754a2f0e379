import type { Snapshot } from '../../engine/snapshot';
import { statementsOf } from '../statements';
import { fact, type Fact } from './model';

/** Every note of a gloss and its method, in written order. */
export function notesOf(snapshot: Snapshot): string[] {
  return (['gloss', 'method'] as const).flatMap((file) =>
    (snapshot[file]?.tree.statements ?? []).flatMap(({ statement: s }) => {
      if (s === null) return [];
      const about = s.kind === 'note' && s.on !== null ? ` (on ${s.on})` : '';
      return s.kind === 'note' ? [`${s.text}${about}`, ...s.notes] : s.notes;
    }),
  );
}

// What ISO/IEC 17025:2017, 7.8.2.1 and the conditions clauses of ISO 11357-1 and ISO 11358-1 ask for and the language has
// no clause of its own for (the clauses from memory).
const asked: Readonly<Record<string, string>> = {
  laboratory: 'ISO/IEC 17025',
  place: 'ISO/IEC 17025',
  customer: 'ISO/IEC 17025',
  authoriser: 'ISO/IEC 17025',
  received: 'ISO/IEC 17025',
  condition: 'ISO/IEC 17025',
  'method edition': 'ISO/IEC 17025',
  deviations: 'ISO/IEC 17025',
  sampling: 'ISO/IEC 17025',
  instrument: 'ISO 11357-1, ISO 11358-1',
  sensor: 'ISO 11357-1, ISO 11358-1',
  form: 'ISO 11357-1, ISO 11358-1',
  preparation: 'ISO 11357-1, ISO 11358-1',
  history: 'ISO 11357-1, ISO 11358-1',
  'calibration materials': 'ISO 11357-1, ISO 11358-1',
  'calibration date': 'ISO 11357-1, ISO 11358-1',
};

/** What a note states that begins with the field and a colon: `note "customer: …"`. */
export function noted(snapshot: Snapshot, field: string): Fact {
  const texts = notesOf(snapshot).flatMap((note) => {
    const colon = note.indexOf(':');
    const said = colon > 0 && note.slice(0, colon).trim().toLowerCase() === field;
    return said ? [note.slice(colon + 1).trim()] : [];
  });
  return fact(field, texts.join('; '), asked[field] ?? null);
}

/** Notes that state no field. */
export function otherNotes(snapshot: Snapshot): string[] {
  return notesOf(snapshot).filter((note) => {
    const colon = note.indexOf(':');
    return colon <= 0 || !(note.slice(0, colon).trim().toLowerCase() in asked);
  });
}

export function runStatement(snapshot: Snapshot): ReturnType<typeof statementsOf<'run'>>[number]['statement'] | null {
  return statementsOf(snapshot, 'run')[0]?.statement ?? null;
}
