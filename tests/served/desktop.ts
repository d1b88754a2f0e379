import { runTests } from '@vscode/test-electron';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ReportedTest } from '../editor/support/report';
import { bundleSuite } from './bundleSuite';
import { copyExtension } from './extensionFolder';
import { temporaryFolder } from './temporaryFolder';
import { workspace } from './workspaceFolder';

// npm run test:desktop [-- VERSION]: the suite of tests/editor in a desktop editor, which is downloaded. Versions are those
// of the editor, `stable` or `insiders`; without one, the oldest that the manifest allows.
async function main(): Promise<void> {
  const { engines } = JSON.parse(readFileSync('package.json', 'utf8')) as { engines: { vscode: string } };
  const version = process.argv[2] ?? engines.vscode.replace(/^\D*/, '');
  const { folder, remove } = temporaryFolder('desktop');
  const work = workspace('limestone');
  const extension = join(folder, 'extension');
  const report = join(extension, 'test-report.json');
  const suite = join(extension, 'tests', 'index.js');
  try {
    copyExtension(extension, 'main');
    await bundleSuite(suite, 'main', null);
    const user = ['--user-data-dir', join(folder, 'user'), '--extensions-dir', join(folder, 'extensions')];
    let ended: unknown = null;
    try {
      await runTests({
        version,
        extensionDevelopmentPath: extension,
        extensionTestsPath: suite,
        launchArgs: [work.folder, ...user, '--disable-workspace-trust', '--skip-welcome', '--skip-release-notes'],
      });
    } catch (error) {
      ended = error;
    }
    if (!existsSync(report)) throw new Error(`The suite did not start or did not end: ${String(ended)}`);
    const tests = JSON.parse(readFileSync(report, 'utf8')) as ReportedTest[];
    const count = (outcome: ReportedTest['outcome']): number => tests.filter((t) => t.outcome === outcome).length;
    const counts = { passed: count('passed'), failed: count('failed'), skipped: count('skipped') };
    const file = process.env.GLOSS_TEST_REPORT ?? '';
    if (file !== '') writeFileSync(file, JSON.stringify({ ...counts, tests }));
    console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
    process.exitCode = counts.failed === 0 && counts.passed > 0 && ended === null ? 0 : 1;
  } finally {
    work.remove();
    remove();
  }
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
