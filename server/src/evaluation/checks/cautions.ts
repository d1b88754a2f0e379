import { extentOf } from '../../analysis/extent';
import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { cautions } from '../../reference/cautions';
import type { CheckContext } from './context';

/** Reminders of safety. They carry no effect on any number and defer to local codes and licensed practice. */
export function checkCautions(context: CheckContext): Finding[] {
  const { program, run } = context;
  if (program.run === null) return [];
  const { id, statement } = program.run;
  const range = rangeOf(run.temperature);
  const list = cautions({
    emptyCrucible: statement.sampleIsNone,
    hazards: statement.hazards,
    contains: statement.contains,
    crucible: statement.crucible === null ? [] : [statement.crucible.words, ...statement.crucible.further],
    atmospheres: statement.atmospheres.map((a) => a.gases.map((g) => g.words)),
    minTemperature: range?.lowest ?? null,
    maxTemperature: range?.highest ?? null,
  });
  return list.map((caution) => {
    const written = caution.clause !== null && isWritten(statement, caution.clause);
    return makeFinding(
      caution.code,
      { statement: id, token: written ? `${caution.clause}.value` : 'head' },
      caution.message,
    );
  });
}

function isWritten(
  statement: NonNullable<CheckContext['program']['run']>['statement'],
  clause: 'contains' | 'hazard' | 'crucible' | 'atmosphere',
): boolean {
  switch (clause) {
    case 'contains':
      return statement.contains.length > 0;
    case 'hazard':
      return statement.hazards.length > 0;
    case 'crucible':
      return statement.crucible !== null;
    case 'atmosphere':
      return statement.atmospheres.length > 0;
  }
}

function rangeOf(temperature: Float64Array | null): { lowest: number; highest: number } | null {
  if (temperature === null) return null;
  const extent = extentOf(temperature);
  if (extent.finite) return { lowest: extent.least, highest: extent.most };
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const t of temperature) {
    if (t < lowest) lowest = t;
    if (t > highest) highest = t;
  }
  return lowest <= highest ? { lowest, highest } : null;
}
