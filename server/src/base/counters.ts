/** Counts of work done. Tests assert these, never clocks. */
export class Counters {
  private readonly counts = new Map<string, number>();

  add(what: string, by = 1): void {
    this.counts.set(what, this.of(what) + by);
  }

  of(what: string): number {
    return this.counts.get(what) ?? 0;
  }

  all(): Readonly<Record<string, number>> {
    return Object.fromEntries([...this.counts].sort(([a], [b]) => (a < b ? -1 : 1)));
  }
}
