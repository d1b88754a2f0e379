import type { SemanticTokensLegend } from 'vscode-languageserver-types';

/** Types of the standard legend (LSP 3.17, `SemanticTokenTypes`): every theme knows them. */
export const tokenTypes = [
  'keyword',
  'variable',
  'property',
  'enumMember',
  'number',
  'type',
  'string',
  'comment',
  'operator',
  'function',
  'decorator',
] as const;

/** `definition`: where a name is given. `deprecated`: what is not computed, for its line is broken or fails by itself. */
export const tokenModifiers = ['definition', 'deprecated', 'defaultLibrary'] as const;

export type TokenType = (typeof tokenTypes)[number];
export type TokenModifier = (typeof tokenModifiers)[number];

export const legend: SemanticTokensLegend = { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] };
