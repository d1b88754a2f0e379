/** One test, in the form that the report of all tests has. */
export interface ReportedTest {
  readonly title: string;
  readonly file: string;
  readonly outcome: 'passed' | 'failed' | 'skipped';
  readonly milliseconds: number;
  readonly message: string | null;
}

export function reportOf(
  test: Mocha.Test,
  outcome: ReportedTest['outcome'],
  message: string | null,
  entry: 'main' | 'browser',
): ReportedTest {
  const host = entry === 'browser' ? "in a browser's worker: " : 'in the editor: ';
  const file = test.file ?? test.parent?.file ?? '';
  return { title: host + test.fullTitle(), file, outcome, milliseconds: test.duration ?? 0, message };
}
