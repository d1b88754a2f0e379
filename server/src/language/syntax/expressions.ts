import type { Span } from '../../base/span';
import { isTemperaturePoint } from '../../quantities/convert';
import { nearest } from '../nearest';
import type { Amount, Expression, FunctionName } from '../model';
import { functionRecord, functions } from '../vocabulary/functions';
import { readAmount } from './amounts';
import { dateAt, matchAt, minusAt, nameAt, numberAt } from './characters';
import { replaceBy, type LineReader, type Read } from './reader';

/** An expression as read, before its parts have names: those count from the root. */
type Raw =
  | { readonly node: 'amount'; readonly span: Span; readonly amount: Amount }
  | { readonly node: 'formula'; readonly span: Span; readonly formula: string; readonly inner: Span }
  | { readonly node: 'call'; readonly span: Span; readonly name: FunctionName; readonly args: readonly Raw[] }
  | { readonly node: 'name'; readonly span: Span; readonly name: Read<string>; readonly quantity: Read<string> | null }
  | { readonly node: 'negate'; readonly span: Span; readonly of: Raw }
  | { readonly node: 'binary'; readonly span: Span; readonly op: Operator; readonly left: Raw; readonly right: Raw };

type Operator = '+' | '-' | '*' | '/' | '^';

/** More than any evaluation needs, and little enough that nothing that walks an expression can run out of stack. */
const mostParts = 200;

/**
 * Reads an expression and notes its parts below `token`: `expression/0/1` by child index, and for a name its pieces
 * `….name` and `….quantity`, for a formula its text `….formula`.
 */
export function readExpression(reader: LineReader, token: string): Expression | null {
  const outer = reader.inExpression;
  reader.inExpression = true;
  const raw = new ExpressionReader(reader).sum();
  reader.inExpression = outer;
  return raw === null ? null : placed(raw, token, reader);
}

class ExpressionReader {
  private parts = 0;

  constructor(private readonly reader: LineReader) {}

  sum(): Raw | null {
    return this.chain(['+', '-'], () => this.product());
  }

  private product(): Raw | null {
    return this.chain(['*', '/'], () => this.factor());
  }

  private chain(operators: readonly Operator[], operand: () => Raw | null): Raw | null {
    let left = operand();
    while (left !== null) {
      const op = this.operator(operators);
      if (op === null) return left;
      const right = operand();
      if (right === null) return null;
      left = { node: 'binary', span: { start: left.span.start, end: right.span.end }, op, left, right };
    }
    return null;
  }

  private operator(of: readonly Operator[]): Operator | null {
    const { reader } = this;
    // `+/-` belongs to a literal and is named as such by what comes next.
    const op = of.find((sign) => (sign === '-' ? reader.take(minusAt) !== null : reader.sign(sign)));
    return op ?? null;
  }

  private factor(): Raw | null {
    const { reader } = this;
    if (++this.parts > mostParts)
      return reader.expected(`an expression of at most ${mostParts} parts; use several \`let\``);
    reader.skipBlanks();
    const start = reader.at;
    if (reader.take(minusAt) !== null) return this.negated(start);
    const base = this.atom();
    if (base === null || !reader.sign('^')) return base;
    const exponent = this.factor();
    return exponent === null ? null : this.powered(base, exponent);
  }

  private powered(base: Raw, exponent: Raw): Raw {
    const span = { start: base.span.start, end: exponent.span.end };
    return { node: 'binary', span, op: '^', left: base, right: exponent };
  }

  /** A minus before a °C literal is part of it: -20 °C is a temperature, while minus a temperature is nothing. */
  private negated(start: number): Raw | null {
    const of = this.factor();
    if (of === null) return null;
    const span = { start, end: of.span.end };
    if (of.node !== 'amount' || of.amount.unit === null || !isTemperaturePoint(of.amount.unit)) {
      return { node: 'negate', span, of };
    }
    const { amount } = of;
    const text = amount.text.startsWith('-') ? amount.text.slice(1) : `-${amount.text}`;
    return { node: 'amount', span, amount: { ...amount, value: -amount.value, text } };
  }

  private atom(): Raw | null {
    const { reader } = this;
    if (reader.peek(dateAt)) {
      const date = reader.found();
      const whole = { start: reader.at, end: reader.at + 10 };
      const spaced = reader.text.slice(whole.start, whole.end).replace(/-/g, ' - ');
      return reader.fail(
        'unexpected-text',
        date.span.end > whole.end ? date.span : whole,
        'a date cannot stand in an expression',
        [replaceBy(whole, spaced)],
      );
    }
    if (reader.peek(numberAt) || reader.peek(/\.\d/y)) {
      const amount = readAmount(reader, 'unsigned', 'with ±');
      return amount === null ? null : { node: 'amount', span: amount.span, amount: amount.value };
    }
    if (reader.peek(/\(/y)) return this.bracket();
    if (reader.peek(/M\(/y)) return this.formula();
    return reader.peek(nameAt) ? this.named() : this.nothing();
  }

  private nothing(): null {
    return this.reader.expected(
      'a value: a result `First.loss`, a name, a number with its unit, `M(CaCO3)` or a function',
    );
  }

  private bracket(): Raw | null {
    const { reader } = this;
    const open = reader.at;
    reader.sign('(');
    const inner = this.sum();
    if (inner === null) return null;
    if (!reader.sign(')')) return reader.expected('a closing bracket');
    return { ...inner, span: { start: open, end: reader.last.end } };
  }

  /** The text up to the matching bracket, read by the reader of formulas. */
  private formula(): Raw | null {
    const { reader } = this;
    const start = reader.at;
    let depth = 1;
    let end = start + 2;
    for (; end < reader.end && depth > 0; end++) {
      if (reader.text[end] === '(') depth++;
      else if (reader.text[end] === ')') depth--;
    }
    if (depth > 0) {
      return reader.fail('bad-formula', { start, end: reader.end }, 'the formula has no closing bracket');
    }
    const span = reader.consume(end).span;
    const inner = { start: start + 2, end: end - 1 };
    return { node: 'formula', span, formula: reader.text.slice(inner.start, inner.end), inner };
  }

  private named(): Raw | null {
    const { reader } = this;
    const name = reader.name()!;
    if (reader.peek(/\(/y)) return this.call(name);
    if (!reader.peekDirectly(/\./y)) return { node: 'name', span: name.span, name, quantity: null };
    reader.sign('.');
    const quantity = reader.peekDirectly(nameAt) ? reader.name() : null;
    if (quantity === null)
      return reader.expected(`a quantity directly behind the point, such as \`${name.value}.loss\``);
    return { node: 'name', span: { start: name.span.start, end: quantity.span.end }, name, quantity };
  }

  private call(name: Read<string>): Raw | null {
    const { reader } = this;
    const record = functionRecord(name.value);
    if (record === null) return this.unknownFunction(name);
    reader.sign('(');
    const outer = reader.inCall;
    reader.inCall = true;
    const args: Raw[] = [];
    do {
      const arg = this.sum();
      if (arg === null) return null;
      args.push(arg);
    } while (reader.sign(','));
    reader.inCall = outer;
    if (!reader.sign(')')) return reader.expected('a comma or a closing bracket');
    const span = { start: name.span.start, end: reader.last.end };
    if (args.length < record.least || args.length > (record.most ?? Infinity)) {
      const due = record.most === record.least ? `${record.least}` : `at least ${record.least}`;
      return reader.fail(
        'unexpected-text',
        span,
        `\`${record.name}\` takes ${due} value${record.least === 1 ? '' : 's'}, here are ${args.length}`,
      );
    }
    return { node: 'call', span, name: record.name, args };
  }

  private unknownFunction(name: Read<string>): null {
    const { reader } = this;
    if (name.value === 'M') {
      const gap = {
        start: name.span.end,
        end: matchAt(/[ \t]*/y, reader.text, name.span.end)![0].length + name.span.end,
      };
      return reader.fail('unexpected-text', name.span, 'a molar mass is written without a blank: `M(CaCO3)`', [
        replaceBy({ start: name.span.start, end: gap.end }, 'M'),
      ]);
    }
    const meant = nearest(
      name.value,
      functions.map((record) => record.name),
    );
    const hint = meant.length > 0 ? `; \`${meant[0]!}\` is one` : '';
    return reader.fail(
      'unknown-name',
      name.span,
      `there is no function \`${name.value}\`${hint}`,
      meant.map((text) => replaceBy(name.span, text)),
    );
  }
}

/** Gives each part its token and notes where it stands. */
function placed(raw: Raw, token: string, reader: LineReader): Expression {
  reader.note(token, raw.span);
  switch (raw.node) {
    case 'amount':
      return { node: 'amount', amount: raw.amount, token };
    case 'formula':
      reader.note(`${token}.formula`, raw.inner);
      return { node: 'formula', formula: raw.formula, token };
    case 'name':
      reader.note(`${token}.name`, raw.name.span);
      if (raw.quantity !== null) reader.note(`${token}.quantity`, raw.quantity.span);
      return { node: 'name', name: raw.name.value, quantity: raw.quantity?.value ?? null, token };
    case 'call':
      return {
        node: 'call',
        name: raw.name,
        args: raw.args.map((arg, i) => placed(arg, `${token}/${i}`, reader)),
        token,
      };
    case 'negate':
      return { node: 'negate', of: placed(raw.of, `${token}/0`, reader), token };
    case 'binary':
      return {
        node: 'binary',
        op: raw.op,
        left: placed(raw.left, `${token}/0`, reader),
        right: placed(raw.right, `${token}/1`, reader),
        token,
      };
  }
}
