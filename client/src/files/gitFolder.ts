/** What is needed of the files: null where there is none. */
export interface Looked {
  readonly isFolder: (path: string) => Promise<boolean | null>;
  readonly text: (path: string) => Promise<string>;
}

/**
 * Where the repository that holds a folder keeps its own files, as absolute path with slashes: beside the folder or above
 * it; for a second working tree where its `.git` file says (gitrepository-layout(5)), `..` in it kept. null: none holds it.
 */
export async function gitFolder(folder: string, look: Looked): Promise<string | null> {
  for (let at = folder; ; at = at.slice(0, at.lastIndexOf('/'))) {
    const own = `${at}/.git`;
    const isFolder = await look.isFolder(own);
    if (isFolder === true) return own;
    if (isFolder === false) {
      const named = /^gitdir: (.+?)\r?\n?$/.exec(await look.text(own))?.[1].replaceAll('\\', '/');
      if (named === undefined) return null;
      return /^([a-zA-Z]:)?\//.test(named) ? named.replace(/^(?=[a-zA-Z]:)/, '/') : `${at}/${named}`;
    }
    if (!at.includes('/')) return null;
  }
}
