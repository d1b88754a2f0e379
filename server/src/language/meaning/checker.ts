import { basisKey } from '../vocabulary/bases';
import type { EvaluationStatement, Expression, LetStatement, RequireStatement, Statement } from '../model';
import { amountProblems, stretchOf } from './statementProblems';
import { allowProblems } from './acceptance';
import { commonType, isProblem } from './compatible';
import { inferType } from './inferType';
import { unreadCode, type Item } from './item';
import type { Entry, Namespace } from './namespace';
import { inserting, problem, replacing, type Problem } from './problem';
import { evaluationReferences, namesIn, referenceProblems, type Reference } from './references';
import { requirementProblems } from './requirementProblems';
import type { Report } from './report';
import type { NameMeaning, Scope } from './scope';
import { canShow, typeOfUnit, typeWords, type ValueType } from './valueType';

export type Computed = EvaluationStatement | LetStatement;

/** What the check of one statement came to. */
export interface Checked {
  /** Code of its own finding, `dependency` where it reads what failed, else null. */
  readonly failed: string | null;
  /** Of a `let`. */
  readonly type: ValueType | null;
}

/** Checks statements one by one, each after what it reads. */
export class Checker implements Scope {
  private readonly checked = new Map<string, Checked>();

  constructor(
    private readonly namespace: Namespace,
    private readonly report: Report,
    /** Whether data that this kind of statement rests on cannot be read as written. */
    private readonly restsOnBroken: (statement: Computed) => boolean,
    /** Whether a `given` without `let` has a value all the same: in a method looked at alone. */
    private readonly givenStand: boolean,
  ) {}

  names(): Iterable<string> {
    return [...this.namespace.entries.values()]
      .filter((entry) => entry.keyword !== 'require')
      .map((entry) => entry.name);
  }

  lookup(name: string): NameMeaning | null {
    const entry = this.namespace.entries.get(name);
    if (entry === undefined) return this.namespace.hidden ? { means: 'unknown' } : null;
    if (entry.keyword === 'require') return { means: 'requirement' };
    if (entry.broken) return { means: 'unknown' };
    const kind = this.namespace.kindOf(entry);
    if (kind !== null) return this.evaluation(entry, kind);
    if (entry.item === null) return this.given(entry);
    return { means: 'value', type: this.checked.get(name)?.type ?? null };
  }

  private given(entry: Entry): NameMeaning {
    if (entry.given === null || !this.givenStand) return { means: 'unknown' };
    return { means: 'value', type: typeOfUnit(entry.given.unit) };
  }

  private evaluation(entry: Entry, kind: EvaluationStatement['kind']): NameMeaning {
    // A part that only its sum knows stands where the sum stands.
    const sum = entry.partOf === null ? entry : this.namespace.entries.get(entry.partOf);
    const statement = (sum?.item?.statement ?? null) as EvaluationStatement | null;
    const per = statement !== null && 'per' in statement && statement.per !== null ? statement.per : null;
    return {
      means: 'evaluation',
      kind,
      inHold: statement !== null && 'place' in statement && stretchOf(statement.place) === 'hold',
      signal: statement?.kind === 'peak' ? statement.of : null,
      basis: per === null ? 'initial mass' : basisKey(per, entry.name),
      failed: (this.checked.get(sum?.name ?? '')?.failed ?? null) !== null,
    };
  }

  /** Names a statement reads, in the graph of what is computed: for a part that only a sum knows, the sum. */
  reads(statement: Statement): readonly Reference[] {
    const references =
      statement.kind === 'let'
        ? namesIn(statement.expression)
        : statement.kind === 'require'
          ? [...namesIn(statement.left), ...(statement.limit.form === 'in' ? [] : namesIn(statement.limit.right))]
          : evaluationReferences(statement as EvaluationStatement);
    return references.map((reference) => {
      const partOf = this.namespace.entries.get(reference.name)?.partOf ?? null;
      // The sum itself is not read by naming its own part.
      return partOf === null || ('name' in statement && statement.name === partOf)
        ? reference
        : { ...reference, name: partOf };
    });
  }

  /** A statement of the program. `next`: where it reads itself in the end, the next name on the way. */
  check(item: Item<Computed>, next: string | null): Checked {
    const { statement } = item;
    const problems: Problem[] = next === null ? [] : [this.cycle(item, next)];
    if (item.overridden !== null || statement.override) problems.push(...reasonProblems(item));
    problems.push(...amountProblems(statement));
    let type: ValueType | null = null;
    if (statement.kind === 'let') {
      const inferred = next === null ? this.value(statement) : { type: null, problems: [] };
      type = inferred.type;
      problems.push(...inferred.problems);
    } else {
      if (next === null) problems.push(...referenceProblems(statement, this.namespace));
      problems.push(...signalProblems(statement));
    }
    for (const found of problems) this.report.add(item, found, signalFix(item, found));
    const own = problems[0]?.code ?? unreadCode(item);
    const failed = own ?? (this.readsFailed(statement) || this.restsOnBroken(statement) ? 'dependency' : null);
    const checked = { failed, type: failed === null ? type : null };
    this.checked.set(statement.name, checked);
    return checked;
  }

  checkRequirement(item: Item<RequireStatement>): string | null {
    const { statement } = item;
    const problems = requirementProblems(statement, this);
    for (const found of problems) this.report.add(item, found);
    return problems[0]?.code ?? unreadCode(item) ?? (this.readsFailed(statement) ? 'dependency' : null);
  }

  private readsFailed(statement: Statement): boolean {
    return this.reads(statement).some(({ name }) => {
      const entry = this.namespace.entries.get(name);
      if (entry === undefined || entry.broken) return true;
      if (entry.item === null) return entry.partOf === null && !this.givenStand;
      return (this.checked.get(name)?.failed ?? null) !== null;
    });
  }

  private cycle(item: Item<Computed>, next: string): Problem {
    const token = this.reads(item.statement).find(({ name }) => name === next)?.token ?? 'name';
    const { name } = item.statement;
    return problem(
      'cycle',
      token,
      next === name
        ? `\`${name}\` is computed from itself`
        : `\`${name}\` is computed from \`${next}\`, and that from \`${name}\``,
    );
  }

  private value(statement: LetStatement): { readonly type: ValueType | null; readonly problems: readonly Problem[] } {
    const { type, problems } = inferType(statement.expression, this);
    if (type === null) return { type, problems };
    return { type, problems: [...problems, ...shownProblems(statement, type), ...this.givenProblems(statement, type)] };
  }

  private givenProblems(statement: LetStatement, type: ValueType): readonly Problem[] {
    const given = this.namespace.entries.get(statement.name)?.given ?? null;
    if (given === null) return [];
    const { unit } = given;
    const due = typeOfUnit(unit);
    const asked: Expression = {
      node: 'amount',
      amount: { value: 1, unit, u: null, text: `1 ${unit.text}` },
      token: 'name',
    };
    const common = commonType(
      { type, expression: statement.expression },
      { type: due, expression: asked },
      'expression',
      'a given value',
    );
    if (!isProblem(common)) return [];
    const bare = statement.expression.node === 'amount' && statement.expression.amount.unit === null;
    const code = bare && due.kind !== 'fraction' ? 'unit-missing' : common.code;
    const fixes = bare ? [inserting('expression', ` ${unit.text}`)] : [];
    return [
      problem(
        code,
        'expression',
        `the method asks for ${typeWords(due)} in ${unit.text}; this is ${typeWords(type)}`,
        fixes,
      ),
    ];
  }
}

function reasonProblems(item: Item): readonly Problem[] {
  if ((item.statement.because ?? '').trim() !== '') return [];
  const empty = item.statement.because !== null;
  const message = empty
    ? 'the reason of the override is empty'
    : 'an override says why the method is not followed: `because "…"`';
  return [problem('override-without-reason', empty ? 'because.value' : 'head', message)];
}

function shownProblems(statement: LetStatement, type: ValueType): readonly Problem[] {
  if (statement.show === null) return [];
  const { show } = statement;
  switch (canShow(type, show)) {
    case 'yes':
      return [];
    case 'point':
      return [
        problem('point-for-difference', 'show.value', 'a difference is shown in K', [replacing('show.value', 'K')]),
      ];
    case 'no':
      return [
        problem(
          'wrong-dimension',
          'show.value',
          `\`${statement.name}\` is ${typeWords(type)} and cannot be shown in ${show.text}`,
        ),
      ];
  }
}

/** An onset names its signal: nothing is assumed, since onsets of mass and heat flow differ. */
function signalProblems(statement: EvaluationStatement): readonly Problem[] {
  if (statement.kind !== 'onset' || statement.of !== null) return [];
  return [problem('signal-missing', 'head', `\`${statement.name}\` does not say of which signal it is the onset`)];
}

function signalFix(item: Item, found: Problem): Parameters<Report['add']>[2] {
  const statement = item.nodes[0].node.id;
  if (found.code === 'signal-missing') {
    return {
      edits: ['mass', 'heatflow'].map((signal) => [
        `Add \`of ${signal}\``,
        { edit: 'insert-clause', statement, text: `of ${signal}` },
      ]),
    };
  }
  if (found.code === 'override-without-reason' && found.token === 'head') {
    return { edits: [['Add a line for the reason', { edit: 'insert-clause', statement, text: 'because ""' }]] };
  }
  return {};
}

/** Clauses that accept a finding, without those that name none or none that can be accepted. */
export function possibleAllows(item: Item, report: Report): Item['statement']['allows'] {
  return item.statement.allows.filter((allow) => {
    const problems = allowProblems(allow.code, `${allow.token}.code`);
    for (const found of problems) report.add(item, found);
    return problems.length === 0;
  });
}
