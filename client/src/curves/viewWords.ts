const prefix = 'view.';

/**
 * Words of the curves view among those of a translation: the view has its own in English, a translation of the extension
 * gives others under the same keys, `view.copy` for `copy`.
 */
export function viewWords(bundle: Readonly<Record<string, unknown>> | undefined): Record<string, string> | null {
  const found = Object.entries(bundle ?? {}).flatMap(([key, word]): [string, string][] =>
    key.startsWith(prefix) && typeof word === 'string' ? [[key.slice(prefix.length), word]] : [],
  );
  return found.length === 0 ? null : Object.fromEntries(found);
}
