import { headerMeaning } from './headerWords';
import { unitWord, withoutBrackets, type UnitWord } from './unitWords';

/** A header taken apart: the name, and the unit where one is written with it. */
export interface HeaderCell {
  readonly text: string;
  readonly name: string;
  readonly unitText: string;
  readonly unit: UnitWord | null;
}

/**
 * Takes a header cell apart. `below` is the text of the same column in a row of units. Forms, in this order: a row of
 * units; nothing but a unit; a unit in brackets anywhere (`T (°C)`, `Heat flow [mW] endo up`); after a stroke (`T/°C`,
 * `DSC/(mW/mg)`); after a comma (`T, K`); after "in"; as the last word (`Weight %`, `temp_C`).
 */
export function headerCell(text: string, below = ''): HeaderCell {
  const trimmed = text.trim().replace(/\s+/g, ' ');
  const unitRow = below.trim();
  if (unitRow !== '' && unitRow !== '-') {
    return { text: trimmed, name: trimmed, unitText: withoutBrackets(unitRow), unit: unitWord(unitRow) };
  }
  const found = unitRow === '-' && trimmed !== '' ? { name: trimmed, unit: '1' } : split(trimmed);
  if (found === null) return { text: trimmed, name: trimmed, unitText: '', unit: null };
  return { text: trimmed, name: found.name.trim(), unitText: withoutBrackets(found.unit), unit: unitWord(found.unit) };
}

function split(text: string): { name: string; unit: string } | null {
  if (text === '') return null;
  // One letter alone is a symbol (`T`, `m`, `K`?) before it is a unit; longer texts may be just a unit.
  if (text.length > 1 && unitWord(text) !== null && !isNameToo(text)) return { name: '', unit: text };
  for (const group of bracketGroups(text)) {
    const unit = text.slice(group.from, group.to);
    if (unitWord(unit) !== null) {
      const before = text.slice(0, group.from).replace(/[\s/,]+$/, '');
      return { name: `${before} ${text.slice(group.to)}`, unit };
    }
  }
  for (let at = text.indexOf('/'); at > 0; at = text.indexOf('/', at + 1)) {
    if (unitWord(text.slice(at + 1)) !== null) return { name: text.slice(0, at), unit: text.slice(at + 1) };
  }
  const after = /^(.+?)(?:\s*,\s*|\s+in\s+|\s+en\s+|\s+w\s+)(.+)$/i.exec(text);
  if (after !== null && unitWord(after[2]) !== null) return { name: after[1], unit: after[2] };
  const last = /^(.+?)[\s_]+([^\s_]+)$/.exec(text) ?? /^(.+[^\s_])(%)$/.exec(text);
  if (last !== null && isLastWordUnit(last[1], last[2])) return { name: last[1], unit: last[2] };
  // A name that says what a plain number means.
  const plain = /\b(?:mass|weight)[\s_-]*(fraction|percent)\b/i.exec(text);
  return plain === null ? null : { name: text, unit: plain[1].toLowerCase() === 'fraction' ? '1' : '%' };
}

/** One letter at the end (`dish_h`) is a unit only after a name that is known. */
function isLastWordUnit(name: string, text: string): boolean {
  if (unitWord(text) === null || isNameToo(text)) return false;
  return text.length > 1 || text === '%' || headerMeaning(name.replaceAll('_', ' ')) !== null;
}

/** Words that are names of a column rather than its unit. */
function isNameToo(text: string): boolean {
  const trimmed = text.trim();
  return /^(?:fraction|mass ?fraction|1|grad|ma|na|a)$/i.test(trimmed) || /^.*\p{L}.*%$/u.test(trimmed);
}

/** Outermost bracket groups, the last first: a note may come before the unit. */
function bracketGroups(text: string): { from: number; to: number }[] {
  const groups: { from: number; to: number }[] = [];
  let depth = 0;
  let from = 0;
  for (let i = 0; i < text.length; i++) {
    if ('([{<'.includes(text[i])) {
      if (depth === 0) from = i;
      depth++;
    } else if (')]}>'.includes(text[i]) && depth > 0) {
      depth--;
      if (depth === 0) groups.push({ from, to: i + 1 });
    }
  }
  return groups.reverse();
}
