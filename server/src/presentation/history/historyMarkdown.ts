import { markdownTable, markdownText } from '../markdownTable';
import type { HistoryModel } from './model';
import { cellsOf, historyHeads, historyNotes, shownRevision } from './shownHistory';

/** One result through the revisions as Markdown: a table with a row a revision, newest first. */
export function historyMarkdown(model: HistoryModel): string {
  const table = markdownTable(
    historyHeads.map((header, c) => ({ header, align: c > 2 && c < 6 ? 'right' : 'left' })),
    model.rows.map((row) => cellsOf(shownRevision(row))),
  );
  const title = `**${markdownText(model.name)}** of ${markdownText(model.gloss)}, newest first`;
  // What is to be typed stays as it is written.
  const notes = historyNotes(model).map((note) =>
    note
      .split('`')
      .map((part, k) => (k % 2 === 1 ? `\`${part}\`` : markdownText(part)))
      .join(''),
  );
  return `${[title, '', ...table, '', notes.join(' ')].join('\n')}\n`;
}
