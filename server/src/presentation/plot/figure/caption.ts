import type { ViewState } from '../../../protocol/view';
import { dashesOf, type FigureColours } from '../palette';
import { laidOver } from './curves';
import { fontSize } from './layout';
import { line, roughWidth, text, wrapped } from './svg';

export const captionRow = 15;
const sampleLength = 34;

/** Sample, mass, gas, crucible and rates, the runs laid over, and the revision that is drawn. */
export function captionLines(state: ViewState, width: number, revision = revisionWords(state)): string[] {
  const sentences = [state.title, ...state.conditions, revision].filter((s) => s !== '');
  return wrapped(`${sentences.join('; ')}.`, fontSize - 1, width);
}

/** A picture that is not current says so. */
function revisionWords({ generation, freshness }: ViewState): string {
  const revision = `revision ${generation.revision}`;
  return freshness.state === 'current' ? revision : `${revision}, not current: ${freshness.text}`;
}

export function caption(lines: readonly string[], left: number, top: number, colours: FigureColours): string {
  return lines
    .map((words, i) =>
      text(left, top + (i + 1) * captionRow, words, { fill: colours.muted, 'font-size': fontSize - 1 }),
    )
    .join('');
}

interface Entry {
  readonly name: string;
  readonly dashes: readonly number[];
  readonly isOwn: boolean;
}

/** The run and what is laid over it, each with its dashes, on rows no wider than the picture. */
export function legendRows(state: ViewState, width: number): readonly (readonly Entry[])[] {
  const over = laidOver(state);
  if (over.length === 0) return [];
  const entries: Entry[] = [
    { name: state.title.split(' · ')[0], dashes: [], isOwn: true },
    ...over.map(({ name, of }, place) => ({ name, dashes: dashesOf(of, place), isOwn: false })),
  ];
  const rows: Entry[][] = [[]];
  let used = 0;
  for (const entry of entries) {
    const needs = entryWidth(entry);
    if (used > 0 && used + needs > width) {
      rows.push([]);
      used = 0;
    }
    rows[rows.length - 1].push(entry);
    used += needs;
  }
  return rows;
}

export function legend(rows: readonly (readonly Entry[])[], left: number, top: number, colours: FigureColours): string {
  return rows
    .flatMap((row, r) => {
      const y = top + r * captionRow + 10;
      let x = left;
      return row.map((entry) => {
        const stroke = entry.isOwn ? colours.ink : colours.muted;
        const style = { stroke, 'stroke-width': 1.4, 'stroke-dasharray': entry.dashes.join(' ') };
        const drawn = line(x, y - 4, x + sampleLength, y - 4, style);
        const words = text(x + sampleLength + 6, y, entry.name, { fill: colours.ink, 'font-size': fontSize - 1 });
        x += entryWidth(entry);
        return drawn + words;
      });
    })
    .join('');
}

function entryWidth({ name }: Entry): number {
  return sampleLength + 24 + roughWidth(name, fontSize - 1);
}
