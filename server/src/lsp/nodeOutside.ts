import { dirname, join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Engine } from '../engine/engine';
import { glossFilesBelow } from '../host/glossFiles';
import { NodeHost } from '../host/nodeHost';
import { kindOf, withSlashes } from '../host/root';
import type { OpenProject, Outside } from './outside';
import { RevisionsBeside } from './revisionsBeside';
import { realTimers } from './timers';

/** The machine's files for the server that runs under Node. */
export class NodeOutside implements Outside {
  readonly timers = realTimers;
  readonly revisions = new RevisionsBeside(realTimers);
  private roots: readonly string[] = [];
  private readonly projects = new Map<string, OpenProject>();

  setRoots(folders: readonly string[]): void {
    // The longest first: of nested roots the inner one holds its files.
    this.roots = folders
      .map((uri) => this.pathOf(uri))
      .filter((path) => path !== null)
      .sort((a, b) => b.length - a.length);
  }

  project(path: string): OpenProject {
    const root = this.roots.find((r) => path === r || path.startsWith(r.endsWith('/') ? r : `${r}/`)) ?? dirname(path);
    const known = this.projects.get(root);
    if (known !== undefined) return known;
    const host = new NodeHost(root);
    const made: OpenProject = {
      root,
      host,
      engine: new Engine(host),
      setText: (at, text) => host.setText(at, text),
    };
    this.projects.set(root, made);
    return made;
  }

  pathOf(uri: string): string | null {
    if (uri.startsWith('file:')) {
      try {
        return withSlashes(fileURLToPath(uri));
      } catch {
        return null;
      }
    }
    // A new text without a file stands in the first folder, so that it can name the files there.
    if (uri.startsWith('untitled:') && this.roots.length > 0) {
      return `${this.roots[this.roots.length - 1]}/${uri.slice('untitled:'.length).split('/').pop()}`;
    }
    return null;
  }

  uriOf(path: string): string {
    return pathToFileURL(sep === '\\' ? path.replaceAll('/', '\\') : path).href;
  }

  pageOf(code: string): string | null {
    const page = join(__dirname, 'docs', `finding-${code}.md`);
    return kindOf(page) === 'file' ? pathToFileURL(page).href : null;
  }

  glossFiles(): Promise<readonly string[]> {
    return glossFilesBelow(this.roots);
  }
}
