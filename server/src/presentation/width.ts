// Two columns in a terminal: Unicode Standard Annex 11 (East Asian Width) classes W and F, the blocks that matter, and
// the emoji blocks. From the published table; a new block costs an alignment, never a wrong number.
const wide: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0x33ff],
  [0x3400, 0x4dbf],
  [0x4e00, 0x9fff],
  [0xa000, 0xa4cf],
  [0xa960, 0xa97f],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff01, 0xff60],
  [0xffe0, 0xffe6],
  [0x1f300, 0x1f64f],
  [0x1f680, 0x1f6ff],
  [0x1f900, 0x1f9ff],
  [0x20000, 0x3fffd],
];

const noWidth = /^[\p{Mn}\p{Me}\p{Cf}\p{Cc}]$/u;

/** Terminal columns that a text takes. Control characters count nothing: they are escaped before they are shown. */
export function displayWidth(text: string): number {
  let columns = 0;
  for (const character of text) {
    const code = character.codePointAt(0)!;
    if (code < 0x300) columns += code < 0x20 || (code >= 0x7f && code < 0xa0) || code === 0xad ? 0 : 1;
    else if (noWidth.test(character)) continue;
    else columns += wide.some(([low, high]) => code >= low && code <= high) ? 2 : 1;
  }
  return columns;
}

export function padEnd(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - displayWidth(text)));
}

export function padStart(text: string, columns: number): string {
  return ' '.repeat(Math.max(0, columns - displayWidth(text))) + text;
}

/** User text on one line of a terminal: control characters can neither move the cursor nor colour what follows. */
export function oneLine(text: string): string {
  return text.replace(/\s*\r?\n\s*/g, ' ').replace(/\p{Cc}/gu, (c) => (c === '\t' ? ' ' : '\uFFFD'));
}
