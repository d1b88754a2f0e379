import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame, Page } from 'playwright-core';
import type { Entry } from '../../served/extensionFolder';
import { themeSettings, type Settings, type Theme } from '../../served/settings';
import { workspace, type Content } from '../../served/workspaceFolder';
import { pick } from './quickInput';
import { screenshotPath } from './screenshots';
import { watchNotifications } from './notifications';
import { serving, sharedBrowser, stopServing } from './serving';
import { webViewFrame } from './webViews';

export interface EditorOptions {
  /** A folder below `examples` (`''` for all), or files by name; a copy of it is opened. The limestone by default. */
  readonly workspace?: Content;
  /** A workspace file among them, which is opened in place of the folder. */
  readonly workspaceFile?: string;
  /** Light by default. */
  readonly theme?: Theme;
  /** 1280 × 800 by default. */
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly settings?: Settings;
  /** The manifest's entry that is started; that for Node by default. */
  readonly entry?: Entry;
}

export interface ConsoleMessage {
  /** As the browser names it: `error`, `warning`, `log`. */
  readonly kind: string;
  readonly text: string;
  /** Address of the script or page that it comes from. */
  readonly from: string;
}

/** A workbench in a browser, used as a person would. */
export interface Editor {
  readonly page: Page;
  /** The opened folder on disk. */
  readonly folder: string;
  /** What the page and all its frames wrote to the browser's console. */
  readonly messages: readonly ConsoleMessage[];
  /** Texts of the notifications that the editor has shown. */
  readonly notifications: readonly string[];
  /** Opens a file of the folder by its name, and waits until its text is shown. */
  openFile(path: string): Promise<void>;
  /** Runs a command of the palette by its title (`Thermogloss: …`). */
  runCommand(title: string): Promise<void>;
  /** Puts the caret of the focused text at a line and column, both from 1. */
  goTo(line: number, column?: number): Promise<void>;
  /** Types with a key press a character. */
  typeText(text: string): Promise<void>;
  /** Presses keys one after the other: `'Control+Z'`, `'Escape'`. */
  press(...keys: readonly string[]): Promise<void>;
  /** The lines that can be seen of the focused text, from the top, with what the extension shows inside them. */
  lines(): Promise<string[]>;
  /** A file of the folder as it stands on disk. */
  read(path: string): string;
  /** The page inside the web view that can be seen, of the title given or of any. */
  frameOf(title?: string): Promise<Frame>;
  /** Chooses a colour theme with the editor's own command. */
  setTheme(theme: Theme): Promise<void>;
  /** Settings of the opened folder from now on; an open workbench follows these files, not those of the person. */
  setSettings(values: Settings): void;
  /** Reloads the window, as the command of that name does. */
  reload(): Promise<void>;
  /** A picture of the whole page; its path. */
  screenshot(name: string): Promise<string>;
  close(): Promise<void>;
}

const open = new Set<Editor>();

/** Opens a workbench. Settings are read when it opens: of two that are open each keeps its own. */
export async function openEditor(options: EditorOptions = {}): Promise<Editor> {
  const served = await serving(options.entry ?? 'main');
  const work = workspace(options.workspace ?? 'limestone');
  served.settings({ ...themeSettings(options.theme ?? 'light'), ...options.settings });

  const browser = await sharedBrowser();
  const context = await browser.newContext({
    viewport: options.viewport ?? { width: 1280, height: 800 },
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const page = await context.newPage();
  const messages: ConsoleMessage[] = [];
  page.on('console', (m) => messages.push({ kind: m.type(), text: m.text(), from: m.location().url }));
  page.on('pageerror', (error) => messages.push({ kind: 'error', text: error.message, from: page.url() }));

  const notifications = await watchNotifications(page);

  const editor: Editor = {
    page,
    notifications,
    folder: work.folder,
    messages,
    async openFile(path) {
      const name = path.split('/').at(-1)!;
      await pick(page, 'Control+P', path, name);
      await page.locator('.tab.active', { hasText: name }).first().waitFor();
      await page.locator(`${focusedText} .view-line`).first().waitFor();
    },
    async runCommand(title) {
      await pick(page, 'F1', title, title);
    },
    async goTo(line, column = 1) {
      await page.keyboard.press('Control+G');
      await page.locator('.quick-input-widget').waitFor({ state: 'visible' });
      await page.keyboard.type(`${line}:${column}`);
      await page.keyboard.press('Enter');
      await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    },
    typeText: (text) => page.keyboard.type(text, { delay: 20 }),
    async press(...keys) {
      for (const key of keys) await page.keyboard.press(key);
    },
    lines: () => shownLines(page),
    read: (path) => readFileSync(join(work.folder, path), 'utf8'),
    frameOf: (title) => webViewFrame(page, title ?? null),
    async setTheme(theme) {
      await editor.runCommand('Preferences: Color Theme');
      await pick(page, null, themeLabel[theme], themeLabel[theme]);
      await page.locator(`.monaco-workbench.${themeClass[theme]}`).waitFor();
    },
    setSettings(values) {
      mkdirSync(join(work.folder, '.vscode'), { recursive: true });
      writeFileSync(join(work.folder, '.vscode', 'settings.json'), JSON.stringify(values));
    },
    async reload() {
      await page.reload();
      await shown(page);
    },
    async screenshot(name) {
      const path = screenshotPath(name);
      await page.screenshot({ path });
      return path;
    },
    async close() {
      open.delete(editor);
      await context.close();
      work.remove();
    },
  };
  open.add(editor);
  await page.goto(served.address(join(work.folder, options.workspaceFile ?? '')));
  // Seen once in many starts: the workbench itself stays empty. Nothing of the extension runs before it is there.
  await shown(page, 30_000).catch(async () => {
    console.log('\nthe workbench stayed empty, its page is loaded once more');
    await editor.reload();
  });
  await page.locator(`.monaco-workbench.${themeClass[options.theme ?? 'light']}`).waitFor();
  return editor;
}

const focusedText = '.editor-group-container.active .editor-instance .monaco-editor';

const themeClass: Readonly<Record<Theme, string>> = {
  light: 'vs',
  dark: 'vs-dark',
  'high contrast': 'hc-black',
  'high contrast light': 'hc-light',
};

/** As the list of themes names them. */
const themeLabel: Readonly<Record<Theme, string>> = {
  light: 'Light Modern',
  dark: 'Dark Modern',
  'high contrast': 'Dark High Contrast',
  'high contrast light': 'Light High Contrast',
};

async function shown(page: Page, timeout = 60_000): Promise<void> {
  await page.locator('.monaco-workbench .explorer-folders-view').waitFor({ timeout });
}

async function shownLines(page: Page): Promise<string[]> {
  const lines = await page.locator(`${focusedText} .view-lines .view-line`).evaluateAll((found) =>
    found.map((line) => ({
      top: (line as HTMLElement).offsetTop,
      // The editor draws spaces as spaces that do not break.
      text: (line.textContent ?? '').replaceAll('\u00a0', ' '),
    })),
  );
  return lines.sort((a, b) => a.top - b.top).map((line) => line.text);
}

// A test that failed leaves a picture of what it saw.
afterEach(async function () {
  if (this.currentTest?.state !== 'failed') return;
  for (const editor of open) console.log(`\nseen at the end: ${await editor.screenshot(this.currentTest.fullTitle())}`);
});

after(async () => {
  for (const editor of [...open]) await editor.close();
  await stopServing();
});
