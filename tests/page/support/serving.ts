import type { Browser } from 'playwright-core';
import { launchBrowser } from '../../served/browser';
import { copyExtension, type Entry } from '../../served/extensionFolder';
import { serve, type Serving } from '../../served/serve';
import { servedEditor } from '../../served/servedEditor';

const servings = new Map<Entry, Promise<Serving>>();
let browser: Promise<Browser> | null = null;

/** The editor with the extension installed, served once for all tests of a process. */
export function serving(entry: Entry): Promise<Serving> {
  let found = servings.get(entry);
  if (found === undefined) {
    found = servedEditor((line) => console.log(line)).then((editor) =>
      serve(editor, { install: (folder) => copyExtension(folder, entry) }),
    );
    servings.set(entry, found);
  }
  return found;
}

export function sharedBrowser(): Promise<Browser> {
  browser ??= launchBrowser();
  return browser;
}

export async function stopServing(): Promise<void> {
  await (await browser)?.close();
  for (const one of servings.values()) (await one).stop();
  servings.clear();
  browser = null;
}
