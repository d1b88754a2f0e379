/** Calls `work` only where one of the values it reads is another than at the last call. */
export function whenChanged(): (reads: readonly unknown[], work: () => void) => void {
  let last: readonly unknown[] | null = null;
  return (reads, work) => {
    if (last !== null && last.length === reads.length && reads.every((value, i) => value === last?.[i])) return;
    last = reads;
    work();
  };
}
