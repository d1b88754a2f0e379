import { createRequire } from 'node:module';
import type { DelimitedDialect, DelimitedRecords } from '../base/host';

type Parse = (text: string, dialect: DelimitedDialect) => DelimitedRecords;

let loaded: Parse | null = null;

/**
 * Loads the full parser on first use. It is asked for by name at run time, so that it stays a file of its own beside
 * the bundle (and beside this file where nothing is bundled): most files never need it, and loading it costs more than
 * reading them.
 */
export function loadDelimited(): Parse {
  if (loaded === null) {
    const module = createRequire(__filename)('./delimitedText.js') as typeof import('./delimitedText');
    loaded = module.parseDelimited;
  }
  return loaded;
}
