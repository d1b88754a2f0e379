/** Endings of files that instruments export and a gloss may name. */
export const dataEndings = ['csv', 'txt', 'tsv', 'dat', 'asc'] as const;

/** Pattern for watching and finding them: file systems that tell case apart see endings in both. */
export const dataPattern = `**/*.{${dataEndings.flatMap((e) => [e, e.toUpperCase()]).join(',')}}`;
export const glossPattern = '**/*.gloss';
/** Records of approvals, beside their gloss. */
export const recordPattern = '**/*.gloss.approved.json';

export function isRecord(path: string): boolean {
  return path.endsWith('.gloss.approved.json');
}

export function isDataFile(path: string): boolean {
  const ending = /\.([^./]+)$/.exec(path)?.[1]?.toLowerCase();
  return (dataEndings as readonly string[]).includes(ending ?? '');
}
