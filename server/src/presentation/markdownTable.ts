export interface MarkdownColumn {
  readonly header: string;
  readonly align: 'left' | 'right';
}

/** Lines of a pipe table; cells are plain text and escaped here. */
export function markdownTable(columns: readonly MarkdownColumn[], rows: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.map(markdownText).join(' | ')} |`;
  return [
    line(columns.map((c) => c.header)),
    `| ${columns.map((c) => (c.align === 'right' ? '---:' : '---')).join(' | ')} |`,
    ...rows.map(line),
  ];
}

/** Plain text that Markdown shows as it is, on one line. */
export function markdownText(text: string): string {
  return text.replace(/\s*\r?\n\s*/g, ' ').replace(/[\\`*<|[\]~^]/g, (c) => (c === '<' ? '&lt;' : `\\${c}`));
}
