import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { launchBrowser } from '../served/browser';
import { copyExtension } from '../served/extensionFolder';
import { serve, type Serving } from '../served/serve';
import { servedEditor } from '../served/servedEditor';
import { workspace, type Workspace } from '../served/workspaceFolder';
import { pick } from './support/quickInput';
import { screenshotPath } from './support/screenshots';
import { webViewFrame } from './support/webViews';

describe('a folder that is not trusted', () => {
  let serving: Serving;
  let work: Workspace;
  let browser: Awaited<ReturnType<typeof launchBrowser>>;
  let page: Page;

  before(async () => {
    const editor = await servedEditor((line) => console.log(line));
    serving = await serve(editor, {
      install: (folder) => copyExtension(folder, 'main'),
      trust: true,
      settings: { 'security.workspace.trust.startupPrompt': 'never' },
    });
    work = workspace('limestone');
    browser = await launchBrowser();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(serving.address(work.folder));
    await page.locator('.monaco-workbench .explorer-folders-view').waitFor({ timeout: 60_000 });
  });
  after(async () => {
    await browser.close();
    serving.stop();
    work.remove();
  });

  it('is opened in restricted mode', async () => {
    await page.getByText('Restricted Mode').first().waitFor();
  });

  it('has its glosses computed and drawn all the same', async () => {
    await pick(page, 'Control+P', 'vq217-1.gloss', 'vq217-1.gloss');
    await page.locator('.statusbar-item', { hasText: /\d+ results/ }).waitFor({ timeout: 60_000 });
    await pick(page, 'F1', 'Thermogloss: Show Curves', 'Thermogloss: Show Curves Beside the Text');
    const frame = await webViewFrame(page, null);
    await frame.locator('#view[data-revision][data-freshness="current"]').waitFor({ timeout: 60_000 });
    await page.screenshot({ path: screenshotPath('restricted mode') });
  });

  it('starts no program but the language server, with nothing of the folder in what it is told', () => {
    // ps(1), POSIX: processes with their parents and arguments.
    const listed = spawnSync('ps', ['-eo', 'pid=,ppid=,args='], { encoding: 'utf8' }).stdout;
    const all = listed.split('\n').flatMap((line) => {
      const [, pid, parent, args] = /^ *(\d+) +(\d+) (.*)$/.exec(line) ?? [];
      return args === undefined ? [] : [{ pid: pid!, parent: parent!, args }];
    });
    const servers = all.filter((p) => p.args.includes('thermogloss.thermogloss') && p.args.includes('server.js'));
    const own = servers.filter((p) => /--node-ipc/.test(p.args));
    assert.ok(own.length >= 1);
    for (const { pid, args } of own) {
      assert.ok(!args.includes(work.folder), args);
      assert.deepEqual(
        all.filter((p) => p.parent === pid).map((p) => p.args),
        [],
      );
    }
  });
});
