import { fix, type LineReader } from './reader';

/** Signs that other notations use, and what is written here. */
const otherSigns: Readonly<Record<string, readonly [meant: string, why: string]>> = {
  '×': ['*', 'a product is written with `*`'],
  '·': ['*', '`·` joins units only; a product is written with `*`'],
  '÷': ['/', 'a quotient is written with `/`'],
  ':': ['/', 'a quotient is written with `/`'],
};

/** A line ends where its statement or clause does: what is left is a finding, which takes the line with it. */
export function endOfLine(reader: LineReader): void {
  if (reader.problem !== null || reader.atEnd()) return;
  const found = reader.found();
  const other = otherSigns[found.value];
  if (other !== undefined) {
    reader.fail('unexpected-text', found.span, other[1], [
      fix(`Write \`${other[0]}\``, [{ span: found.span, text: other[0] }]),
    ]);
    return;
  }
  const rest = { start: reader.last.end, end: reader.end };
  reader.fail(
    'unexpected-text',
    found.span,
    `\`${found.value}\` does not belong here; the line is complete before it`,
    [fix('Remove the rest of the line', [{ span: rest, text: '' }])],
  );
}
