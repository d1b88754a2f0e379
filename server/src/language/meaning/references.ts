import { nearest } from '../nearest';
import type { Basis, EvaluationStatement, Expression } from '../model';
import type { Entry, Namespace } from './namespace';
import { problem, replacing, type Problem } from './problem';

/** A name that a statement reads, and where it stands. */
export interface Reference {
  readonly name: string;
  readonly token: string;
}

/** Names in an expression, in written order. */
export function namesIn(expression: Expression): readonly Reference[] {
  switch (expression.node) {
    case 'name':
      return [{ name: expression.name, token: `${expression.token}.name` }];
    case 'negate':
      return namesIn(expression.of);
    case 'call':
      return expression.args.flatMap(namesIn);
    case 'binary':
      return [...namesIn(expression.left), ...namesIn(expression.right)];
    default:
      return [];
  }
}

function basisName(per: Basis): { readonly name: string; readonly kind: 'step' | 'residue' } | null {
  if (per.of === 'dried mass') return { name: per.step, kind: 'step' };
  return per.of === 'ignited mass' ? { name: per.residue, kind: 'residue' } : null;
}

/** What an evaluation reads: the masses of its basis and the parts of a sum. */
export function evaluationReferences(statement: EvaluationStatement): readonly Reference[] {
  const references: Reference[] = [];
  if ('per' in statement && statement.per !== null) {
    const basis = basisName(statement.per);
    if (basis !== null) references.push({ name: basis.name, token: 'per.name' });
  }
  if ('sumOf' in statement && statement.sumOf !== null) {
    references.push(...statement.sumOf.map((name, i) => ({ name, token: `sum/${i}` })));
  }
  return references;
}

/** Whether the names an evaluation mentions exist and are of the kind that is due. */
export function referenceProblems(statement: EvaluationStatement, names: Namespace): readonly Problem[] {
  const problems: Problem[] = [];
  if ('per' in statement && statement.per !== null) {
    const basis = basisName(statement.per);
    if (basis !== null) problems.push(...basisProblems(basis.name, basis.kind, names));
  }
  if ('sumOf' in statement && statement.sumOf !== null)
    problems.push(...partProblems(statement.kind, statement.sumOf, names));
  if ('encloses' in statement) {
    statement.encloses.forEach((name, i) => {
      const token = i === 0 ? 'encloses.name' : `encloses.name#${i + 1}`;
      problems.push(
        ...mentioned(name, token, names, (entry) => names.isEvaluation(entry), 'a statement with a window'),
      );
    });
  }
  return problems;
}

function basisProblems(name: string, kind: 'step' | 'residue', names: Namespace): readonly Problem[] {
  const found = mentioned(name, 'per.name', names, (entry) => entry.keyword === kind, `a ${kind}`);
  const partOf = names.entries.get(name)?.partOf ?? null;
  if (found.length > 0 || partOf === null) return found;
  return [problem('unknown-name', 'per.name', `\`${name}\` is only a part of a sum and has no mass of its own`)];
}

function partProblems(kind: 'step' | 'peak', parts: readonly string[], names: Namespace): readonly Problem[] {
  return parts.flatMap((name, i) => {
    const token = `sum/${i}`;
    if (parts.indexOf(name) < i) return [problem('name-twice', token, `\`${name}\` is a part already`)];
    const found = mentioned(name, token, names, (entry) => entry.keyword === kind, `a ${kind}`);
    const unknown = !names.entries.has(name);
    return found.map((one) =>
      unknown ? { ...one, message: `${one.message}; a part named only here needs a window behind the sum` } : one,
    );
  });
}

/** A name that must exist and be of some kind. */
export function mentioned(
  name: string,
  token: string,
  names: Namespace,
  fits: (entry: Entry) => boolean,
  due: string,
): readonly Problem[] {
  const entry = names.entries.get(name);
  if (entry !== undefined) {
    return fits(entry)
      ? []
      : [problem('unknown-name', token, `\`${name}\` is a \`${entry.keyword}\`; ${due} is due here`)];
  }
  if (names.hidden) return [];
  const candidates = [...names.entries.values()].filter(fits).map((candidate) => candidate.name);
  const meant = nearest(name, candidates, 2);
  return [
    problem(
      'unknown-name',
      token,
      `nothing is called \`${name}\`; ${due} is due here`,
      meant.map((text) => replacing(token, text)),
    ),
  ];
}
