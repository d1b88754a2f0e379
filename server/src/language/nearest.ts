/** The candidates that a misspelt word probably means, nearest first, ties by alphabet; at most `limit` of them. */
export function nearest(word: string, candidates: Iterable<string>, limit = 1): readonly string[] {
  const allowed = word.length <= 3 ? 1 : word.length <= 7 ? 2 : 3;
  const found: { readonly text: string; readonly distance: number }[] = [];
  for (const text of candidates) {
    if (text === word || Math.abs(text.length - word.length) > allowed) continue;
    const same = text.toLowerCase() === word.toLowerCase();
    const distance = same ? 0.5 : editDistance(word, text);
    if (distance <= allowed && distance < Math.max(word.length, text.length)) found.push({ text, distance });
  }
  found.sort((a, b) => a.distance - b.distance || (a.text < b.text ? -1 : 1));
  return found.slice(0, limit).map(({ text }) => text);
}

/** Insertions, deletions, replacements, swaps of neighbours (the restricted Damerau distance; from memory). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, before[j - 2]! + 1);
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}
