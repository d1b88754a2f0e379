import type {
  Amount,
  Atmosphere,
  BlankStatement,
  ColumnsStatement,
  Crucible,
  CrossingStatement,
  EvaluationStatement,
  Place,
  ProgrammeStatement,
  ResidueStatement,
  RunStatement,
  Statement,
} from '../model';
import type { Measure } from '../vocabulary/measures';
import { signalRecord } from '../vocabulary/signals';
import { checkAmount, checkColumnUnit, checkRange, checkRuleLimit } from './amountProblems';
import { isFindingCode } from '../../findings/table';
import type { Problem } from './problem';

/** Where a statement stands, as far as its text says: differences are K in a ramp and times in a hold. */
export type Stretch = 'ramp' | 'hold' | 'open';

export function stretchOf(place: Place): Stretch {
  if (place.segment !== null) return place.segment.direction === 'hold' ? 'hold' : 'ramp';
  const unit =
    place.window === null ? null : place.window.rule === 'around' ? place.window.at.unit : place.window.range.to.unit;
  // Minutes of the file's own time may lie in a ramp or in a hold.
  return unit !== null && unit.dimension[2] === 1 ? 'open' : 'ramp';
}

function stretchOfResidue(at: ResidueStatement['at']): Stretch {
  if ('endOf' in at) return at.endOf.direction === 'hold' ? 'hold' : 'ramp';
  return stretchOf({ window: { rule: 'around', at: at.amount, within: null }, segment: at.segment });
}

/** What a length along the curve measures there. */
function lengths(stretch: Stretch): readonly Measure[] {
  return stretch === 'hold' ? ['time'] : stretch === 'ramp' ? ['difference'] : ['difference', 'time'];
}

function positions(stretch: Stretch): readonly Measure[] {
  return stretch === 'hold' ? ['time'] : ['temperature', 'time'];
}

/** Statements are the same objects from one revision to the next while nothing in them changes. */
const known = new WeakMap<Statement, readonly Problem[]>();

/** Units of everything written in one statement but its expressions. */
export function amountProblems(statement: Statement): readonly Problem[] {
  let problems = known.get(statement);
  if (problems === undefined) known.set(statement, (problems = problemsOf(statement)));
  return problems;
}

function problemsOf(statement: Statement): readonly Problem[] {
  switch (statement.kind) {
    case 'run':
      return runProblems(statement);
    case 'blank':
      return [
        ...conditions(statement),
        ...optional(statement.repeatability, ['mass', 'heat flow', 'voltage'], 'repeatability.value'),
      ];
    case 'join':
      return optional(statement.offset, ['time'], 'offset.value');
    case 'columns':
      return columnProblems(statement);
    case 'programme':
      return statement.parts.flatMap(programmePart);
    case 'mask':
      return checkRange(statement.range, ['temperature', 'time'], 'window');
    case 'rule':
      return isFindingCode(statement.code) ? checkRuleLimit(statement.code, statement.limit, 'limit') : [];
    case 'step':
    case 'peak':
    case 'glass':
    case 'onset':
    case 'crossing':
    case 'residue':
      return evaluationProblems(statement);
    default:
      return [];
  }
}

function optional(amount: Amount | 'none' | null, due: readonly Measure[], token: string): readonly Problem[] {
  return amount === null || amount === 'none' ? [] : checkAmount(amount, due, token);
}

function runProblems(run: RunStatement): readonly Problem[] {
  return [
    ...optional(run.mass, ['mass'], 'mass.value'),
    ...optional(run.rate, ['heating rate'], 'rate.value'),
    ...conditions(run),
    ...run.calibrated.flatMap(({ signal, range, u }, i) => {
      const token = counted('calibrated', i);
      const own = signalRecord(signal)?.measures ?? [];
      // Every scale may be checked over temperatures.
      const over: readonly Measure[] = signal === 'time' ? ['time'] : [...new Set<Measure>(['temperature', ...own])];
      const scale: readonly Measure[] = signal === 'temperature' ? ['difference'] : [...own, 'fraction'];
      return [...checkRange(range, over, `${token}.range`), ...optional(u, scale, `${token}.u`)];
    }),
  ];
}

function conditions(of: RunStatement | BlankStatement): readonly Problem[] {
  return [
    ...crucible(of.crucible),
    ...of.atmospheres.flatMap((atmosphere, i) => gas(atmosphere, counted('atmosphere', i))),
  ];
}

function crucible(of: Crucible | null): readonly Problem[] {
  return optional(of?.volume ?? null, ['volume'], 'crucible.volume');
}

function gas(atmosphere: Atmosphere, token: string): readonly Problem[] {
  const { from } = atmosphere;
  return [
    ...optional(atmosphere.flow, ['flow'], `${token}.flow`),
    ...optional(atmosphere.purity, ['fraction'], `${token}.purity`),
    ...(from !== null && 'time' in from ? checkAmount(from.time, ['time'], `${token}.from`) : []),
  ];
}

/** The token of a repeated clause. */
function counted(word: string, index: number): string {
  return index === 0 ? word : `${word}#${index + 1}`;
}

/** What a column of a signal may hold beside what its level measures. */
const alsoInColumns: Readonly<Record<string, readonly Measure[]>> = { mass: ['number'], ion: ['number'] };

function columnProblems(columns: ColumnsStatement): readonly Problem[] {
  return columns.columns.flatMap(({ signal, unit, token }) => {
    const record = signalRecord(signal);
    if (unit === null || record === null) return [];
    return checkColumnUnit(unit, [...record.measures, ...(alsoInColumns[record.word] ?? [])], `${token}.unit`);
  });
}

function programmePart(part: ProgrammeStatement['parts'][number]): readonly Problem[] {
  if (part.part === 'hold') return checkAmount(part.time, ['time'], `${part.token}.time`);
  return [
    ...optional(part.from, ['temperature'], `${part.token}.from`),
    ...checkAmount(part.to, ['temperature'], `${part.token}.to`),
    ...checkAmount(part.rate, ['heating rate'], `${part.token}.rate`),
  ];
}

function evaluationProblems(statement: EvaluationStatement): readonly Problem[] {
  if (statement.kind === 'residue') {
    const stretch = stretchOfResidue(statement.at);
    const at = 'amount' in statement.at ? checkAmount(statement.at.amount, positions(stretch), 'at') : [];
    return [...at, ...optional(statement.over, lengths(stretch), 'over.value')];
  }
  const stretch = stretchOf(statement.place);
  const place = placeProblems(statement.place, stretch);
  if (statement.kind === 'crossing') return [...place, ...levelProblems(statement)];
  return [
    ...place,
    ...optional(statement.span, lengths(stretch), 'span.value'),
    ...optional(statement.smooth, lengths(stretch), 'smooth.value'),
  ];
}

function placeProblems({ window }: Place, stretch: Stretch): readonly Problem[] {
  if (window === null) return [];
  if (window.rule === 'range') return checkRange(window.range, positions(stretch), 'window');
  return [
    ...checkAmount(window.at, positions(stretch), 'window.at'),
    ...optional(window.within, lengths(stretch), 'window.within'),
  ];
}

function levelProblems(crossing: CrossingStatement): readonly Problem[] {
  if (!('amount' in crossing.level)) return [];
  return checkAmount(crossing.level.amount, signalRecord(crossing.signal)?.measures ?? [], 'level');
}
