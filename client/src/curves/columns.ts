/**
 * Column for what is shown beside something: the other one of two, so that opening again and again does not walk to the
 * right.
 * @param of column (from 1) of what it is shown beside; undefined: it has none.
 * @param columns how many there are.
 */
export function columnFor(of: number | undefined, columns: number): number {
  if (of === undefined) return columns === 1 ? 2 : 1;
  return of === 1 || columns === 1 ? of + 1 : of - 1;
}
