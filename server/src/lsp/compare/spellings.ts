import { basename, dirname } from 'node:path';
import { realPath, withSlashes } from '../../host/root';

/**
 * Paths as the editor spells them and as git does. A folder may be opened through a link, and on Windows the editor writes the
 * letter of a drive small: git knows neither.
 */
export class Spellings {
  private readonly root: string;
  /** The root as git spells it. */
  private readonly real: string;
  /** Of what lies outside the root, by git's spelling. */
  private readonly others = new Map<string, string>();

  constructor(
    root: string,
    private readonly top: string,
    private readonly resolved: (path: string) => string = realPath,
  ) {
    this.root = withSlashes(root);
    this.real = this.git(this.root);
  }

  /** Links inside the root are left: what they stand for depends on the revision. */
  ofGit(path: string): string {
    const at = withSlashes(path);
    const below = rest(at, this.root);
    if (below !== null) return `${this.real}${below}`;
    if (rest(at, this.top) !== null) return at;
    const real = `${this.git(dirname(at))}/${basename(at)}`;
    if (real !== at) this.others.set(real, at);
    return real;
  }

  ofEditor(path: string): string {
    const below = rest(path, this.real);
    return below === null ? (this.others.get(path) ?? path) : `${this.root}${below}`;
  }

  private git(path: string): string {
    const at = withSlashes(this.resolved(path));
    const letter = /^[A-Za-z]:/.exec(this.top)?.[0] ?? '';
    return at.slice(0, letter.length).toLowerCase() === letter.toLowerCase() ? letter + at.slice(letter.length) : at;
  }
}

/** Empty for the folder itself; null: it is not inside. */
function rest(path: string, folder: string): string | null {
  return path === folder ? '' : path.startsWith(`${folder}/`) ? path.slice(folder.length) : null;
}
