import type { Paint, Style } from '../presentation/paint';
import { unpainted } from '../presentation/paint';
import type { Terminal } from './terminal';

// SGR parameters of ECMA-48, 8.3.117.
const codes: Readonly<Record<Style, readonly [number, number]>> = {
  error: [31, 39],
  warning: [33, 39],
  note: [36, 39],
  good: [32, 39],
  strong: [1, 22],
  faint: [2, 22],
};

const coloured: Paint = (style, text) =>
  text === '' ? '' : `\u001b[${codes[style][0]}m${text}\u001b[${codes[style][1]}m`;

/**
 * Colour for a stream: never with a non-empty NO_COLOR, whatever else is set; always with a FORCE_COLOR other than `0`;
 * else on a terminal that is not `dumb`.
 */
export function paintFor(terminal: Terminal, isTerminal: boolean): Paint {
  const { NO_COLOR, FORCE_COLOR, TERM } = terminal.environment;
  if (NO_COLOR !== undefined && NO_COLOR !== '') return unpainted;
  if (FORCE_COLOR !== undefined && FORCE_COLOR !== '') return FORCE_COLOR === '0' ? unpainted : coloured;
  return isTerminal && TERM !== 'dumb' ? coloured : unpainted;
}
