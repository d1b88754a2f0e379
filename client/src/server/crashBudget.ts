/** How often a lost server is started again: a few times in a stretch of time, then a person decides. */
export class CrashBudget {
  private times: number[] = [];

  /** @param now milliseconds of any steady clock. */
  constructor(
    private readonly now: () => number,
    readonly most = 4,
    readonly within = 180_000,
  ) {}

  /** Counts one loss; false: too many of them lately. */
  spend(): boolean {
    const time = this.now();
    this.times = this.times.filter((t) => time - t < this.within);
    this.times.push(time);
    return this.times.length <= this.most;
  }
}
