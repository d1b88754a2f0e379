import { dirname, join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Approvals } from '../approval/approvals';
import { Engine } from '../engine/engine';
import { glossFilesBelow } from '../host/glossFiles';
import { userName } from '../host/git';
import { LastAuthors } from '../host/lastAuthor';
import { NodeHost } from '../host/nodeHost';
import { isLink, kindOf, withSlashes } from '../host/root';
import type { OpenProject, Outside } from './outside';
import { RevisionsBeside } from './revisionsBeside';
import { realTimers } from './timers';

/** The machine's files for the server that runs under Node. */
export class NodeOutside implements Outside {
  readonly timers = realTimers;
  readonly revisions = new RevisionsBeside(realTimers);
  /** The longest first: of nested roots the inner one holds its files. */
  private roots: readonly string[] = [];
  /** Where new texts without a file stand, so that they can name the files there; without any, where no file is. */
  private newTexts = '/untitled';
  private readonly authors = new LastAuthors();
  private readonly projects = new Map<string, OpenProject>();

  setRoots(folders: readonly string[]): void {
    const paths = folders
      .map((uri) => this.pathOf(uri)?.replace(/(.)\/$/, '$1') ?? null)
      .filter((path) => path !== null);
    this.newTexts = paths[0] ?? '/untitled';
    this.roots = [...paths].sort((a, b) => b.length - a.length);
  }

  project(path: string): OpenProject {
    const root = this.roots.find((r) => path === r || path.startsWith(r.endsWith('/') ? r : `${r}/`)) ?? dirname(path);
    const known = this.projects.get(root);
    if (known !== undefined) return known;
    const host = new NodeHost(root);
    const engine = new Engine(host);
    const made: OpenProject = {
      root,
      host,
      engine,
      saved: new NodeHost(root),
      approvals: new Approvals(engine, host, this.authors),
      setText: (at, text) => host.setText(at, text),
    };
    this.projects.set(root, made);
    return made;
  }

  forgetAuthors(): void {
    this.authors.forget();
  }

  userName(path: string): Promise<string | null> {
    return userName(dirname(path));
  }

  pathOf(uri: string): string | null {
    if (uri.startsWith('file:')) {
      try {
        return withSlashes(fileURLToPath(uri));
      } catch {
        return null;
      }
    }
    if (!uri.startsWith('untitled:')) return null;
    const named = decoded(uri.slice('untitled:'.length));
    // Where the editor knows already what file it will become, that is its place.
    return named === null
      ? null
      : named.startsWith('/')
        ? this.pathOf(`file://${encodeURI(named)}`)
        : `${this.newTexts}/${named}`;
  }

  uriOf(path: string): string {
    return pathToFileURL(sep === '\\' ? path.replaceAll('/', '\\') : path).href;
  }

  isLink(path: string): boolean {
    return isLink(path);
  }

  pageOf(code: string): string | null {
    const page = join(__dirname, 'docs', `finding-${code}.md`);
    return kindOf(page) === 'file' ? pathToFileURL(page).href : null;
  }

  glossFiles(): Promise<readonly string[]> {
    return glossFilesBelow(this.roots);
  }
}

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}
