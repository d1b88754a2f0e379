import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ReportedTest } from '../editor/support/report';
import { hostSuite } from './hostSuite';
import { servedEditor } from './servedEditor';
import { temporaryFolder } from './temporaryFolder';

// npm run test:editor [-- host [PART OF A FILE NAME] | -- worker | -- page [OPTIONS OF MOCHA]]
const [chosen, ...rest] = process.argv.slice(2);
const chose = (name: string): boolean => chosen === undefined || chosen === name;
const minute = 60_000;

async function main(): Promise<void> {
  const say = (line: string): void => console.log(line);
  const editor = await servedEditor(say);
  const tests: ReportedTest[] = [];
  const broken: string[] = [];
  for (const [name, entry] of [
    ['host', 'main'],
    ['worker', 'browser'],
  ] as const) {
    if (!chose(name)) continue;
    say(entry === 'main' ? '\nIn the extension host' : "\nIn the extension host of a browser's worker");
    const run = await hostSuite(editor, { entry, only: rest[0] ?? null, limit: 8 * minute, say });
    tests.push(...run.tests);
    if (run.broken !== null) broken.push(run.broken);
  }
  if (chose('page')) {
    say('\nAt the page, as a person');
    const run = pageSuite(rest);
    tests.push(...run.tests);
    if (run.broken !== null) broken.push(run.broken);
  }
  for (const reason of broken) {
    say(`\n${reason}`);
    tests.push({ title: 'the suite runs to its end', file: '', outcome: 'failed', milliseconds: 0, message: reason });
  }
  const count = (outcome: ReportedTest['outcome']): number => tests.filter((t) => t.outcome === outcome).length;
  const report = { passed: count('passed'), failed: count('failed'), skipped: count('skipped'), tests };
  const file = process.env.GLOSS_TEST_REPORT ?? '';
  if (file !== '') writeFileSync(file, JSON.stringify(report));
  say(`\n${report.passed} passed, ${report.failed} failed, ${report.skipped} skipped`);
  process.exitCode = report.failed === 0 ? 0 : 1;
}

/** The tests of `tests/page`: mocha in a process of its own, for its own settings and report. */
function pageSuite(options: readonly string[]): {
  readonly tests: readonly ReportedTest[];
  readonly broken: string | null;
} {
  const { folder, remove } = temporaryFolder('page');
  try {
    const report = join(folder, 'report.json');
    const mocha = join('node_modules', 'mocha', 'bin', 'mocha.js');
    const run = spawnSync(process.execPath, [mocha, '--config', 'tests/page/.mocharc.json', ...options], {
      stdio: 'inherit',
      env: { ...process.env, GLOSS_TEST_REPORT: report },
      timeout: 14 * minute,
    });
    if (!existsSync(report))
      return { tests: [], broken: `The tests at the page did not come to their end (${run.status}).` };
    const { tests } = JSON.parse(readFileSync(report, 'utf8')) as { tests: readonly ReportedTest[] };
    const failed = tests.some((test) => test.outcome === 'failed');
    const broken =
      run.status === 0 || failed ? null : `The tests at the page ended with ${run.status}, none of them failed.`;
    return { tests, broken };
  } finally {
    remove();
  }
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
