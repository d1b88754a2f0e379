import type { Line } from '../line';

export const results: readonly Line[] = [
  {
    id: 'D1',
    claim:
      'Working copy, index, any revision, merge base and saved results are compared, each result with what became of it and why; text, JSON, Markdown and HTML come from one model; the exit code tells same, moved and error.',
    tests: [
      ['revisions/sides', "diff ${words.join(' ')} goes from ${from} to ${to}"],
      ['revisions/sides', 'with --merge-base what the other branch did meanwhile is no difference'],
      ['revisions/sides', 'hides what is within tolerance and says how many, and shows it when asked'],
      ['revisions/sides', 'two glosses are compared, and the same one with itself has not moved'],
      ['revisions/sides', 'a version of the program that is another is told apart from what was edited'],
      ['revisions/rows', 'what came, went or failed says so'],
      ['revisions/rows', 'takes floors by id or quantity and a bare fraction'],
      ['revisions/history', 'a replaced ${tag} file is the only cause of what moves'],
      ['revisions/history', '${tag} as ${format} is what the golden file says'],
      ['revisions/history', 'no change reads the same in text, Markdown and HTML, and is no move in JSON'],
      ['revisions/history', 'a revision or file that is not there ends with 2'],
    ],
  },
  {
    id: 'D2',
    claim:
      'Exit codes are 0, 1 and 2 as the help says; tolerances hold at zero, for tiny values, a change of sign or unit, no number and what is missing.',
    tests: [
      ['cli/documents', 'every command documents the exit codes 0 and 2, and 1 where it has one'],
      ['cli/check', 'exits with 0 where nothing stands at the limit asked for, and counts on the last line'],
      ['cli/check', 'exits with 1 on an error, marks its place in the line and names its code'],
      ['cli/commandLine', 'refuses ${what} with exit code 2, on standard error alone'],
      ['revisions/rows', 'from and to zero there is a difference but no relative one from zero'],
      ['revisions/rows', 'tiny values are not hidden by an absolute floor, their last bits are'],
      ['revisions/rows', 'a change of sign is a difference through zero, relative to the size before'],
      ['revisions/rows', 'milligrams and grams are compared in the new unit, milligrams and percent are not'],
      ['revisions/rows', 'a number that JSON cannot hold is read from a saved file as no value, never as NaN'],
      ['revisions/rows', 'what came, went or failed says so'],
    ],
  },
  {
    id: 'D3',
    claim:
      'In the editor results are compared with HEAD, the index, a branch, a tag, the merge base or a file, by keys alone and of the unsaved text; those of a hundred statements in less than 1 s.',
    tests: [
      ['page/compare', 'are those of a window that was typed and not saved, each opening its changed line'],
      [
        'lsp/compare',
        'take the text in the editor, not the file: an unsaved window moves its results and names its line',
      ],
      ['lsp/compare', 'are compared with the index, a tag, a branch and the last common commit, each with its label'],
      ['lsp/compare', 'are compared with saved results and with another gloss, the old text being the other gloss'],
      [
        'lsp/compare',
        'of a hundred results after one changed line are had from two evaluations, with no cause tried alone',
      ],
    ],
    benches: [['bench/revisions', 'unsaved text against HEAD, 100 results and their quantities']],
  },
  {
    id: 'D4',
    claim:
      'Two revisions lie over one another in the curves, named, with the difference; also where a run was renamed, came or went.',
    tests: [
      ['page/compare', 'are laid over one another in the curves, the revision named'],
      [
        'lsp/against',
        'says how far each result is from HEAD, and lays HEAD and the difference over the curves where asked',
      ],
      [
        'presentation/plot/plotState',
        'lays another revision over it, with the difference below its lane and in the ledger',
      ],
      [
        'lsp/compareMoved',
        'can be laid over the curves under the former name of a renamed gloss, and say why where there is none',
      ],
      [
        'lsp/compareMoved',
        'of a run whose data are gone cannot be computed, and the curves say why nothing is laid over them',
      ],
      ['lsp/compareMoved', 'of a new gloss are new, and its old text is not there'],
    ],
  },
  {
    id: 'D5',
    claim:
      'JSON and SARIF keep their schemas; standard output carries nothing else, in a terminal or not, whatever colour is asked for; NO_COLOR wins.',
    tests: [
      ['presentation/resultsJson', 'keep the committed schema in every state, with and without a run, with geometry'],
      ['cli/check', 'writes JSON that keeps its schema, CSV and Markdown'],
      ['cli/checkFormats', 'keeps the schema of SARIF 2.1.0, which refuses a level it does not know'],
      ['cli/results', 'writes one JSON object a gloss and line, whatever a terminal is asked to colour'],
      [
        'revisions/historyCommand',
        'colours the table alone, and writes nothing but JSON to standard output whatever is asked',
      ],
      ['cli/program', 'evaluates a small gloss and exits with its code, results and messages on their own streams'],
      ['cli/output', 'is turned on by FORCE_COLOR and off by NO_COLOR, which wins (no-color.org: set and not empty)'],
    ],
  },
  {
    id: 'D6',
    claim:
      'SARIF has paths from the root, marks no more than the finding, and knows it again when lines move; two runs that are uploaded show nothing twice.',
    tests: [
      [
        'cli/checkFormats',
        'marks the place of the finding and no more, relative to the root and escaped as an address',
      ],
      ['cli/checkFormats', 'knows a finding again when lines move, and tells two of one kind apart'],
    ],
    missing:
      'Two runs were uploaded nowhere: there is no service here that takes SARIF. What it would match them by, the fingerprints, is compared before and after lines moved.',
  },
  {
    id: 'D7',
    claim: 'Annotations are the worst ten first and the rest in a summary; any text is escaped.',
    tests: [
      ['cli/checkFormats', 'puts the worst ten first and the rest in one line'],
      ['cli/checkFormats', 'escapes any text so that one command stays one line and nothing of it is lost'],
    ],
  },
  {
    id: 'D8',
    claim:
      'A gloss is read from standard input as if it stood at a given place; patterns mean the same under every shell, and one that matches nothing ends with 2.',
    tests: [
      ['cli/results', 'reads a gloss from standard input as if it stood where --at says'],
      ['cli/newAndFormat', 'goes from standard input to standard output'],
      ['cli/program', 'finds files by pattern, which no shell expanded'],
      ['cli/inputs', 'is a path first, and a pattern only where there is no such path'],
      ['cli/inputs', 'takes patterns over folders, with braces, absolute, and climbing'],
      ['cli/inputs', 'is refused where nothing is found'],
    ],
    missing:
      'Not run under cmd or PowerShell: there is no Windows here. The program is started without a shell and expands patterns itself; the backslash that parts folders on Windows was tried nowhere.',
  },
  {
    id: 'D9',
    claim: 'The hook before a commit works in a fresh clone without a network, with blanks and any letters in names.',
    tests: [
      ['cli/hookOffline', 'lets glosses through against which nothing stands, whatever their names'],
      ['cli/hookOffline', 'keeps out the one that misses a requirement, and names it'],
      ['cli/hookOffline', 'would have noticed a connection'],
      ['cli/hookOffline', 'is built when the repository is installed from its source'],
    ],
  },
  {
    id: 'D10',
    claim: 'Nothing advises git to convert a text before it is compared.',
    tests: [
      [
        'architecture/repository',
        'advises no conversion of texts to be compared: git takes what that gives for the text itself',
      ],
    ],
  },
  {
    id: 'D11',
    claim: 'Documents, help and program name the same commands, options, formats, codes and schemas.',
    tests: [
      ['cli/documents', 'every option named beside the program exists'],
      ['cli/documents', 'every command named after the program exists'],
      ['cli/documents', 'the help of each command lists its formats, and each writes what no other does'],
      ['cli/documents', 'every code of a finding that the README names exists, and every file it points to'],
      ['cli/documents', 'every schema of a machine format goes with the program and is named in the README'],
      ['cli/commandLine', 'mentions in its help every option it takes, and none that it does not'],
      ['cli/commandLine', 'can read every example of its help'],
      ['cli/readme', 'names only scripts that exist, and paths that exist'],
    ],
  },
  {
    id: 'D12',
    claim: 'Results are the same on three systems within the stated tolerance; saved ones hold full precision.',
    tests: [
      ['revisions/sides', 'saved results hold full precision: read back they differ from the gloss by nothing at all'],
      ['presentation/resultsJson', 'keep full precision, give minutes, and lines of the statement'],
      [
        'revisions/rows',
        'a move of up to a twentieth of the combined uncertainty is within tolerance, more is a change',
      ],
    ],
    missing:
      'Computed on Linux alone: no machine with macOS or Windows is at hand. Golden files hold JSON to five digits, and the stated tolerance is tried on numbers, not between systems.',
  },
];
