import type { Place, Statement } from '../model';
import { writeAmount, writeNumber, writeRange, type Digits } from './amounts';
import { writeSegment } from './clauses';
import { writeExpression } from './expressions';
import { writeText } from './writeText';

function writePlace(place: Place, digits: Digits): string {
  const parts: string[] = [];
  const { window, segment } = place;
  if (window?.rule === 'range') parts.push(writeRange(window.range, digits));
  if (window?.rule === 'around') {
    const within = window.within === null ? '' : ` within ${writeAmount(window.within, digits)}`;
    parts.push(`around ${writeAmount(window.at, digits)}${within}`);
  }
  if (segment !== null) parts.push(`in ${writeSegment(segment)}`);
  return parts.join(' ');
}

/** The head line of a statement, with `override` before it where it is one. */
export function writeHead(statement: Statement, digits: Digits): string {
  const head = writeOwnHead(statement, digits);
  return statement.override ? `override ${head}` : head;
}

function join(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' ');
}

function writeOwnHead(statement: Statement, digits: Digits): string {
  switch (statement.kind) {
    case 'run':
    case 'join':
    case 'blank':
      return `${statement.kind} ${writeText(statement.file)}`;
    case 'use method':
      return `method ${writeText(statement.file)}`;
    case 'method':
      return `method ${writeText(statement.title)}`;
    case 'columns':
    case 'reading':
      return statement.of === null ? statement.kind : `${statement.kind} of ${writeText(statement.of)}`;
    case 'programme':
      return 'programme';
    case 'given':
      return `given ${statement.name} in ${statement.unit.text}`;
    case 'step':
    case 'peak': {
      const sum = statement.sumOf === null ? '' : `= ${statement.sumOf.join(' + ')}`;
      return join(statement.kind, statement.name, sum, writePlace(statement.place, digits));
    }
    case 'glass':
    case 'onset':
      return join(statement.kind, statement.name, writePlace(statement.place, digits));
    case 'crossing': {
      const { level } = statement;
      const height =
        'amount' in level ? writeAmount(level.amount, digits) : `${writeNumber(level.percent)} % of ${level.of}`;
      return join('crossing', statement.name, statement.signal, '=', height, writePlace(statement.place, digits));
    }
    case 'residue': {
      const { at } = statement;
      if ('endOf' in at) return `residue ${statement.name} at end of ${writeSegment(at.endOf)}`;
      const segment = at.segment === null ? '' : `in ${writeSegment(at.segment)}`;
      return join('residue', statement.name, 'at', writeAmount(at.amount, digits), segment);
    }
    case 'let':
      return `let ${statement.name} = ${writeExpression(statement.expression, digits)}`;
    case 'require': {
      const { limit } = statement;
      const bound =
        limit.form === 'in'
          ? `in ${writeRange(limit.range, digits)}`
          : `${limit.form} ${writeExpression(limit.right, digits)}`;
      const name = statement.name === null ? '' : `as ${statement.name}`;
      return join('require', writeExpression(statement.left, digits), bound, name);
    }
    case 'note':
      return `note ${writeText(statement.text)}`;
    case 'allow': {
      const on = statement.on === null ? '' : `on ${statement.on}`;
      return join('allow', statement.code, on, `because ${writeText(statement.reason)}`);
    }
    case 'rule':
      return join(
        'rule',
        statement.code,
        writeAmount(statement.limit, digits),
        `because ${writeText(statement.reason)}`,
      );
    case 'approved':
      return `approved by ${writeText(statement.by)} on ${statement.date} digest ${statement.digest}`;
    case 'mask':
      return `mask ${writeRange(statement.range, digits)} because ${writeText(statement.reason)}`;
  }
}
