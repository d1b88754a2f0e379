import type { Host } from '../base/host';
import type { Engine } from '../engine/engine';
import type { Snapshot } from '../engine/snapshot';
import type { Program } from '../language/program';
import type { Tree } from '../language/tree';
import type { TextPositions } from './positions';
import type { Settings } from './settings';

/** A text of the language, open in the client or read from its file. Plain data of one version. */
export interface GlossText {
  readonly uri: string;
  readonly path: string;
  /** null: not open, read from its file. */
  readonly version: number | null;
  readonly text: string;
  readonly tree: Tree;
  readonly positions: TextPositions;
}

/** An open gloss with its names resolved: what a feature needs that does not wait for numbers. */
export interface GlossDocument extends GlossText {
  readonly version: number;
  /** The method it imports; null: none, or it cannot be read (yet). */
  readonly method: GlossText | null;
  readonly program: Program;
  readonly project: Project;
}

/** One root folder: what reads its files and evaluates its glosses. */
export interface Project {
  readonly engine: Engine;
  readonly host: Host;
}

/** The last evaluation of a document that was finished. */
export interface Results {
  readonly snapshot: Snapshot;
  /** Version of the document it belongs to. */
  readonly version: number;
  /** Counts the finished evaluations of the document. */
  readonly revision: number;
  /** Texts the snapshot's positions belong to. */
  readonly gloss: GlossText;
  readonly method: GlossText | null;
}

/** What the features see of everything outside. Documents and files that are not there come as null or empty. */
export interface Workspace {
  settings(uri: string): Settings;
  /** An open gloss. Waits at most for the text of its method, never for numbers. */
  document(uri: string): Promise<GlossDocument | null>;
  /** The last finished results, also of an older version of the text. */
  results(uri: string): Results | null;
  /** Results of the present version, waiting for them; null where the document is closed or changed meanwhile. */
  currentResults(uri: string): Promise<Results | null>;
  /** Every gloss of the workspace: open ones and those in its folders. */
  glosses(): Promise<readonly GlossText[]>;
  /** A gloss by its path, open or from its file. */
  glossAt(path: string): Promise<GlossText | null>;
  uriOf(path: string): string;
  /** Address of the page of a finding, shipped with the program; null where there is none to open. */
  pageOf(code: string): string | null;
  pathOf(uri: string): string | null;
  /** What reads the files beside a gloss; null where its project is not known. */
  hostOf(path: string): Host | null;
  /** Content of a file as results were last computed from it (`HostFile.identity`); null: never. */
  identitySeen(path: string): string | null;
}

/** True where the results are those of the text as it stands. */
export function isCurrent(document: GlossDocument, results: Results | null): boolean {
  return results !== null && results.version === document.version;
}
