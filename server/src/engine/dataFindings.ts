import type { Finding } from '../findings/finding';
import { makeFinding } from '../findings/makeFinding';
import { numberText } from '../findings/numberText';
import type { RawRun, ReadingProblem } from '../runs/run';

/** A file that could not be read, or not decided, as a finding on the statement that names it. */
export function readingFinding(problem: ReadingProblem, statement: string): Finding {
  const at = { statement, token: 'file' };
  switch (problem.problem) {
    case 'missing':
    case 'unreadable':
      return makeFinding('file-missing', at, `${capital(problem.message)}.`);
    case 'outside':
      return makeFinding('file-outside-workspace', at, `${capital(problem.message)}; it was not read.`);
    default: {
      const write = problem.write;
      if (write === null) return makeFinding('column-unclear', at, `${capital(problem.message)}.`);
      return makeFinding('column-unclear', at, `${capital(problem.message)}. Write:\n${write}`, {
        fixes: [
          {
            title: 'Write how the file is to be read',
            edits: [{ edit: 'insert-statement', after: statement, text: write }],
            safe: false,
          },
        ],
      });
    }
  }
}

/** Cells that held no number: counted, the first few by line and field. */
export function cellFindings(raw: RawRun, statement: string): Finding[] {
  const { count, first } = raw.badCells;
  if (count === 0) return [];
  const shown = first
    .slice(0, 3)
    .map((c) => `line ${c.line}, field ${c.field}: "${c.text}"`)
    .join('; ');
  const cells = Math.max(raw.points * raw.columns.length, 1);
  const share = `${count} of ${cells} cells (${numberText((100 * count) / cells, 2)} %)`;
  const more = count > 3 ? '; …' : '';
  return [
    makeFinding(
      'cell-not-a-number',
      { statement, token: 'file' },
      `${share} ${count === 1 ? 'holds' : 'hold'} no number and ${count === 1 ? 'was' : 'were'} left out: ${shown}${more}.`,
    ),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
