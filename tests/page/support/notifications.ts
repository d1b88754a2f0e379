import type { Page } from 'playwright-core';

/** Texts of the notifications that the workbench shows from now on, also after it was loaded again. */
export async function watchNotifications(page: Page): Promise<readonly string[]> {
  const seen: string[] = [];
  await page.exposeFunction('notificationSeen', (text: string) => void seen.push(text));
  await page.addInitScript(() => {
    const told = new WeakSet<Element>();
    const look = (): void => {
      for (const message of document.querySelectorAll('.notifications-toasts .notification-list-item-message')) {
        const text = message.textContent?.trim() ?? '';
        if (text === '' || told.has(message)) continue;
        told.add(message);
        (window as unknown as { notificationSeen(text: string): void }).notificationSeen(text);
      }
    };
    new MutationObserver(look).observe(document, { childList: true, subtree: true });
  });
  return seen;
}
