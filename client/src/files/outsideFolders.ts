/** Folders of open glosses that no workspace folder holds: the editor watches nothing there by itself. */
export class OutsideFolders<W extends { dispose(): void }> {
  private readonly watched = new Map<string, W>();

  constructor(private readonly watch: (folder: string) => W) {}

  /** @param folders the folders to watch from now on. */
  set(folders: ReadonlySet<string>): void {
    for (const [folder, watcher] of this.watched) {
      if (folders.has(folder)) continue;
      watcher.dispose();
      this.watched.delete(folder);
    }
    for (const folder of folders) {
      if (!this.watched.has(folder)) this.watched.set(folder, this.watch(folder));
    }
  }

  dispose(): void {
    this.set(new Set());
  }
}
