import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { add } from '../../quantities/arithmetic';
import { coverageFactor } from '../../quantities/coverageFactor';
import { molarMass } from '../../quantities/molarMass';
import { atomicWeights } from '../../reference/atomicWeights';
import type { Expression } from '../../language/model';
import { effectiveDof } from '../../quantities/effectiveDof';
import { standardUncertainty } from '../../quantities/standardUncertainty';
import type { Uncertain } from '../../quantities/uncertain';
import type { Result } from '../result';
import type { CheckContext } from './context';
import { formulasOf } from './references';
import { percent } from './wording';

/** Shares that cannot be: above the whole, below nothing, or together above the whole. Looks at the values of `let`. */
export function checkShares(context: CheckContext, results: readonly Result[]): Finding[] {
  const whole = context.limit('fraction-impossible');
  const lets = results.filter(
    (r) => r.kind === 'let' && r.valueKind === 'fraction' && r.unit.text === '%' && r.uncertain !== null,
  );
  const findings: Finding[] = [];
  for (const result of lets) {
    const { value } = result.uncertain!;
    const U = expanded(result.uncertain!);
    if (value <= whole + U && value >= -U) continue;
    findings.push(
      makeFinding(
        'fraction-impossible',
        { statement: result.statement, token: 'expression' },
        `${result.name} is ${percent(value)} with U = ${percent(U)}, ${value > 0 ? `above ${percent(whole)}` : 'below zero'}: a share cannot be.`,
        { about: result.name },
      ),
    );
  }
  const phases = lets.filter((result) => phaseNames(context).has(result.name) && result.basis === lets[0].basis);
  if (phases.length < 2) return findings;
  const sum = phases.map((p) => p.uncertain!).reduce((a, b) => add(a, b));
  const U = expanded(sum);
  if (sum.value <= whole + U || findings.length > 0) return findings;
  const last = phases[phases.length - 1];
  findings.push(
    makeFinding(
      'fraction-impossible',
      { statement: last.statement, token: 'expression' },
      `${phases.map((p) => p.name).join(' + ')} is ${percent(sum.value)} with U = ${percent(U)}, above ${percent(whole)}: the phases share a step that each of them was given whole.`,
      { about: last.name },
    ),
  );
  return findings;
}

/**
 * Values computed through a formula: the share of a phase. What lacks an element of the gas it is counted from (`M(MgO)`
 * over `M(CO2)`) cannot have given that gas: it is a part of a phase, not one beside it.
 */
function phaseNames(context: CheckContext): Set<string> {
  return new Set(
    context.program.order.flatMap(({ statement }) =>
      statement.kind === 'let' && isPhase(statement.expression) ? [statement.name] : [],
    ),
  );
}

function expanded(value: Uncertain): number {
  return coverageFactor(effectiveDof(value)) * standardUncertainty(value);
}

function isPhase(expression: Expression): boolean {
  const { above, below } = formulasOf(expression);
  if (above.length + below.length === 0) return false;
  const own = new Set(above.flatMap(elementsOf));
  return above.length === 0 || below.flatMap(elementsOf).every((element) => own.has(element));
}

function elementsOf(formula: string): string[] {
  const mass = molarMass(formula, atomicWeights);
  return mass.ok ? mass.value.elements.map(({ symbol }) => symbol) : [];
}
