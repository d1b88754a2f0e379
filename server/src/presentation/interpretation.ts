import type { Interpretation } from '../runs/run';
import { plural } from './plural';

/** How a file was read, in lines: encoding and dialect, then what each column became. */
export function interpretationLines(interpretation: Interpretation): string[] {
  const i = interpretation;
  const around = [
    `${plural(i.skip, 'line') ?? 'no line'} before the header`,
    `${plural(i.header, 'header line') ?? 'no header line'}`,
    ...(i.footer === 0 ? [] : [`${plural(i.footer, 'line')!} after the data`]),
    ...(i.block === null ? [] : [`block ${i.block} of runs side by side`]),
  ];
  const irregular = i.irregularRows === 0 ? '' : `, ${i.irregularRows} of them irregular`;
  return [
    `${encodingName(i)}, ${lineEndNames[i.lineEnds] ?? i.lineEnds}; ${delimiterName(i.delimiter)}, decimal ${i.decimal === ',' ? 'comma' : 'point'}`,
    `${around.join(', ')}; ${i.rows} rows${irregular}`,
    ...i.columns.map((c) => {
      const header = c.header === '' ? 'without a header' : `"${c.header}"`;
      const unit = c.unitText === '' ? '' : ` in ${c.unitText}`;
      return `column ${c.number} ${header}${unit}: ${c.signal ?? 'not used'}`;
    }),
  ];
}

function encodingName(i: Interpretation): string {
  const name = encodingNames[i.encoding] ?? i.encoding;
  return i.bom ? `${name} with a byte order mark` : name;
}

const encodingNames: Readonly<Record<string, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16 little-endian',
  'utf-16be': 'UTF-16 big-endian',
  'latin-1': 'Latin-1',
};

const lineEndNames: Readonly<Record<string, string>> = {
  lf: 'lines end with LF',
  crlf: 'lines end with CR LF',
  cr: 'lines end with CR',
  mixed: 'mixed line ends',
  none: 'one line',
};

function delimiterName(delimiter: string | null): string {
  if (delimiter === null) return 'separated by blanks';
  return delimiterNames[delimiter] ?? `separated by "${delimiter}"`;
}

const delimiterNames: Readonly<Record<string, string>> = {
  ',': 'separated by commas',
  ';': 'separated by semicolons',
  '\t': 'separated by tabs',
  ' ': 'separated by blanks',
};
