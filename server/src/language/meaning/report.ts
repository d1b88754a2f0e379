import type { Anchor, Finding, FixEdit, RelatedPlace } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { sentence } from '../sentence';
import { nodeWith, type Item } from './item';
import type { Problem, ProblemFix } from './problem';

/** Codes about a line whose name belongs to another. */
const ofTheLine: ReadonlySet<string> = new Set(['name-twice', 'override-of-nothing']);

/** The findings about statements, in the order of the texts. */
export class Report {
  private readonly entries: { readonly finding: Finding; readonly method: boolean; readonly offset: number }[] = [];

  add(
    item: Pick<Item, 'nodes'>,
    found: Problem,
    more: {
      readonly edits?: readonly (readonly [title: string, edit: FixEdit])[];
      readonly related?: readonly RelatedPlace[];
    } = {},
  ): void {
    const { node, source } = nodeWith(item, found.token);
    const span = node.tokens.get(found.token) ?? node.tokens.get('head') ?? node.span;
    const fixes = [
      ...found.fixes.map((fix) => ({ title: fix.title, safe: false, edits: [this.edit(item, fix)] })),
      ...(more.edits ?? []).map(([title, edit]) => ({ title, safe: false, edits: [edit] })),
    ];
    const at: Anchor =
      found.within === undefined
        ? { statement: node.id, token: found.token }
        : {
            file: source.file,
            span: {
              start: span.start + found.within.offset,
              end: span.start + found.within.offset + found.within.length,
            },
          };
    const finding = makeFinding(found.code, at, sentence(found.message), {
      fixes,
      related: more.related ?? [],
      // A finding about nothing in particular would count for every value; one about a second definition is not about
      // the first.
      about: node.name === null || ofTheLine.has(found.code) ? node.id : node.name,
    });
    this.entries.push({ finding, method: source.file === 'method', offset: span.start });
  }

  private edit(item: Pick<Item, 'nodes'>, fix: ProblemFix): FixEdit {
    const at = { statement: nodeWith(item, fix.token).node.id, token: fix.token };
    return { edit: fix.edit, at, text: fix.text };
  }

  findings(): readonly Finding[] {
    return [...this.entries]
      .sort((a, b) => Number(a.method) - Number(b.method) || a.offset - b.offset)
      .map(({ finding }) => finding);
  }
}

export function placeOf(item: Pick<Item, 'nodes'>, token: string): Anchor {
  return { statement: nodeWith(item, token).node.id, token };
}
