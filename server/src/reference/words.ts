/**
 * The one form in which words of a gloss are looked up: NFC, lower case, hyphens, underscores and runs of blanks as one
 * blank. Formulas are not words: they keep their case.
 */
export function lookupForm(words: string): string {
  return words
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}

/** A formula as it is looked up: blanks dropped, one joiner. */
export function formulaForm(words: string): string {
  return words.normalize('NFC').replace(/\s+/g, '').replace(/[·*]/g, '.');
}

/** What rows are found by. */
export interface Named {
  readonly name: string;
  /** Further words, in lookup form. */
  readonly aliases: readonly string[];
  /** Formulas and element symbols, case kept, `.` as joiner. */
  readonly formulas: readonly string[];
}

/**
 * An index over rows, made when something is first looked up: a program that starts may need none of them. A word that
 * two rows claim is an error of the tables.
 */
export function indexed<T extends Named>(rows: readonly T[]): (words: string) => T | null {
  let index: Index<T> | null = null;
  return (words) => {
    index ??= indexOf(rows);
    return index.byFormula.get(formulaForm(words)) ?? index.byWord.get(lookupForm(words)) ?? null;
  };
}

interface Index<T> {
  readonly byWord: ReadonlyMap<string, T>;
  readonly byFormula: ReadonlyMap<string, T>;
}

function indexOf<T extends Named>(rows: readonly T[]): Index<T> {
  const byWord = new Map<string, T>();
  const byFormula = new Map<string, T>();
  for (const row of rows) {
    for (const word of [row.name, ...row.aliases].map(lookupForm)) put(byWord, word, row);
    for (const formula of row.formulas) put(byFormula, formula, row);
  }
  return { byWord, byFormula };
}

function put<T extends Named>(index: Map<string, T>, key: string, row: T): void {
  const other = index.get(key);
  if (other !== undefined && other !== row) throw new Error(`"${key}" names both ${other.name} and ${row.name}`);
  index.set(key, row);
}
