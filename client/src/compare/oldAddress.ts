import type { OldTextParams } from '../../../server/src/protocol/compare';

/** Scheme of texts of another revision, shown read-only. */
export const oldScheme = 'thermogloss-revision';

/** What stands after the `?` of an old text's address. `comparison` tells those of one comparison from the next's. */
export function oldQuery(params: OldTextParams, comparison: number): string {
  return JSON.stringify({ ...params, comparison });
}

/** null: no address of ours. */
export function oldParams(query: string): OldTextParams | null {
  try {
    const read = JSON.parse(query) as Partial<OldTextParams> | null;
    if (read === null || typeof read.uri !== 'string' || typeof read.with !== 'object') return null;
    return { uri: read.uri, with: read.with };
  } catch {
    return null;
  }
}
