import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { BadUsage } from './exitCodes';

/** How many folders above the one written to are searched for glosses that name the file. */
const levels = 4;

/**
 * Refuses to write results over what they come from: a gloss, the record of an approval, or a file that a gloss nearby names
 * (run, joined file, blank, method). `folders`: where else glosses of this call lie.
 */
export function refuseInput(target: string, shown: string, folders: readonly string[]): void {
  if (!existsSync(target)) return;
  const file = realpathSync(target);
  if (/\.gloss(?:\.approved\.json)?$/i.test(file))
    throw new BadUsage(`${shown} is a gloss or its record: not written over`);
  const near = [...folders];
  for (let folder = dirname(file), k = 0; k < levels; folder = dirname(folder), k++) near.push(folder);
  for (const folder of new Set(near)) {
    for (const gloss of glossesIn(folder)) {
      if (!namedIn(gloss).some((path) => existsSync(path) && realpathSync(path) === file)) continue;
      throw new BadUsage(`${shown} is named by ${gloss}: not written over`);
    }
  }
}

function glossesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.gloss'))
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}

/** Every quoted text of a gloss as a path: more than it names is no harm. */
function namedIn(gloss: string): string[] {
  try {
    return [...readFileSync(gloss, 'utf8').matchAll(/"([^"\n]+)"/g)].map(([, text]) => resolve(dirname(gloss), text));
  } catch {
    return [];
  }
}
