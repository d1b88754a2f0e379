import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from '../../served/browser';

/** mm: what the page's own margins leave of a sheet (ISO 216 A4; ANSI/ASME Y14.1 A, "Letter": 8.5 in × 11 in). */
export const papers = {
  A4: { width: 210 - 30, height: 297 - 33 },
  Letter: { width: 215.9 - 30, height: 279.4 - 33 },
} as const;
export type Paper = keyof typeof papers;
export interface Sheet {
  readonly width: number;
  readonly height: number;
}

let browser: Promise<Browser> | null = null;

/** A page on its own, as a file that was opened. */
export async function opened(html: string): Promise<Page> {
  browser ??= launchBrowser();
  const page = await (await browser).newPage({ viewport: { width: 1000, height: 900 } });
  await page.setContent(html);
  return page;
}

export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = null;
}

export interface Broken {
  /** Table rows, figures, facts and headings that two sheets share. */
  readonly torn: readonly string[];
  /** Headings, captions and heads of tables with nothing of their own below them on the sheet. */
  readonly alone: readonly string[];
  readonly sheets: number;
}

/**
 * Where a printed page is broken, asked of the browser's own breaking: the sheets stand side by side as columns of their
 * size, and what is torn has a box in each of two.
 */
export async function broken(page: Page, { width, height }: Sheet): Promise<Broken> {
  await page.emulateMedia({ media: 'print' });
  const style = await page.addStyleTag({
    content: `html, body { margin: 0; padding: 0; } body { width: ${width}mm; max-width: none; }
      main { width: ${width}mm; height: ${height}mm; column-width: ${width}mm; column-gap: 40mm; column-fill: auto; }`,
  });
  const found = await page.evaluate(() => {
    const main = document.querySelector('main')!;
    const left = main.getBoundingClientRect().left;
    const step = parseFloat(getComputedStyle(main).columnWidth) + parseFloat(getComputedStyle(main).columnGap);
    const sheetsOf = (e: Element): number[] => [
      ...new Set(
        [...e.getClientRects()].filter((r) => r.height > 0).map((r) => Math.round((r.left - left) / step - 0.2)),
      ),
    ];
    const said = (e: Element): string =>
      `${e.tagName} ${(e.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 60)}`;
    const all = (selector: string): Element[] => [...main.querySelectorAll(selector)];
    const torn = all('tr, figure, dl > div, h1, h2, h3, caption').filter((e) => sheetsOf(e).length !== 1);
    const last = (e: Element): number => sheetsOf(e).at(-1) ?? -1;
    const first = (e: Element | null): number => (e === null ? -1 : (sheetsOf(e)[0] ?? -1));
    const alone = [
      ...all('h2, h3').filter((h) => first(h.nextElementSibling) !== last(h)),
      ...all('table').filter((t) => first(t.querySelector('tbody tr')) !== first(t.querySelector('thead tr'))),
      ...all('caption').filter((c) => first(c.parentElement!.querySelector('tbody tr')) !== last(c)),
    ];
    const sheets = 1 + Math.max(...all('*').flatMap(sheetsOf));
    return { torn: torn.map(said), alone: alone.map(said), sheets };
  });
  await style.evaluate((element) => (element as unknown as HTMLElement).remove());
  await page.emulateMedia({ media: null });
  return found;
}

/** Pages of a PDF: objects of the type Page (ISO 32000-1, 7.7.3.3), which Chromium leaves uncompressed. */
export function pagesOf(pdf: Buffer): number {
  return [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b(?!s)/g)].length;
}
