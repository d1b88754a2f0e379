import { markdownTable, markdownText } from '../markdownTable';
import type { DiffModel } from './model';
import { moved, shownGloss, summaryLine, type ShowOptions } from './shownRows';

/** A comment on a forge holds 65,536 characters; this leaves room for what is put around it. */
const mostCharacters = 60_000;

/** A comparison as Markdown for a review: one line where nothing moved, else a table a gloss, cut before it is too long. */
export function diffMarkdown(model: DiffModel, options: ShowOptions): string {
  const head = `**${summaryLine(model)}** From ${markdownText(model.from)} to ${markdownText(model.to)}.`;
  let text = `${head}\n`;
  const shown = model.glosses.filter((g) => moved(g) || options.within);
  for (const [index, gloss] of shown.entries()) {
    const { title, remarks, rows, verdicts, hidden } = shownGloss(gloss, options);
    const lines = ['', `### ${markdownText(title)}`, ''];
    for (const remark of remarks) lines.push(`- ${markdownText(remark)}`);
    if (remarks.length > 0) lines.push('');
    if (rows.length > 0) {
      lines.push(
        ...markdownTable(
          ['result', 'before', 'now', 'difference', 'of it', 'what moved it'].map((header, c) => ({
            header,
            align: c > 0 && c < 5 ? ('right' as const) : ('left' as const),
          })),
          rows.map((r) => [r.result, r.old, r.new, r.difference, r.relative, r.cause || r.status]),
        ),
        '',
      );
    }
    for (const v of verdicts) {
      const change = v.old === '' || v.new === '' ? v.old || v.new : `${v.old} → ${v.new}`;
      lines.push(`- ${markdownText(`${v.label}: ${change}${v.cause === '' ? '' : ` (${v.cause})`}`)}`);
    }
    if (hidden !== null) {
      if (lines.at(-1) !== '') lines.push('');
      lines.push(`${markdownText(hidden)}.`);
    }
    const block = `${lines.join('\n')}\n`;
    if (text.length + block.length > mostCharacters) {
      return `${text}\n${shown.length - index} further glosses moved; the whole comparison is longer than a comment may be.\n`;
    }
    text += block;
  }
  return text;
}
