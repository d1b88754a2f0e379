import type { Approvals } from '../approval/approvals';
import type { Host } from '../base/host';
import type { Project } from '../features/workspace';
import type { RevisionsBeside } from './revisionsBeside';
import type { Timers } from './timers';

/** A project whose host lets an open text stand for its file. */
export interface OpenProject extends Project {
  readonly root: string;
  readonly approvals: Approvals;
  /** The same files as they are saved, whatever text is open. */
  readonly saved: Host;
  setText(path: string, text: string | null): void;
}

/** Everything the server needs from the machine or the client beyond the protocol. Node and Worker each have one. */
export interface Outside {
  readonly timers: Timers;
  /** The project a path belongs to: the longest root that holds it; outside every root, its own folder. */
  project(path: string): OpenProject;
  /** Files changed: who changed them last is asked again where it is asked. */
  forgetAuthors(): void;
  /** Who works here, as version control knows them; null: it does not tell. */
  userName(path: string): Promise<string | null>;
  /** Root folders come and go with the workspace folders of the client, as URIs. */
  setRoots(folders: readonly string[]): void;
  /** null for what is no file: such a document has text features only. */
  pathOf(uri: string): string | null;
  uriOf(path: string): string;
  /** A link instead of a file: what is written to it lands elsewhere. False where only the client can tell. */
  isLink(path: string): boolean;
  /** Address of the page of a finding. */
  pageOf(code: string): string | null;
  /** Paths of the glosses below the roots. */
  glossFiles(): Promise<readonly string[]>;
  /** Glosses at other revisions; null where there is no git program to ask. */
  readonly revisions: RevisionsBeside | null;
}
