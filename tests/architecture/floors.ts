/** One folder of `server/src`: where it stands and what it may know. DEVELOPERS.md shows the same table. */
export interface Folder {
  readonly name: string;
  /** It imports from lower floors only; folders on one floor do not import each other. */
  readonly floor: number;
  /** Packages and Node modules, by name or `node:` for all of Node's. */
  readonly packages: readonly string[];
  /** Compiles without Node and DOM types. */
  readonly pure: boolean;
  /** The only lower folders it may import, where it must know less than its floor allows; null: all lower ones. */
  readonly only: readonly string[] | null;
  /** Files whose types it may take although their floor is not lower: erased by the compiler, no code comes with them. */
  readonly typesOf: readonly string[];
}

const pure = { packages: [], pure: true, only: null, typesOf: [] } as const;

export const folders: readonly Folder[] = [
  { ...pure, name: 'base', floor: 0 },
  { ...pure, name: 'protocol', floor: 0, typesOf: ['base/span'] },
  { ...pure, name: 'quantities', floor: 1 },
  { ...pure, name: 'findings', floor: 1 },
  { ...pure, name: 'reference', floor: 1 },
  { ...pure, name: 'language', floor: 2 },
  // Numbers in, numbers out: no units, no text, no statements.
  { ...pure, name: 'analysis', floor: 2, only: ['base'] },
  { ...pure, name: 'runs', floor: 3 },
  { ...pure, name: 'evaluation', floor: 4 },
  { ...pure, name: 'engine', floor: 5 },
  // A snapshot is what the engine gives and presentation shows: they share its type and nothing else.
  { ...pure, name: 'presentation', floor: 5, typesOf: ['engine/snapshot'] },
  { ...pure, name: 'features', floor: 6, packages: ['vscode-languageserver-types'] },
  { ...pure, name: 'revisions', floor: 6 },
  { ...pure, name: 'approval', floor: 6 },
  { name: 'host', floor: 6, packages: ['node:', 'csv-parse'], pure: false, only: ['base'], typesOf: [] },
  { name: 'lsp', floor: 7, packages: ['node:', 'vscode-languageserver'], pure: false, only: null, typesOf: [] },
  { name: 'cli', floor: 7, packages: ['node:', 'tinyglobby'], pure: false, only: null, typesOf: [] },
];
