/** Kinds of change, as LSP 3.17 numbers them (FileChangeType). */
export const fileChange = { created: 1, changed: 2, deleted: 3 } as const;

export type FileChange = (typeof fileChange)[keyof typeof fileChange];

/** Gathers changes of files that come in one go, so that the server hears of them once. */
export class FileChanges {
  private readonly changes = new Map<string, FileChange>();
  private due = false;

  constructor(
    private readonly send: (changes: readonly { readonly uri: string; readonly type: FileChange }[]) => void,
  ) {}

  add(uri: string, type: FileChange): void {
    const before = this.changes.get(uri);
    // Some programs replace a file by deleting and writing it: that is a change.
    const replaced = before === fileChange.deleted && type === fileChange.created;
    this.changes.set(uri, replaced ? fileChange.changed : type);
    if (this.due) return;
    this.due = true;
    queueMicrotask(() => {
      this.due = false;
      const changes = [...this.changes].map(([u, t]) => ({ uri: u, type: t }));
      this.changes.clear();
      this.send(changes);
    });
  }
}
