import type { FileSource } from './source';

/** A commit, as far as a history shows it. */
export interface Revision {
  readonly commit: string;
  /** Abbreviated as git does it in this repository. */
  readonly short: string;
  /** When its author made it: ISO 8601 with the author's offset. */
  readonly date: string;
  readonly author: string;
}

/** A way back through the commits of a repository, one at a time. Paths are those of the host. */
export interface Ancestry {
  readonly at: Revision;
  /** Number of parents that can be gone to. */
  readonly parents: number;
  /** It lies before what was asked for: only its files count. */
  readonly isOutside: boolean;
  /** Paths that differ between here and the nth parent; true: the parent has such a file. */
  changed(parent: number): ReadonlyMap<string, boolean>;
  /** What the path was called at the nth parent, by git's reckoning; null: it finds none. */
  renamed(parent: number, path: string): Promise<string | null>;
  back(parent: number): void;
  /** These paths here, with those that links among them lead over: a change at any of them may be one of theirs. */
  passed(paths: readonly string[]): Promise<readonly string[]>;
  /** The files as they are here, which stay so when the way goes on; `label` names them. */
  files(label: string): FileSource;
  /** Those of the nth parent. */
  parentFiles(parent: number): FileSource;
}
