import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { curvesPage } from '../../../client/src/curves/page';
import type { FromView, ToView } from '../../../server/src/protocol/messages';
import type { ViewState } from '../../../server/src/protocol/view';
import { launchBrowser } from '../../served/browser';
import type { Scenario } from './fake/scenario';
import { themes, type ThemeName } from './fake/themes';

// Never reached: every request to it is answered here.
const host = ['https:', '', 'view.test'].join('/');

export interface FakePageOptions {
  readonly scenario?: Partial<Scenario>;
  readonly theme?: ThemeName;
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly bodyClass?: string;
  /** Words of a translation by their keys. */
  readonly words?: Readonly<Record<string, string>>;
}

/** The built view in a browser, under the client's own page and content policy, with an invented host. */
export interface FakePage {
  readonly page: Page;
  /** Everything the browser's console said, and errors of scripts. */
  readonly messages: readonly string[];
  posted(type?: FromView['type']): Promise<FromView[]>;
  send(message: ToView): Promise<void>;
  update(changes: Partial<ViewState>): Promise<void>;
  /** Waits until the picture of the newest revision is drawn with its own samples. */
  drawn(): Promise<void>;
  theme(name: ThemeName): Promise<void>;
  close(): Promise<void>;
}

let browser: Promise<Browser> | null = null;
let script: Promise<string> | null = null;

/** The fake host as one script for the page. */
function hostScript(): Promise<string> {
  script ??= build({
    entryPoints: ['tests/page/webview/fake/host.ts'],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
  }).then((built) => built.outputFiles[0].text);
  return script;
}

export async function openFake(options: FakePageOptions = {}): Promise<FakePage> {
  browser ??= launchBrowser();
  const context: BrowserContext = await (
    await browser
  ).newContext({
    viewport: options.viewport ?? { width: 1100, height: 900 },
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const page = await context.newPage();
  const messages: string[] = [];
  page.on('console', (m) => messages.push(`${m.type()}: ${m.text()}`));
  page.on('pageerror', (error) => messages.push(`fault: ${error.message}`));
  const html = curvesPage({
    cspSource: host,
    nonce: 'fixed',
    script: `${host}/webview.js`,
    style: `${host}/webview.css`,
    language: 'en',
    title: 'Curves',
    words: options.words ?? null,
  });
  await page.route(`${host}/**`, async (route) => {
    const name = new URL(route.request().url()).pathname;
    const served: Readonly<Record<string, readonly [string, string]>> = {
      '/': ['text/html', html],
      '/webview.js': ['text/javascript', readFileSync('dist/webview.js', 'utf8')],
      '/webview.css': ['text/css', readFileSync('dist/webview.css', 'utf8')],
    };
    const found = served[name];
    if (found === undefined) await route.fulfill({ status: 404, body: '' });
    else await route.fulfill({ contentType: `${found[0]}; charset=utf-8`, body: found[1] });
  });
  await page.addInitScript(`window.fakeScenario = ${JSON.stringify(options.scenario ?? {})};`);
  await page.addInitScript(themeScript(options.theme ?? 'vscode-light', options.bodyClass ?? ''));
  await page.addInitScript({ content: await hostScript() });
  await page.goto(`${host}/`);
  const drawn = async (): Promise<void> => {
    await page.waitForFunction(() => {
      const { generation, lanes } = window.fake.state;
      const root = document.querySelector<HTMLElement>('.sheet');
      return lanes.length === 0 || root?.dataset.revision === String(generation.revision);
    });
    // What was decided in this frame is on the screen after the next.
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  };
  await page.locator('.sheet').waitFor();
  return {
    page,
    messages,
    posted: (type) =>
      page.evaluate((wanted) => window.fake.posted.filter((m) => wanted === null || m.type === wanted), type ?? null),
    send: (message) => page.evaluate((m) => window.fake.send(m), message),
    update: (changes) => page.evaluate((c) => window.fake.update(c), changes),
    drawn,
    theme: async (name) => {
      await page.evaluate(themeScript(name, options.bodyClass ?? ''));
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    },
    close: () => context.close(),
  };
}

export async function closeBrowser(): Promise<void> {
  await (await browser)?.close();
  browser = null;
}

/** Sets a theme as the editor does: variables on the document's element, class and kind on the body. */
function themeScript(name: ThemeName, more: string): string {
  const colours = JSON.stringify(themes[name]);
  return `(() => {
    const put = () => {
      for (const [key, value] of Object.entries(${colours})) document.documentElement.style.setProperty('--vscode-' + key, value);
      document.documentElement.style.setProperty('--vscode-font-family', 'system-ui, "DejaVu Sans", sans-serif');
      document.documentElement.style.setProperty('--vscode-font-size', '13px');
      document.body.className = ${JSON.stringify(`${name}${name === 'vscode-high-contrast-light' ? ' vscode-high-contrast' : ''} ${more}`.trim())};
      document.body.dataset.vscodeThemeKind = ${JSON.stringify(name)};
    };
    if (document.body === null) document.addEventListener('DOMContentLoaded', put, { once: true }); else put();
  })();`;
}
