import type { Unit } from '../../quantities/unit';
import { nearest } from '../nearest';
import type { Statement } from '../model';
import { quantities, type EvaluationKind } from '../vocabulary/quantities';
import { isOverride, itemOf, keywordOf, overriddenItem, type Item, type PlacedNode, type Source } from './item';
import { mergeOverride, type Overridable } from './override';
import { problem, replacing } from './problem';
import { placeOf, type Report } from './report';

/** What a name of the one flat list stands for. */
export interface Entry {
  readonly name: string;
  /** `step`, `let`, `given`, `require` …; of a part of a sum the kind of the sum. */
  readonly keyword: string;
  /** null: a broken line, a `given` alone, or a part of a sum that no statement defines. */
  readonly item: Item | null;
  readonly at: PlacedNode;
  /** The unit a `given` of this name asks for, with its line. */
  readonly given: { readonly unit: Unit; readonly at: PlacedNode } | null;
  /** The sum that alone knows this part. */
  readonly partOf: string | null;
  /** Its line is broken, or what it stands for could not be looked up. */
  readonly broken: boolean;
}

/** The names of a gloss and its method, overrides merged. `hidden`: the method could not be read. */
export class Namespace {
  readonly entries = new Map<string, Entry>();

  constructor(
    private readonly sources: readonly Source[],
    readonly hidden: boolean,
    private readonly report: Report,
  ) {
    for (const source of sources) for (const node of source.tree.statements) this.define({ node, source });
    for (const source of sources) for (const node of source.tree.statements) this.override({ node, source });
    for (const entry of [...this.entries.values()]) this.defineParts(entry);
  }

  isEvaluation(entry: Entry): boolean {
    return entry.keyword in quantities;
  }

  kindOf(entry: Entry): EvaluationKind | null {
    return this.isEvaluation(entry) ? (entry.keyword as EvaluationKind) : null;
  }

  private define(at: PlacedNode): void {
    const { node } = at;
    if (node.name === null || isOverride(at)) return;
    const keyword = keywordOf(at);
    const item = itemOf(node, at.source);
    const given = item?.statement.kind === 'given' ? { unit: item.statement.unit, at } : null;
    const entry: Entry = {
      name: node.name,
      keyword,
      item: given === null ? item : null,
      at,
      given,
      partOf: null,
      broken: node.broken,
    };
    const first = this.entries.get(node.name);
    if (first === undefined) this.entries.set(node.name, entry);
    else if (!this.giveValue(first, entry)) this.twice(first, at, node.name);
  }

  /** `let` gives a `given` its value; a method cannot do so for itself. */
  private giveValue(first: Entry, second: Entry): boolean {
    const [given, value] = first.keyword === 'given' ? [first, second] : [second, first];
    if (given.keyword !== 'given' || value.keyword !== 'let' || given.item !== null) return false;
    if (value.at.source.file === 'method' || value.at.source.tree.role === 'method') return false;
    this.entries.set(first.name, { ...value, given: given.given });
    return true;
  }

  private twice(first: Entry, at: PlacedNode, name: string): void {
    const kind = keywordOf(at);
    const fromMethod = first.at.source.file === 'method' && at.source.file === 'gloss' && kind === first.keyword;
    const message = fromMethod
      ? `the method defines \`${name}\` already; \`override\` changes its statement`
      : `\`${name}\` is defined already; the first definition stands and this one is not computed`;
    const fixable = fromMethod && (this.isEvaluation(first) || kind === 'let');
    this.report.add(
      { nodes: [at] },
      problem('name-twice', 'name', message, [
        fixable ? replacing('keyword', `override ${kind}`, 'Change the statement of the method') : null,
      ]),
      { related: [{ at: placeOf({ nodes: [first.at] }, 'name'), message: 'The first definition.' }] },
    );
  }

  private override(at: PlacedNode): void {
    const { node } = at;
    if (node.name === null || !isOverride(at)) return;
    const base = this.entries.get(node.name);
    if (base === undefined || base.at.source.file !== 'method') {
      this.overrideOfNothing(at, node.name, base);
      return;
    }
    if (base.item === null) return;
    if (base.item.overridden !== null || base.item.nodes.length > 1) {
      this.report.add(
        { nodes: [at] },
        problem('name-twice', 'name', `\`${node.name}\` is overridden already; the first override stands`),
      );
      return;
    }
    // What a broken override was to change must not be computed as if it were not there.
    if (node.statement === null) {
      this.entries.set(node.name, { ...base, item: null, broken: true });
      return;
    }
    const merged =
      isOverridable(base.item.statement) && isOverridable(node.statement)
        ? mergeOverride(base.item.statement, node.statement)
        : null;
    if (merged === null) {
      this.report.add(
        { nodes: [at] },
        problem(
          'override-of-nothing',
          'name',
          `\`${node.name}\` of the method is a \`${base.keyword}\`, not a \`${keywordOf(at)}\``,
          [replacing('keyword', `override ${base.keyword}`)],
        ),
      );
      return;
    }
    this.entries.set(node.name, { ...base, item: overriddenItem(base.item, at, merged) });
  }

  private overrideOfNothing(at: PlacedNode, name: string, own: Entry | undefined): void {
    if (own === undefined) {
      // Its name stays defined, failed.
      const entry = { name, keyword: keywordOf(at), item: null, at, given: null, partOf: null, broken: true };
      this.entries.set(name, entry);
    }
    if (this.hidden || at.node.broken) return;
    const sameKind = [...this.entries.values()].filter(
      (entry) => entry.at.source.file === 'method' && entry.keyword === keywordOf(at),
    );
    const meant = nearest(
      name,
      sameKind.map((entry) => entry.name),
      2,
    );
    const message =
      this.sources.length < 2
        ? 'there is no method whose statement could be overridden'
        : own === undefined
          ? `the method has no \`${keywordOf(at)}\` called \`${name}\``
          : `\`${name}\` is no statement of the method; change it where it stands`;
    this.report.add(
      { nodes: [at] },
      problem(
        'override-of-nothing',
        'name',
        message,
        meant.map((text) => replacing('name', text)),
      ),
    );
  }

  /** A part that is no statement is defined by the sum, which then needs a place of its own. */
  private defineParts(entry: Entry): void {
    const { statement = null } = entry.item ?? {};
    if (statement !== null && (statement.kind === 'step' || statement.kind === 'peak') && statement.sumOf !== null) {
      if (statement.place.window === null && statement.place.segment === null) return;
      for (const part of statement.sumOf) this.definePart(part, entry, false);
      return;
    }
    if (!entry.broken) return;
    // Of a broken sum the parts that were read stay defined.
    for (let i = 0; ; i++) {
      const span = entry.at.node.tokens.get(`sum/${i}`);
      if (span === undefined) return;
      this.definePart(entry.at.source.tree.text.slice(span.start, span.end).normalize('NFC'), entry, true);
    }
  }

  private definePart(name: string, sum: Entry, broken: boolean): void {
    if (this.entries.has(name)) return;
    const { keyword, at } = sum;
    this.entries.set(name, { name, keyword, item: null, at, given: null, partOf: sum.name, broken });
  }
}

function isOverridable(statement: Statement): statement is Overridable {
  return statement.kind === 'let' || statement.kind in quantities;
}
