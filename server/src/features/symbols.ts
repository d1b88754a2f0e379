import { SymbolKind, type DocumentSymbol, type SymbolInformation } from 'vscode-languageserver-types';
import type { StatementNode, Tree } from '../language/tree';
import { singleBlanks } from '../language/writing/singleBlanks';
import { clausesOf } from './clauses';
import { headlines } from './headline';
import type { GlossDocument, Workspace } from './workspace';

/** By the keyword of the statement. */
const kinds: Readonly<Record<string, SymbolKind>> = {
  run: SymbolKind.File,
  join: SymbolKind.File,
  blank: SymbolKind.File,
  method: SymbolKind.Module,
  columns: SymbolKind.Struct,
  reading: SymbolKind.Struct,
  programme: SymbolKind.Array,
  given: SymbolKind.TypeParameter,
  step: SymbolKind.Event,
  peak: SymbolKind.Event,
  glass: SymbolKind.Event,
  onset: SymbolKind.Event,
  crossing: SymbolKind.Event,
  residue: SymbolKind.Number,
  let: SymbolKind.Variable,
  require: SymbolKind.Boolean,
  note: SymbolKind.String,
  allow: SymbolKind.Key,
  rule: SymbolKind.Constant,
  mask: SymbolKind.Operator,
};

/** What an outline calls a statement. */
export interface StatementTitle {
  readonly name: string;
  /** Its words without the name. */
  readonly detail: string;
  readonly kind: SymbolKind;
}

/** The statements of a text with their clauses; the detail is what the statement came to, else what it says. */
export function documentSymbols(workspace: Workspace, document: GlossDocument): DocumentSymbol[] {
  const { tree, positions } = document;
  const came = headlines(document, workspace.results(document.uri));
  return tree.statements.map((node) => {
    const title = titleOf(tree, node);
    const selection = node.tokens.get('name') ?? node.tokens.get('file') ?? node.tokens.get('head') ?? node.span;
    const value = came(node);
    return {
      name: title.name,
      detail: value === '' ? title.detail : `${keywordOf(tree, node)}: ${value}`,
      kind: title.kind,
      range: positions.range(node.span),
      selectionRange: positions.range(selection),
      children: clausesOf(tree, node).map((clause) => ({
        name: clause.word,
        detail: clause.value === null ? '' : singleBlanks(tree.text.slice(clause.value.start, clause.value.end)),
        kind: SymbolKind.Property,
        range: positions.range(clause.span),
        selectionRange: positions.range(clause.span),
      })),
    };
  });
}

/** The same without their tree, for clients that know no other. */
export function flatSymbols(document: GlossDocument, symbols: readonly DocumentSymbol[]): SymbolInformation[] {
  return symbols.map(({ name, kind, range }) => ({ name, kind, location: { uri: document.uri, range } }));
}

export function titleOf(tree: Tree, node: StatementNode): StatementTitle {
  const head = node.tokens.get('head') ?? node.span;
  const words = singleBlanks(tree.text.slice(head.start, head.end));
  const keyword = keywordOf(tree, node);
  const kind = kinds[keyword.replace(/^override /, '')] ?? SymbolKind.Null;
  const named = node.tokens.get('name') ?? node.tokens.get('file') ?? node.tokens.get('title');
  const name = named === undefined ? '' : tree.text.slice(named.start, named.end).replace(/^"|"$/g, '');
  // Without a name of its own a statement is called by its words.
  if (name.trim() === '') return { name: words === '' ? '?' : words, detail: '', kind };
  return { name, detail: singleBlanks(words.replace(tree.text.slice(named!.start, named!.end), '')), kind };
}

function keywordOf(tree: Tree, node: StatementNode): string {
  const span = node.tokens.get('keyword');
  return span === undefined ? '' : singleBlanks(tree.text.slice(span.start, span.end));
}
