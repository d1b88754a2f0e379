import type { Locator, Page } from 'playwright-core';

/**
 * Opens the editor's input line with a key (null: it is open already), types and takes the first row that holds the wanted
 * label: the list fills while the extension host starts, so the row is waited for.
 */
export async function pick(page: Page, key: string | null, typed: string, label: string): Promise<void> {
  for (let tries = 0; ; tries++) {
    try {
      return await picked(page, key, typed, label);
    } catch (error) {
      // The list closes when something else takes the focus, such as a text that is only now revealed.
      if (tries === 2 || key === null) throw error;
      await page.keyboard.press('Escape');
    }
  }
}

async function picked(page: Page, key: string | null, typed: string, label: string): Promise<void> {
  const box = page.locator('.quick-input-widget');
  const rows = box.locator('.quick-input-list .monaco-list-row');
  if (key === null) await rows.first().waitFor();
  else await openWith(page, key, box);
  // Else what is typed goes to the web view that had the focus.
  await box.locator('input').first().focus();
  await page.keyboard.type(typed);
  const row = rows.filter({ hasText: label }).first();
  await row.waitFor();
  await settled(rows);
  await row.click({ timeout: 10_000 });
  await row.waitFor({ state: 'hidden' });
}

/** Keys pressed while the workbench still loads are lost: they are pressed again. */
async function openWith(page: Page, key: string, box: Locator): Promise<void> {
  for (let tries = 0; ; tries++) {
    await page.keyboard.press(key);
    try {
      await box.waitFor({ state: 'visible', timeout: 2000 });
      return;
    } catch (error) {
      if (tries === 9) throw error;
    }
  }
}

/**
 * Waits until the list no longer changes: its rows are filled with other entries while it filters, and a row clicked
 * meanwhile is one that was not wanted ("Open All Changes" in place of "Open Changes").
 */
async function settled(rows: Locator): Promise<void> {
  let before: readonly string[] = [];
  for (;;) {
    const now = await rows.allTextContents();
    if (now.length > 0 && now.length === before.length && now.every((text, i) => text === before[i])) return;
    before = now;
    await rows.page().waitForTimeout(100);
  }
}
