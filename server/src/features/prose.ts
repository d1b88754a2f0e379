import type { MarkupContent } from 'vscode-languageserver-types';
import { markdownText } from '../presentation/markdownTable';
import type { TextFormat } from './abilities';

/**
 * A piece of what is told in a hover or beside a completion. Words of ours may hold `code` marks; what comes from a gloss or
 * a data file goes into `rows` or `plain` and is shown as it is, never read as Markdown.
 */
export type Block =
  | { readonly block: 'title'; readonly text: string }
  | { readonly block: 'prose'; readonly text: string }
  | { readonly block: 'plain'; readonly text: string }
  | { readonly block: 'code'; readonly text: string }
  | { readonly block: 'rows'; readonly rows: readonly (readonly [string, string])[] }
  | { readonly block: 'link'; readonly text: string; readonly uri: string };

export const title = (text: string): Block => ({ block: 'title', text });
export const prose = (text: string): Block => ({ block: 'prose', text });
export const plain = (text: string): Block => ({ block: 'plain', text });
export const code = (text: string): Block => ({ block: 'code', text });
export const link = (text: string, uri: string): Block => ({ block: 'link', text, uri });

/** Rows of a name and what it is; those without a value are left out. */
export function rows(...of: readonly (readonly [string, string | null])[]): Block {
  return {
    block: 'rows',
    rows: of.flatMap(([name, value]) => (value === null || value === '' ? [] : [[name, value]])),
  };
}

/** The blocks as the client reads them. */
export function markup(blocks: readonly Block[], format: TextFormat): MarkupContent {
  const shown = blocks.filter((b) => b.block !== 'rows' || b.rows.length > 0);
  const write = format === 'markdown' ? markdown : plainText;
  return { kind: format, value: shown.map(write).join('\n\n') };
}

function markdown(block: Block): string {
  switch (block.block) {
    case 'title':
      return `**${markdownText(block.text)}**`;
    case 'prose':
      return block.text;
    case 'plain':
      return markdownText(block.text);
    case 'code':
      return `\`\`\`gloss\n${block.text}\n\`\`\``;
    case 'rows':
      return block.rows.map(([name, value]) => `- ${markdownText(name)}: ${markdownText(value)}`).join('\n');
    case 'link':
      return `[${markdownText(block.text)}](${block.uri.replace(/[()\s]/g, encodeURIComponent)})`;
  }
}

function plainText(block: Block): string {
  switch (block.block) {
    case 'prose':
      return block.text.replace(/`([^`]*)`/g, '$1');
    case 'rows':
      return block.rows.map(([name, value]) => `${name}: ${value}`).join('\n');
    case 'link':
      return `${block.text}: ${block.uri}`;
    default:
      return block.text;
  }
}
