import type { Span } from '../base/span';
import type { Anchor, Finding, FixEdit, GlossRole } from '../findings/finding';
import type { StatementNode, Tree } from '../language/tree';
import type { PlacedFinding, PlacedFix } from './snapshot';

/** Joins findings that name statements and tokens with the text as it stands in this revision. */
export class Positions {
  private readonly nodes = new Map<string, { readonly node: StatementNode; readonly file: GlossRole }>();

  constructor(
    private readonly gloss: Tree,
    private readonly method: Tree | null,
  ) {
    for (const node of method?.statements ?? []) this.nodes.set(node.id, { node, file: 'method' });
    // The gloss's own statement of the same id is the one its reader means.
    for (const node of gloss.statements) this.nodes.set(node.id, { node, file: 'gloss' });
  }

  place(finding: Finding, allowed: string | null): PlacedFinding {
    const at = this.locate(finding.at);
    return {
      code: finding.code,
      severity: finding.severity,
      file: at.file,
      span: at.span,
      message: finding.message,
      related: finding.related.map((r) => ({ ...this.locate(r.at), message: r.message })),
      fixes: finding.fixes.map((fix) => this.placeFix(fix)).filter((fix) => fix.edits.length > 0),
      allowed,
    };
  }

  locate(anchor: Anchor): { readonly file: GlossRole; readonly span: Span } {
    if ('span' in anchor) return { file: anchor.file, span: anchor.span };
    const found = this.nodes.get(anchor.statement);
    if (found === undefined) return { file: 'gloss', span: firstStatement(this.gloss) };
    const tokens = found.node.tokens;
    return { file: found.file, span: tokens.get(anchor.token) ?? tokens.get('head') ?? found.node.span };
  }

  private placeFix(fix: Finding['fixes'][number]): PlacedFix {
    return { title: fix.title, safe: fix.safe, edits: fix.edits.flatMap((edit) => this.placeEdit(edit)) };
  }

  private placeEdit(edit: FixEdit): PlacedFix['edits'][number][] {
    switch (edit.edit) {
      case 'replace': {
        const { file, span } = this.locate(edit.at);
        return [{ file, span, text: edit.text }];
      }
      case 'insert-after': {
        const { file, span } = this.locate(edit.at);
        return [{ file, span: { start: span.end, end: span.end }, text: edit.text }];
      }
      case 'insert-clause': {
        const found = this.nodes.get(edit.statement);
        if (found === undefined) return [];
        const text = this.textOf(found.file);
        const at = lineEnd(text, found.node.span.end);
        return [{ file: found.file, span: { start: at, end: at }, text: `${newline(text)}  ${edit.text}` }];
      }
      case 'insert-statement': {
        const found = edit.after === null ? undefined : this.nodes.get(edit.after);
        const file = found?.file ?? 'gloss';
        const text = this.textOf(file);
        const eol = newline(text);
        const body = edit.text.split('\n').join(eol);
        if (found === undefined) {
          const gap = text === '' || text.endsWith('\n') || text.endsWith('\r') ? '' : eol;
          return [{ file, span: { start: text.length, end: text.length }, text: `${gap}${body}${eol}` }];
        }
        const at = lineEnd(text, found.node.span.end);
        return [{ file, span: { start: at, end: at }, text: `${eol}${body}` }];
      }
      case 'delete-statement': {
        const found = this.nodes.get(edit.statement);
        if (found === undefined) return [];
        const text = this.textOf(found.file);
        const end = lineEnd(text, found.node.span.end);
        return [{ file: found.file, span: { start: found.node.span.start, end: afterBreak(text, end) }, text: '' }];
      }
    }
  }

  private textOf(file: GlossRole): string {
    return (file === 'method' ? this.method : this.gloss)?.text ?? '';
  }
}

function firstStatement(tree: Tree): Span {
  const first = tree.statements[0];
  return first?.tokens.get('head') ?? first?.span ?? { start: 0, end: Math.min(1, tree.text.length) };
}

function lineEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
}

function afterBreak(text: string, end: number): number {
  if (text[end] === '\r' && text[end + 1] === '\n') return end + 2;
  return Math.min(end + 1, text.length);
}

function newline(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}
