/**
 * Documents whose shown results belong to a server that is gone. Until the new one has finished with them, questions about
 * their results wait: an early answer would be empty, and clear what is shown.
 */
export class Holding {
  private readonly foreign = new Set<string>();
  private readonly held = new Map<string, { readonly released: Promise<void>; readonly release: () => void }>();

  hold(uris: Iterable<string>): void {
    for (const uri of uris) {
      this.foreign.add(uri);
      if (this.held.has(uri)) continue;
      let release: () => void = () => undefined;
      const released = new Promise<void>((done) => (release = done));
      this.held.set(uri, { released, release });
    }
  }

  holds(uri: string): boolean {
    return this.held.has(uri);
  }

  /**
   * The id of an earlier answer about the document, where the running server gave it. Servers count from the start: an id
   * of the one before could name something else now.
   */
  own(uri: string, resultId: string | undefined): string | undefined {
    return this.foreign.delete(uri) ? undefined : resultId;
  }

  /** Resolves when the document is not held (any more). */
  async released(uri: string): Promise<void> {
    await this.held.get(uri)?.released;
  }

  release(uri: string): void {
    const held = this.held.get(uri);
    this.held.delete(uri);
    held?.release();
  }

  releaseAll(): void {
    for (const uri of [...this.held.keys()]) this.release(uri);
  }
}
