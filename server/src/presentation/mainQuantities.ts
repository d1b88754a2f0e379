import type { Snapshot } from '../engine/snapshot';
import type { Result } from '../evaluation/result';
import type { Expression } from '../language/model';

// What a report on such an effect states first (common practice; ISO 11358-1 and ISO 11357 ask for these and leave the
// rest to the parties). Twins in minutes stand for them in a hold, where there is no temperature to state.
const main: Readonly<Record<string, readonly string[]>> = {
  step: ['loss', 'start', 'midpoint', 'end', 'inflection'],
  peak: ['enthalpy', 'area', 'onset', 'peak', 'end'],
  glass: ['onset', 'midpoint', 'end', 'delta_cp'],
  onset: ['temperature', 'time'],
  crossing: ['temperature', 'time'],
  residue: ['remaining', 'drift'],
  let: ['value'],
};

/**
 * Ids of the results that tables show unless all are asked for: the main quantities of each kind and whatever a `let` or
 * `require` of the gloss or its method reads, and what failed. The others are in JSON, in `--all` and in `--explain`; so
 * are quantities in mg of a run without a specimen mass, as of an export in percent: nobody asked for them.
 */
export function mainResults(snapshot: Snapshot): ReadonlySet<string> {
  const wanted = new Set(readByExpressions(snapshot));
  const present = new Set(snapshot.results.map((r) => r.id));
  for (const result of snapshot.results) {
    const failed = result.state === 'failed' && !result.reasons.some((reason) => reason.startsWith('mass-missing'));
    if (failed || isMain(result, present)) wanted.add(result.id);
  }
  return wanted;
}

/** True where a result failed that the gloss reads or that tables show. */
export function anyFailed(snapshot: Snapshot): boolean {
  const wanted = mainResults(snapshot);
  return snapshot.results.some((r) => r.state === 'failed' && wanted.has(r.id));
}

function isMain(result: Result, present: ReadonlySet<string>): boolean {
  const names = main[result.kind];
  if (names === undefined || names.includes(result.quantity)) return !doubled(result, present);
  if (!result.quantity.endsWith('_time')) return false;
  const twin = result.quantity.slice(0, -'_time'.length);
  return names.includes(twin) && !present.has(`${result.name}.${twin}`);
}

/** An area beside the heat it gives, the minute beside the temperature of one point. */
function doubled(result: Result, present: ReadonlySet<string>): boolean {
  if (result.quantity === 'area') return present.has(`${result.name}.enthalpy`);
  return result.quantity === 'time' && present.has(`${result.name}.temperature`);
}

function readByExpressions(snapshot: Snapshot): string[] {
  const ids: string[] = [];
  const walk = (expression: Expression): void => {
    switch (expression.node) {
      case 'name':
        if (expression.quantity !== null) ids.push(`${expression.name}.${expression.quantity}`);
        return;
      case 'call':
        expression.args.forEach(walk);
        return;
      case 'negate':
        walk(expression.of);
        return;
      case 'binary':
        walk(expression.left);
        walk(expression.right);
        return;
      default:
    }
  };
  for (const text of [snapshot.gloss, snapshot.method]) {
    for (const { statement } of text?.tree.statements ?? []) {
      if (statement?.kind === 'let') walk(statement.expression);
      if (statement?.kind !== 'require') continue;
      walk(statement.left);
      if ('right' in statement.limit) walk(statement.limit.right);
    }
  }
  return ids;
}
