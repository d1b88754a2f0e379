import { extentOf } from '../../analysis/extent';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { numberText } from '../../findings/numberText';
import { compatibility, type CompatibilityProblem, type NotAssessed } from '../../reference/compatibility';
import { tooHot } from '../../reference/workingLimit';
import { timelineOf } from './buoyancy';
import type { CheckContext } from './context';
import { celsius } from './wording';

/** Crucible against the temperatures, gases and specimen of the run. */
export function checkCrucible(context: CheckContext): Finding[] {
  const { program, run } = context;
  const statement = program.run?.statement;
  const highest = highestTemperature(context);
  if (program.run === null || statement === undefined || highest === null) return [];
  const gases = timelineOf(context).flatMap((period) => {
    const upTo = highestBetween(run.time, run.temperature!, period.from, period.to);
    return period.atmosphere.gases.map(({ words }) => ({ words, upTo }));
  });
  const id = program.run.id;
  const findings: Finding[] = [];
  if (statement.crucible !== null) {
    const margin = context.limit('crucible-too-hot');
    const hot = tooHot(statement.crucible.words, gases, highest, margin);
    if (hot !== null) {
      findings.push(
        makeFinding(
          'crucible-too-hot',
          { statement: id, token: 'crucible.value' },
          `The run goes to ${celsius(highest)}; ${hot.crucible.name} works up to ${celsius(hot.limit)} in these gases, less ${numberText(margin, 0)} K to keep. ${instead(hot.instead)}`,
        ),
      );
    }
  }
  const contains = statement.sampleIsNone ? null : statement.contains;
  const compared = compatibility(statement.crucible?.words ?? null, gases, contains ?? [], highest);
  for (const problem of unique(compared.problems)) {
    findings.push(
      makeFinding(
        'crucible-incompatible',
        { statement: id, token: tokenOf(problem, statement.contains) },
        problemText(problem),
      ),
    );
  }
  const open = compared.notAssessed.filter((n) => contains !== null || n.what !== 'specimen');
  if (open.length > 0) {
    findings.push(
      makeFinding(
        'compatibility-not-assessed',
        { statement: id, token: statement.crucible === null ? 'head' : 'crucible.value' },
        `Crucible, gas and specimen are not fully compared: ${open.map(openText).join('; ')}. That nothing is found means nothing.`,
      ),
    );
  }
  return findings;
}

/** Highest temperature of the run, °C; null without a temperature column. */
export function highestTemperature(context: CheckContext): number | null {
  const { time, temperature } = context.run;
  return temperature === null ? null : highestBetween(time, temperature, time[0], time[time.length - 1]);
}

function highestBetween(time: Float64Array, temperature: Float64Array, from: number, to: number): number {
  const { finite, most } = extentOf(temperature);
  if (finite && from <= time[0] && to >= time[time.length - 1] && extentOf(time).leastStep >= 0) return most;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < time.length; i++) {
    if (time[i] >= from && time[i] <= to && temperature[i] > highest) highest = temperature[i];
  }
  return highest;
}

function tokenOf(problem: CompatibilityProblem, contains: readonly string[]): string {
  return problem.kind !== 'gas' && contains.length > 0 ? 'contains.value' : 'crucible.value';
}

function problemText(problem: CompatibilityProblem): string {
  const from = problem.above === null ? '' : ` above ${celsius(problem.above)}`;
  const what = problem.kind === 'product' ? `${problem.culprit} from ${problem.words}` : problem.words;
  return `${capital(problem.crucible)} with ${what}${from}: ${problem.why}. ${instead(problem.instead)} Supplier data and local experience take precedence.`;
}

function openText({ what, words }: NotAssessed): string {
  const clause = what === 'gas' ? 'atmosphere' : what === 'specimen' ? 'contains' : 'crucible';
  return words === ''
    ? `"${clause}" is missing`
    : `"${words}" is not in the table of ${what === 'gas' ? 'gases' : `${what}s`}`;
}

function instead(materials: readonly string[]): string {
  return materials.length === 0 ? 'No material of the table does better.' : `Suitable: ${materials.join(', ')}.`;
}

function unique(problems: readonly CompatibilityProblem[]): CompatibilityProblem[] {
  return problems.filter((p, i) => problems.findIndex((q) => q.words === p.words && q.culprit === p.culprit) === i);
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
