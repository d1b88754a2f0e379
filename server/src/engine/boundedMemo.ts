import type { Memo } from '../evaluation/memo';

/** Keeps the most recently used entries, at most `limit` of them. */
export class BoundedMemo implements Memo {
  private readonly entries = new Map<string, unknown>();

  constructor(private readonly limit: number) {}

  get(key: string): unknown {
    const value = this.entries.get(key);
    if (value !== undefined) {
      this.entries.delete(key);
      this.entries.set(key, value);
    }
    return value;
  }

  set(key: string, value: unknown): void {
    this.entries.delete(key);
    this.entries.set(key, value);
    if (this.entries.size > this.limit) this.entries.delete(this.entries.keys().next().value as string);
  }

  get size(): number {
    return this.entries.size;
  }
}
