import { Approvals } from '../../approval/approvals';
import { noAuthors } from '../../approval/evaluator';
import { Engine } from '../../engine/engine';
import type { OpenProject, Outside } from '../outside';
import { realTimers } from '../timers';
import { ClientHost, type ClientFiles } from './clientHost';
import { folderOf, isBelow } from './uriPaths';

/** Everything outside for the server in a Worker: paths are URIs, files come through the client. */
export class WorkerOutside implements Outside {
  readonly timers = realTimers;
  readonly revisions = null;
  private roots: readonly string[] = [];
  private readonly projects = new Map<string, OpenProject>();

  constructor(private readonly files: ClientFiles & { glosses(): Promise<readonly string[]> }) {}

  setRoots(folders: readonly string[]): void {
    this.roots = folders.map((f) => f.replace(/\/$/, '')).sort((a, b) => b.length - a.length);
  }

  project(path: string): OpenProject {
    const root = this.roots.find((r) => isBelow(r, path)) ?? folderOf(path);
    const known = this.projects.get(root);
    if (known !== undefined) return known;
    const host = new ClientHost(root, this.files);
    const engine = new Engine(host);
    const made = {
      root,
      host,
      engine,
      saved: new ClientHost(root, this.files),
      approvals: new Approvals(engine, host, noAuthors),
      setText: (at: string, text: string | null) => host.setText(at, text),
    };
    this.projects.set(root, made);
    return made;
  }

  /** There is no git to ask. */
  forgetAuthors(): void {
    return;
  }

  userName(): Promise<null> {
    return Promise.resolve(null);
  }

  pathOf(uri: string): string | null {
    if (uri.startsWith('untitled:')) {
      const root = this.roots[this.roots.length - 1];
      return root === undefined ? null : `${root}/${uri.slice('untitled:'.length).split('/').pop()}`;
    }
    return uri.includes('://') ? uri : null;
  }

  uriOf(path: string): string {
    return path;
  }

  /** The client looks before it writes. */
  isLink(): boolean {
    return false;
  }

  /** The pages lie beside the program, where a Worker cannot look. */
  pageOf(): null {
    return null;
  }

  glossFiles(): Promise<readonly string[]> {
    return this.files.glosses();
  }
}
