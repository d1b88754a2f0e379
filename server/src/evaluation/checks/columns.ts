import type { Finding } from '../../findings/finding';
import { makeFinding } from '../../findings/makeFinding';
import { numberText } from '../../findings/numberText';
import { fixedLimit } from '../../findings/table';
import type { Column } from '../../runs/run';
import type { CheckContext } from './context';
import { heatQuantities, insertStatement, massQuantities, percent } from './wording';

/** Columns whose numbers do not fit the unit they are read in. */
export function checkColumns(context: CheckContext): Finding[] {
  return [...massScale(context), ...specificHeat(context), ...timeScale(context)];
}

function firstNumber(column: Column): number {
  return column.values.find((v) => Number.isFinite(v)) ?? NaN;
}

function massScale(context: CheckContext): Finding[] {
  const { program, run } = context;
  const column = run.raw.columns.find((c) => c.signal === 'mass');
  if (program.run === null || column === undefined) return [];
  const where = { statement: program.run.id, token: 'file' };
  const low = context.limit('scale-doubtful');
  const high = fixedLimit('scale-doubtful', 1);
  const near = fixedLimit('scale-doubtful', 2);
  const first = firstNumber(column);
  if (column.unit === '1') {
    if (100 * first >= low && 100 * first <= high) return [];
    return [
      makeFinding(
        'scale-doubtful',
        where,
        `Column ${column.number} ("${column.header}") is read as a mass fraction but starts at ${percent(100 * first)}, outside ${numberText(low, 1)} to ${numberText(high, 1)} %.`,
        { only: massQuantities, fixes: [columnFix('mass', column.number, 'mg')] },
      ),
    ];
  }
  const stated = program.run.statement.mass === null ? null : run.mass.milligrams;
  const distance = Math.abs(first - 100);
  // Without a stated mass only a start at 100 to the last digits is suspicious.
  const suspicious = stated === null ? distance < near / 10 : distance <= near && Math.abs(stated.value - 100) > near;
  if (!suspicious) return [];
  return [
    makeFinding(
      'scale-doubtful',
      where,
      `Column ${column.number} ("${column.header}") is read in mg but starts at ${numberText(first, 3)}${stated === null ? '' : `, and the specimen weighs ${numberText(stated.value, 3)} mg`}: it looks like a percentage.`,
      { only: massQuantities, fixes: [columnFix('mass', column.number, '%')] },
    ),
  ];
}

function columnFix(signal: string, number: number, unit: string) {
  return insertStatement(`Read column ${number} in ${unit}`, null, `columns\n  ${signal} column ${number} in ${unit}`);
}

/** A plain and a specific heat flow side by side must differ by the specimen mass. */
function specificHeat(context: CheckContext): Finding[] {
  const { program, run } = context;
  const mass = run.mass.milligrams;
  const plainFlow = run.raw.columns.find((c) => c.signal === 'heatflow' && c.unit === 'mW');
  const specific = run.raw.columns.find((c) => c.signal === 'heatflow' && c.unit === 'W/g');
  if (program.run === null || mass === null || plainFlow === undefined || specific === undefined) return [];
  let product = 0;
  let square = 0;
  for (let i = 0; i < plainFlow.values.length; i++) {
    const [a, b] = [plainFlow.values[i], specific.values[i]];
    if (!Number.isFinite(a) || !Number.isFinite(b)) continue;
    product += a * b;
    square += b * b;
  }
  if (!(square > 0)) return [];
  const factor = product / square;
  const off = 100 * Math.abs(factor / mass.value - 1);
  if (off <= fixedLimit('scale-doubtful', 3)) return [];
  return [
    makeFinding(
      'scale-doubtful',
      { statement: program.run.id, token: 'file' },
      `Columns ${plainFlow.number} and ${specific.number} differ by a factor of ${numberText(factor, 3)}, but the specimen weighs ${numberText(mass.value, 3)} mg: one is divided by the mass twice or never.`,
      { only: heatQuantities },
    ),
  ];
}

/** What sixty and a sixtieth may be off by and still be taken for the wrong unit of time. */
const NEAR_SIXTY = 0.1;

function timeScale(context: CheckContext): Finding[] {
  const { program, run } = context;
  const ramps = run.segments.filter((s) => s.rate !== null);
  if (program.run === null || ramps.length === 0) return [];
  const limit = context.limit('time-scale-doubtful');
  const column = run.raw.columns.find((c) => c.signal === 'time');
  const fixes = (unit: string) => (column === undefined ? [] : [columnFix('time', column.number, unit)]);
  const fast = ramps.find((s) => Math.abs(s.rate!) > limit);
  const where = { statement: program.run.id, token: 'file' };
  const only = ['rate', 'drift', ...heatQuantities];
  if (fast !== undefined) {
    return [
      makeFinding(
        'time-scale-doubtful',
        where,
        `${fast.name} runs at ${numberText(Math.abs(fast.rate!), 1)} K/min (limit ${numberText(limit, 1)}): its time column looks like minutes read as seconds.`,
        { only, fixes: fixes('min') },
      ),
    ];
  }
  const stated = program.programme?.statement.parts.find((p) => p.part !== 'hold');
  if (stated === undefined) return [];
  const measured = ramps.find((s) => (s.direction === 'heating') === (stated.part === 'heat'));
  if (measured === undefined) return [];
  const nominal = stated.rate.value * (stated.rate.unit?.factor ?? 1 / 60) * 60;
  const ratio = Math.abs(measured.rate! / nominal);
  const times = Math.abs(ratio / 60 - 1) < NEAR_SIXTY ? 'min' : Math.abs(ratio * 60 - 1) < NEAR_SIXTY ? 's' : null;
  if (times === null) return [];
  return [
    makeFinding(
      'time-scale-doubtful',
      where,
      `${measured.name} runs at ${numberText(Math.abs(measured.rate!), 2)} K/min where ${numberText(Math.abs(nominal), 2)} are stated: a factor of sixty, so the time column is in ${times}.`,
      { only, fixes: fixes(times) },
    ),
  ];
}
