import 'mocha/mocha';
import { extensions, Uri, workspace } from 'vscode';
import { entryInUse } from './entry';
import { reportOf, type ReportedTest } from './report';

/** One file of tests: its name in the report, and what loads it. */
export type SuiteFile = readonly [name: string, load: () => unknown];

/**
 * Runs files of tests in the extension host and leaves their report in the extension's folder, which is a copy made for
 * the run: a file can be written from either host, and the launcher finds it there.
 */
export async function runSuite(files: readonly SuiteFile[]): Promise<void> {
  mocha.setup({ ui: 'bdd', timeout: 60_000, reporter: Quiet });
  for (const [name, load] of files) {
    mocha.suite.emit('pre-require', globalThis, name, mocha);
    load();
  }
  const tests = await new Promise<readonly ReportedTest[]>((done) => {
    const seen: ReportedTest[] = [];
    // The page's own `run` reads options from an address, which is not to be had in Node.
    const runner = Mocha.prototype.run.call(mocha, () => done(seen));
    const add = (test: Mocha.Test, outcome: ReportedTest['outcome'], message: string | null): void => {
      seen.push(reportOf(test, outcome, message, entryInUse));
      console.log(`[test] ${outcome}: ${test.fullTitle()}${message === null ? '' : `\n${message}`}`);
    };
    runner.on('pass', (test) => add(test, 'passed', null));
    runner.on('pending', (test) => add(test, 'skipped', 'see the test'));
    runner.on('fail', (test, error: Error) => add(test, 'failed', shortStack(error)));
  });
  const extension = extensions.getExtension('thermogloss.thermogloss');
  if (extension === undefined) throw new Error('The extension is not in this editor.');
  const report = Uri.joinPath(extension.extensionUri, 'test-report.json');
  await workspace.fs.writeFile(report, new TextEncoder().encode(JSON.stringify(tests)));
  const failed = tests.filter((test) => test.outcome === 'failed').length;
  if (failed > 0) throw new Error(`${failed} failed`);
}

/** The launcher tells what happened. */
class Quiet extends Mocha.reporters.Base {}

/** What went wrong and the lines of the tests that it went through, without those of mocha and the editor. */
function shortStack(error: Error): string {
  const lines = (error.stack ?? String(error)).split('\n');
  return lines.filter((line) => !/^\s+at /.test(line) || /\bContext\d*\.|extension\/dist\//.test(line)).join('\n');
}
