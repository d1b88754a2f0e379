import { createRequire } from 'node:module';
import type { Context } from './context';
import { BadUsage, done } from './exitCodes';

/**
 * `thermogloss lsp`: the language server over standard input and output. It is a bundle of its own beside this one, asked for
 * by name at run time; it lives until its client closes the channel.
 */
export function languageServer({ typed }: Context): Promise<number> {
  if (typed.operands.length > 0) throw new BadUsage('lsp takes no file: its client names them');
  createRequire(__filename)('./server.js');
  return Promise.resolve(done);
}
