import type { Host } from '../base/host';
import type { Change } from '../presentation/diff/model';
import type { Side } from './side';

/** A file that differs, with the paths to take from the other side when it is tried alone. */
export interface FileChange extends Omit<Change, 'place'> {
  readonly paths: readonly string[];
}

/** Data, joined files and blanks whose content differs between two sides, by what they are for. */
export async function fileChanges(host: Host, older: Side, newer: Side): Promise<FileChange[]> {
  const changes: FileChange[] = [];
  const left = files(host, older);
  for (const [key, to] of files(host, newer)) {
    const from = left.get(key);
    if (from === undefined) continue;
    const differing: string[] = [];
    for (const path of to.paths) {
      if (!from.paths.includes(path)) continue;
      const [a, b] = [await older.source.contentId(path), await newer.source.contentId(path)];
      if (a !== b && a !== null && b !== null) differing.push(path);
    }
    const sameText = to.identity !== null && to.identity === from.identity && !to.described;
    if (differing.length === 0 || sameText) continue;
    changes.push({ key, kind: to.kind, text: to.text, about: null, paths: differing });
  }
  return changes;
}

interface Used {
  readonly kind: 'data' | 'blank';
  readonly text: string;
  readonly paths: readonly string[];
  /** Of the data read; null where it was not read. */
  readonly identity: string | null;
  /** One of the paths is a text that describes the file: its content counts beside the data's. */
  readonly described: boolean;
}

function files(host: Host, side: Side): Map<string, Used> {
  const { program, path, snapshot } = side;
  const found = new Map<string, Used>();
  if (program.run !== null) {
    const { file } = program.run.statement;
    found.set('data', {
      kind: 'data',
      text: `${file} replaced`,
      paths: [host.resolve(path, file)],
      identity: snapshot.run?.identity ?? null,
      described: false,
    });
  }
  for (const join of program.joins) {
    const at = host.resolve(path, join.statement.file);
    const identity = snapshot.inputs.find((i) => i.role === 'join' && i.display === host.display(at))?.identity ?? null;
    found.set(`join ${join.statement.file}`, {
      kind: 'data',
      text: `joined ${join.statement.file} replaced`,
      paths: [at],
      identity,
      described: false,
    });
  }
  const blanks = snapshot.inputs.filter((i) => i.role === 'blank');
  program.blanks.forEach((blank, index) => {
    const { file } = blank.statement;
    const at = host.resolve(path, file);
    const data = blanks[index];
    const paths = [at];
    // The blank's data lie beside its gloss under the name the evaluation shows.
    if (data !== undefined && data.display !== host.display(at)) {
      const inner = data.display.split('/').pop()!;
      paths.push(host.resolve(at, inner));
    }
    found.set(`blank ${file}`, {
      kind: 'blank',
      text: `${file} replaced`,
      paths,
      identity: data?.identity ?? null,
      described: file.endsWith('.gloss'),
    });
  });
  return found;
}
