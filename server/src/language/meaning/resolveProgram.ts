import type { EvaluationStatement, LetStatement, RequireStatement, Statement } from '../model';
import type { Effective, Program } from '../program';
import type { Tree } from '../tree';
import { allowProblems, codeProblems } from './acceptance';
import { amountProblems } from './statementProblems';
import { Checker, possibleAllows, type Computed } from './checker';
import { remarkConfusingNames } from './confusingNames';
import { DataStatements } from './dataStatements';
import { effective } from './effective';
import { isOverride, itemOf, type Item, type Source } from './item';
import { Namespace } from './namespace';
import { cycles, inOrder } from './order';
import { problem, type Problem } from './problem';
import { mentioned } from './references';
import { Report } from './report';

/**
 * Merges a gloss with its method, resolves every name, and checks kinds, units and bases before any data is read
 * (language.md 3 and 4). `method`: the tree of the method the gloss imports; null where it imports none, or where that
 * could not be read, and then nothing is said about names that may come from it. A method gloss can be given alone.
 * The order of the texts changes nothing but which of two equal names is the first.
 */
export function resolveProgram(gloss: Tree, method: Tree | null): Program {
  return new Resolution(gloss, method).program();
}

class Resolution {
  private readonly report = new Report();
  private readonly sources: readonly Source[];
  private readonly namespace: Namespace;
  private readonly data: DataStatements;
  private readonly checker: Checker;

  constructor(gloss: Tree, method: Tree | null) {
    const own: Source = { tree: gloss, file: 'gloss' };
    const use = gloss.statements.find((node) => node.id.startsWith('method "') || node.id === 'method');
    const taken = method !== null && this.isMethod(own, use, method) ? method : null;
    this.sources = taken === null ? [own] : [{ tree: taken, file: 'method' }, own];
    const hidden = taken === null && use !== undefined;
    this.namespace = new Namespace(this.sources, hidden, this.report);
    this.data = new DataStatements(this.sources, this.report);
    const givenStand = gloss.role === 'method';
    this.checker = new Checker(
      this.namespace,
      this.report,
      (statement) => this.data.isBrokenFor(statement),
      givenStand,
    );
    if (!givenStand) this.missingGivens(own, use);
    remarkConfusingNames(this.namespace, this.report);
  }

  private isMethod(own: Source, use: Tree['statements'][number] | undefined, method: Tree): boolean {
    if (method.role === 'method' || use === undefined) return true;
    this.report.add(
      { nodes: [{ node: use, source: own }] },
      problem('role-missing', 'file', 'the file named here is no method: its first statement is not `method "TITLE"`'),
    );
    return false;
  }

  /** What the method asks for and the run does not say. */
  private missingGivens(own: Source, use: Tree['statements'][number] | undefined): void {
    for (const entry of this.namespace.entries.values()) {
      if (entry.given === null || entry.item !== null || entry.broken) continue;
      const here = entry.given.at.source.file === 'gloss' || use === undefined;
      const { unit } = entry.given;
      const asked = `\`let ${entry.name} = …\`, in ${unit.text === '1' ? 'a plain number' : unit.text}`;
      const nodes = [here ? entry.given.at : { node: use, source: own }] as const;
      this.report.add(
        { nodes },
        problem(
          'given-missing',
          here ? 'name' : 'file',
          here
            ? `no line gives it a value: ${asked}`
            : `the method asks for a value this gloss does not give: ${asked}`,
        ),
      );
    }
  }

  program(): Program {
    const { data } = this;
    const order = this.order();
    const requires = this.all('require').map((item) => this.requirement(item));
    return {
      run: data.run,
      joins: data.of('join'),
      columns: data.of('columns'),
      readings: data.of('reading'),
      blanks: data.of('blank'),
      programme: data.programme,
      masks: data.of('mask'),
      rules: this.rules(),
      allows: this.allows(),
      requires,
      order,
      findings: this.findings(),
    };
  }

  private findings(): Program['findings'] {
    for (const item of this.all('note')) this.about(item, item.statement.on);
    return this.report.findings();
  }

  private order(): Program['order'] {
    const items = new Map<string, Item<Computed>>();
    for (const [name, { item }] of this.namespace.entries) {
      if (item !== null && isComputed(item)) items.set(name, item);
    }
    const needs = new Map<string, readonly string[]>();
    for (const [name, item] of items)
      needs.set(
        name,
        this.checker.reads(item.statement).map((reference) => reference.name),
      );
    const cyclic = cycles(needs);
    return inOrder(needs, cyclic).map((name) => {
      const item = items.get(name)!;
      const { failed } = this.checker.check(item, cyclic.get(name) ?? null);
      const read = [...new Set(needs.get(name)!)].filter((other) => items.has(other));
      return effective(item, read, failed, possibleAllows(item, this.report));
    });
  }

  private requirement(item: Item<RequireStatement>): Effective<RequireStatement> {
    const failed = this.checker.checkRequirement(item);
    this.about(item, item.statement.on ?? null);
    const read = [...new Set(this.checker.reads(item.statement).map(({ name }) => name))];
    const needs = read.filter((name) => (this.namespace.entries.get(name)?.item ?? null) !== null);
    return effective(item, needs, failed, possibleAllows(item, this.report));
  }

  /** Limits in effect: those of the run before those of its method. A code that names nothing is no rule. */
  private rules(): Program['rules'] {
    const taken = new Map<string, Effective<Extract<Statement, { kind: 'rule' }>>>();
    for (const item of [...this.all('rule')].reverse()) {
      const { statement, nodes } = item;
      const problems: Problem[] = [...codeProblems(statement.code, 'code'), ...amountProblems(statement)];
      for (const found of problems) this.report.add(item, found);
      const before = taken.get(statement.code);
      if (problems.length === 0 && (before === undefined || before.file === nodes[0].source.file)) {
        if (before !== undefined) this.limitTwice(before.id);
        taken.set(statement.code, effective(item, [], null, possibleAllows(item, this.report)));
      }
    }
    return [...taken.values()].reverse();
  }

  private limitTwice(id: string): void {
    for (const source of this.sources) {
      const node = source.tree.statements.find((candidate) => candidate.id === id);
      if (node === undefined) continue;
      const found = problem('name-twice', 'code', 'this limit is set already; the first line stands');
      this.report.add({ nodes: [{ node, source }] }, found);
    }
  }

  private allows(): Program['allows'] {
    return this.all('allow').flatMap((item) => {
      const { statement } = item;
      const problems = [...allowProblems(statement.code, 'code'), ...this.aboutProblems(item, statement.on)];
      for (const found of problems) this.report.add(item, found);
      return problems.length > 0 ? [] : [effective(item, [], null, possibleAllows(item, this.report))];
    });
  }

  private about(item: Item, on: string | null): void {
    for (const found of this.aboutProblems(item, on)) this.report.add(item, found);
  }

  private aboutProblems(item: Item, on: string | null): readonly Problem[] {
    if (on === null) return [];
    const token = item.nodes[0].node.tokens.has('on.name') ? 'on.name' : 'on';
    return mentioned(on, token, this.namespace, () => true, 'the name of a statement');
  }

  /** Statements of a kind from both texts, the method's first; second definitions of a name are left out. */
  private all<K extends Statement['kind']>(kind: K): readonly Item<Extract<Statement, { kind: K }>>[] {
    return this.sources.flatMap((source) =>
      source.tree.statements.flatMap((node) => {
        const placed = { node, source };
        if (isOverride(placed)) return [];
        if (node.name !== null && this.namespace.entries.get(node.name)?.at.node !== node) return [];
        const item = itemOf(node, source);
        return item !== null && isKind(item, kind) ? [item] : [];
      }),
    );
  }
}

function isKind<K extends Statement['kind']>(item: Item, kind: K): item is Item<Extract<Statement, { kind: K }>> {
  return item.statement.kind === kind;
}

function isComputed(item: Item): item is Item<EvaluationStatement | LetStatement> {
  const { kind } = item.statement;
  return kind === 'let' || ['step', 'peak', 'glass', 'onset', 'crossing', 'residue'].includes(kind);
}
