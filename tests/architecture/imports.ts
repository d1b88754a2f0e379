import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import ts from 'typescript';

export interface Import {
  /** Path below `server/src` without extension: `engine/snapshot`. */
  readonly from: string;
  /** The same form for a file of ours; the name as written for a package. */
  readonly to: string;
  readonly ours: boolean;
  readonly typeOnly: boolean;
}

/** Every import of every file below `server/src`: import and export lines, `import()`, types by `import()`, `require`. */
export function allImports(root = join('server', 'src')): Import[] {
  return sourceFiles(root).flatMap((path) => {
    const from = relative(root, path).split(sep).join('/').replace(/\.ts$/, '');
    return importsOf(from, readFileSync(path, 'utf8'));
  });
}

export function sourceFiles(folder: string, extension = '.ts'): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return sourceFiles(path, extension);
      return entry.name.endsWith(extension) ? [path] : [];
    })
    .sort();
}

export function importsOf(from: string, text: string): Import[] {
  const found: Import[] = [];
  const add = (name: ts.Node | undefined, typeOnly: boolean): void => {
    if (name === undefined || !ts.isStringLiteralLike(name)) return;
    const ours = name.text.startsWith('.');
    found.push({ from, to: ours ? posix.join(dirname(from), name.text) : name.text, ours, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, onlyTypes(node.importClause));
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node))
      add(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined, true);
    else if (ts.isCallExpression(node) && loads(node.expression)) add(node.arguments[0], false);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(`${from}.ts`, text, ts.ScriptTarget.ES2022, true));
  return found;
}

function onlyTypes(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.isTypeOnly) return true;
  const names = clause.namedBindings;
  const named = names !== undefined && ts.isNamedImports(names) ? names.elements : [];
  return clause.name === undefined && named.length > 0 && named.every((n) => n.isTypeOnly);
}

function loads(callee: ts.Expression): boolean {
  return callee.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(callee) && callee.text === 'require');
}
