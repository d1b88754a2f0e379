import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

/** Debian's Chromium, or what the environment variable CHROMIUM names. */
export function chromiumPath(): string {
  const named = process.env.CHROMIUM ?? '';
  const path = named === '' ? '/usr/bin/chromium' : named;
  if (!existsSync(path)) {
    throw new Error(
      `No browser at ${path}: install Debian's chromium, or name one in the environment variable CHROMIUM.`,
    );
  }
  return path;
}

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: chromiumPath(),
    // Chromium refuses its sandbox to root; small machines have little shared memory.
    args: ['--disable-dev-shm-usage', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
  });
}
