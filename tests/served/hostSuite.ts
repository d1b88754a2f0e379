import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ReportedTest } from '../editor/support/report';
import { launchBrowser } from './browser';
import { bundleSuite } from './bundleSuite';
import { copyExtension, type Entry } from './extensionFolder';
import { serve } from './serve';
import type { ServedEditor } from './servedEditor';
import { temporaryFolder } from './temporaryFolder';
import { workspace } from './workspaceFolder';

export interface HostRun {
  readonly tests: readonly ReportedTest[];
  /** Why the suite did not come to its end; null: it did. */
  readonly broken: string | null;
}

export interface HostSuite {
  readonly entry: Entry;
  /** Part of a file name; null: all files. */
  readonly only: string | null;
  /** Milliseconds from opening the page to the suite's end. */
  readonly limit: number;
  readonly say: (line: string) => void;
}

/** Runs the suite of `tests/editor` in the extension host of a served editor with one of the manifest's entries. */
export async function hostSuite(editor: ServedEditor, suite: HostSuite): Promise<HostRun> {
  const { folder, remove } = temporaryFolder('suite');
  const work = workspace('limestone');
  const lines: string[] = [];
  const keep = (line: string): void => {
    lines.push(line.slice(0, 500));
    if (/\[test\]/.test(line)) suite.say(line.replace(/^.*?\[test\] /, '  '));
  };
  const serving = await serve(editor, { tests: true, log: keep });
  try {
    const extension = join(folder, 'extension');
    copyExtension(extension, suite.entry);
    // Below the extension, or the workbench would not know which of its hosts is meant.
    await bundleSuite(join(extension, 'tests', 'index.js'), suite.entry, suite.only);
    const remote = (path: string): string => `vscode-remote://${serving.authority}${path}`;
    const address = serving.address(work.folder, [
      ['extensionDevelopmentPath', remote(extension)],
      ['extensionTestsPath', remote(join(extension, 'tests', 'index.js'))],
    ]);
    const code = await exitCode(address, suite.limit, keep);
    const report = join(extension, 'test-report.json');
    if (!existsSync(report)) {
      const said = code === null ? `no end within ${suite.limit / 1000} s` : `exit code ${code}`;
      return { tests: [], broken: `The suite did not start or did not end: ${said}.\n${lines.slice(-40).join('\n')}` };
    }
    const tests = JSON.parse(readFileSync(report, 'utf8')) as ReportedTest[];
    const failed = tests.some((test) => test.outcome === 'failed');
    if (tests.length === 0) return { tests, broken: 'The suite held no test.' };
    if ((code === 0) === failed)
      return { tests, broken: `The editor ended with ${code}, which is not what the tests say.` };
    return { tests, broken: null };
  } finally {
    serving.stop();
    work.remove();
    remove();
  }
}

/** Opens the workbench and waits for the exit code that it reports; null when time is up. */
async function exitCode(address: string, limit: number, log: (line: string) => void): Promise<number | null> {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    const ended = new Promise<number>((done) => {
      void page.exposeFunction('codeAutomationExit', (code: number) => done(code));
    });
    await page.exposeFunction('codeAutomationLog', (kind: string, words: readonly unknown[]) =>
      log(`${kind}: ${words.map(String).join(' ')}`),
    );
    page.on('pageerror', (error) => log(`page: ${error.message}`));
    await page.goto(address);
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<null>((done) => {
      timer = setTimeout(() => done(null), limit);
    });
    const code = await Promise.race([ended, late]);
    clearTimeout(timer);
    return code;
  } finally {
    await browser.close();
  }
}
