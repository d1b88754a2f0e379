import { writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import Mocha from 'mocha';
import { reasonFor } from './skip';

/** What `GLOSS_TEST_REPORT` names is written in this form when the run ends; `.ci/run` reads it. */
interface TestReport {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  readonly tests: readonly ReportedTest[];
}

interface ReportedTest {
  readonly title: string;
  readonly file: string;
  readonly outcome: 'passed' | 'failed' | 'skipped';
  readonly milliseconds: number;
  /** Why it was skipped, or how it failed. */
  readonly message: string | null;
}

/** A mark a test while it runs; then every failure in full, every skipped test with its reason, and the counts. */
class Reporter extends Mocha.reporters.Base {
  private readonly tests: ReportedTest[] = [];
  private readonly failed: { readonly test: Mocha.Test; readonly error: Error }[] = [];
  private column = 0;

  constructor(runner: Mocha.Runner, options: Mocha.MochaOptions) {
    super(runner, options);
    runner.on('pass', (test) => {
      this.add(test, 'passed', null);
      this.mark('.');
    });
    runner.on('fail', (test, error: Error) => {
      this.failed.push({ test, error });
      this.add(test, 'failed', String(error.message));
      this.mark('!');
    });
    runner.on('pending', (test) => {
      this.add(test, 'skipped', reasonFor(test) ?? (test.fn === undefined ? 'has no body' : 'no reason given'));
      this.mark('-');
    });
    runner.on('end', () => this.end());
  }

  private add(test: Mocha.Test, outcome: ReportedTest['outcome'], message: string | null): void {
    const file = relative(process.cwd(), test.file ?? test.parent?.file ?? '').replaceAll('\\', '/');
    this.tests.push({ title: test.fullTitle(), file, outcome, milliseconds: test.duration ?? 0, message });
  }

  private mark(sign: string): void {
    process.stdout.write(this.column++ % 100 === 0 ? `\n${sign}` : sign);
  }

  private end(): void {
    const lines: string[] = ['', ''];
    this.failed.forEach(({ test, error }, i) => lines.push(...failureLines(i + 1, test, error)));
    const skipped = this.tests.filter((t) => t.outcome === 'skipped');
    for (const reason of new Set(skipped.map((t) => t.message))) {
      const titles = skipped.filter((t) => t.message === reason).map((t) => t.title);
      lines.push(`skipped, ${reason ?? ''}:`, ...titles.map((t) => `  ${t}`), '');
    }
    const count = (outcome: ReportedTest['outcome']): number => this.tests.filter((t) => t.outcome === outcome).length;
    const report = { passed: count('passed'), failed: count('failed'), skipped: count('skipped'), tests: this.tests };
    lines.push(`${report.passed} passed, ${report.failed} failed, ${report.skipped} skipped`);
    process.stdout.write(`${lines.join('\n')}\n`);
    const file = process.env.GLOSS_TEST_REPORT;
    if (file !== undefined && file !== '') writeFileSync(file, JSON.stringify(report satisfies TestReport));
  }
}

function failureLines(number: number, test: Mocha.Test, error: Error): string[] {
  const { actual, expected } = error as { actual?: unknown; expected?: unknown };
  const differs = typeof actual === 'string' && typeof expected === 'string' && actual !== expected;
  const stack = (error.stack ?? '')
    .split('\n')
    .filter((line) => /^\s+at /.test(line) && !/node:|node_modules/.test(line));
  return [
    `FAILED ${number}: ${test.fullTitle()}`,
    ...String(error.message)
      .split('\n')
      .map((line) => `  ${line}`),
    ...(differs
      ? Mocha.reporters.Base.generateDiff(actual, expected)
          .split('\n')
          .map((line) => `  ${line}`)
      : []),
    ...stack.slice(0, 6),
    '',
  ];
}

// Mocha asks for the class itself, not for a default export.
module.exports = Reporter;
