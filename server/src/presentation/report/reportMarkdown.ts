import { markdownTable, markdownText } from '../markdownTable';
import type { ReportBlock, ReportInput, ReportOptions } from './model';
import { reportSections, reportTitle } from './report';

/** The report as Markdown. Pictures are in the HTML form; here their captions stand for them. */
export function reportMarkdown(inputs: readonly ReportInput[], options: ReportOptions): string {
  const lines = ['# Evaluation report', ''];
  for (const input of inputs) {
    lines.push(`## ${markdownText(reportTitle(input))}`, '');
    for (const { title, blocks } of reportSections(input, options)) {
      lines.push(`### ${markdownText(title)}`, '');
      for (const block of blocks) lines.push(...blockLines(block), '');
    }
  }
  lines.push('End of report.');
  return `${lines.join('\n')}\n`;
}

function blockLines(block: ReportBlock): string[] {
  switch (block.block) {
    case 'text':
      return [markdownText(block.text)];
    case 'list':
      return block.items.map((item) => `- ${markdownText(item)}`);
    case 'facts':
      return block.facts.map(({ label, value }) =>
        value === null ? `- not stated: ${markdownText(label)}` : `- ${markdownText(label)}: ${markdownText(value)}`,
      );
    case 'table':
      return [
        `${markdownText(block.name)}:`,
        '',
        ...markdownTable(
          block.headers.map((header, c) => ({ header, align: block.numbers.includes(c) ? 'right' : 'left' })),
          block.rows,
        ),
      ];
    case 'figure':
      return [`Figure (drawn in the HTML form): ${markdownText(block.figure.caption)}`];
  }
}
