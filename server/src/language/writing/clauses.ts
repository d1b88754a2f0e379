import type { Amount, Atmosphere, Basis, ColumnChoice, Crucible, SegmentName, Statement } from '../model';
import { writeAmount, writeNumber, writeRange, type Digits } from './amounts';
import { writeText, writeWords } from './writeText';

export function writeSegment(segment: SegmentName): string {
  return `${segment.direction} ${segment.index}`;
}

export function writeBasis(basis: Basis): string {
  switch (basis.of) {
    case 'dried mass':
      return `dried mass after ${basis.step}`;
    case 'ignited mass':
      return `ignited mass at ${basis.residue}`;
    default:
      return basis.of;
  }
}

export function writeCrucible(crucible: Crucible, digits: Digits): string {
  const volume = crucible.volume === null ? '' : ` ${writeAmount(crucible.volume, digits)}`;
  return [writeWords(crucible.words) + volume, ...crucible.further.map(writeWords)].join(', ');
}

export function writeAtmosphere(atmosphere: Atmosphere, digits: Digits): string {
  const gases = atmosphere.gases.map((gas) =>
    gas.percent === null ? writeWords(gas.words) : `${writeWords(gas.words)} ${writeNumber(gas.percent)} %`,
  );
  const parts = [gases.join(' + ')];
  if (atmosphere.flow !== null) parts.push(writeAmount(atmosphere.flow, digits));
  if (atmosphere.purity !== null) parts.push(`purity ${writeAmount(atmosphere.purity, digits)}`);
  const { from } = atmosphere;
  if (from !== null) parts.push(`from ${'time' in from ? writeAmount(from.time, digits) : writeSegment(from.segment)}`);
  return parts.join(' ');
}

function writeColumn(choice: ColumnChoice): string {
  const column = 'header' in choice.column ? writeText(choice.column.header) : `column ${choice.column.number}`;
  return `${choice.signal} ${column}${choice.unit === null ? '' : ` in ${choice.unit.text}`}`;
}

/** Clause lines of a statement, in the order of the model; repeated ones in written order. */
export function writeClauses(statement: Statement, digits: Digits): readonly string[] {
  const lines: string[] = [];
  const add = (word: string, value: string | null): void => {
    if (value !== null) lines.push(value === '' ? word : `${word} ${value}`);
  };
  const amount = (word: string, value: Amount | 'none' | null): void => {
    add(word, value === null || value === 'none' ? value : writeAmount(value, digits));
  };
  const text = (word: string, value: string | null): void => add(word, value === null ? null : writeText(value));
  const names = (word: string, value: readonly string[]): void =>
    add(word, value.length === 0 ? null : value.join(', '));

  switch (statement.kind) {
    case 'run':
      if (statement.sampleIsNone) add('sample', 'none');
      else text('sample', statement.sample);
      amount('mass', statement.mass);
      add('crucible', statement.crucible === null ? null : writeCrucible(statement.crucible, digits));
      for (const atmosphere of statement.atmospheres) add('atmosphere', writeAtmosphere(atmosphere, digits));
      add('contains', statement.contains.length === 0 ? null : statement.contains.map(writeWords).join(', '));
      add('endothermic', statement.endothermic);
      text('operator', statement.operator);
      text('evaluator', statement.evaluator);
      for (const hazard of statement.hazards) text('hazard', hazard);
      add('measured', statement.measured);
      amount('rate', statement.rate);
      for (const { signal, range, u } of statement.calibrated) {
        const scale = u === null ? '' : ` u ${writeAmount(u, digits)}`;
        add('calibrated', `${signal} ${writeRange(range, digits)}${scale}`);
      }
      break;
    case 'join':
      if (statement.on !== 'time') add('on', statement.on);
      amount('offset', statement.offset);
      break;
    case 'columns':
      for (const choice of statement.columns) lines.push(writeColumn(choice));
      break;
    case 'reading':
      text('delimiter', statement.delimiter);
      text('decimal', statement.decimal);
      for (const word of ['skip', 'header', 'footer'] as const) {
        add(word, statement[word] === null ? null : `${statement[word]} lines`);
      }
      add('encoding', statement.encoding);
      add('block', statement.block === null ? null : `${statement.block}`);
      break;
    case 'programme':
      for (const part of statement.parts) {
        if (part.part === 'hold') amount('hold', part.time);
        else {
          const from = part.from === null ? '' : `${writeAmount(part.from, digits)} `;
          add(part.part, `${from}to ${writeAmount(part.to, digits)} at ${writeAmount(part.rate, digits)}`);
        }
      }
      break;
    case 'blank':
      if (statement.subtract.join() !== 'mass') names('subtract', statement.subtract);
      add('crucible', statement.crucible === null ? null : writeCrucible(statement.crucible, digits));
      for (const atmosphere of statement.atmospheres) add('atmosphere', writeAtmosphere(atmosphere, digits));
      amount('repeatability', statement.repeatability);
      break;
    case 'peak':
      add('of', statement.of);
      add('baseline', statement.baseline);
      add('expect', statement.expect);
      break;
    case 'onset':
      add('of', statement.of);
      break;
    case 'crossing':
      add(statement.way ?? '', statement.way === null ? null : '');
      add(statement.which ?? '', statement.which === null ? null : '');
      break;
    case 'residue':
      amount('over', statement.over);
      break;
    case 'let':
      add('show', statement.show === null ? null : statement.show.text);
      break;
    case 'require':
      add('on', statement.on ?? null);
      break;
    case 'note':
      add('on', statement.on);
      break;
    default:
  }
  if (statement.kind === 'step' || statement.kind === 'glass') add('by', statement.by);
  if ('span' in statement) {
    amount('span', statement.span);
    amount('smooth', statement.smooth);
  }
  if ('per' in statement) add('per', statement.per === null ? null : writeBasis(statement.per));
  if ('encloses' in statement) names('encloses', statement.encloses);
  text('because', statement.because);
  for (const note of statement.notes) text('note', note);
  for (const allow of statement.allows) add('allow', `${allow.code} because ${writeText(allow.because)}`);
  return lines;
}
