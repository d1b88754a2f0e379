import type { Line } from '../line';

export const server: readonly Line[] = [
  {
    id: 'G1',
    claim:
      'Every request that the server offers is answered over the protocol, and with nothing for unknown documents and schemes.',
    tests: [
      ['lsp/everyRequest', 'is one of those asked here, and each of those is offered'],
      [
        'lsp/everyRequest',
        'is answered with nothing, and never with an error, for what is not open and for schemes nobody knows',
      ],
      ['lsp/everyRequest', 'is answered with something for a text that is open, but for code lenses, which are off'],
      ['lsp/navigation', 'keep paths right when files are about to move, in one edit'],
      ['lsp/navigation', 'find symbols of the workspace'],
      ['lsp/progress', 'called off stops the evaluation and ends; the next change computes again'],
    ],
  },
  {
    id: 'G2',
    claim:
      'No text makes a fault or a hang: torn ones and every prefix of the examples, read and evaluated, in bounded memory.',
    tests: [
      [
        'engine/anyText',
        'is evaluated to its end at every place where a text of the examples may stop, a letter more costing one evaluation at most',
      ],
      ['engine/anyText', 'is evaluated to its end, torn at random, and nothing of texts long gone is kept'],
      ['language/properties', 'any characters are read'],
      ['features/hover', 'survives every prefix of the examples'],
      ['features/completion', 'survives every prefix of the examples'],
    ],
    missing:
      'That no single text takes more than 1 s: no test is timed. What each costs is counted, and all 15,000 places together took 18 s of processor time on a busy machine.',
  },
  {
    id: 'G3',
    claim: 'Layout done twice is layout done once, changes no meaning and no digit.',
    tests: [
      ['language/properties', 'formatting is idempotent, keeps every character but blanks, and changes no meaning'],
      ['language/format', 'keeps numbers, units and texts byte for byte'],
      ['features/formatting', 'done twice changes nothing the second time, and changes no statement, for random texts'],
    ],
  },
  {
    id: 'G4',
    claim:
      'Names are renamed over several files or refused with a reason; paths follow renamed files and folders in one edit.',
    tests: [
      [
        'features/rename',
        'of a name of a method reaches the method and every gloss that uses it: overrides, sums, bases, `on`, `encloses`, expressions; no text, no comment, no other gloss',
      ],
      ['features/rename', 'where the new name is taken in the method, in the run, or in any other gloss of the method'],
      [
        'features/files',
        'follow a data file that is renamed, also in lines that are broken behind it; texts and comments stay',
      ],
      ['features/files', 'follow a folder, and stay as they are between files that move together'],
      ['lsp/navigation', 'keep paths right when files are about to move, in one edit'],
    ],
  },
  {
    id: 'G5',
    claim:
      'Every finding has a stable code, a page in the package, limits set in the text alone, and is allowed with a reason where it may be; unused allowances are told; a cut list begins with errors.',
    tests: [
      ['findings/page', 'are one a code, an index and the table of rules'],
      ['client/packaged', 'has each committed schema and a page for every finding, of the language and of the rules'],
      ['findings/table', 'has exactly one record for every code, in the order of the codes'],
      ['findings/examples', 'show ${record.code} and a near miss'],
      ['features/actions', 'makes every finding of the faulty examples acceptable whose record says so, and no other'],
      ['features/actions', 'removes what is ignored and what accepts nothing, and changes no number'],
      ['lsp/diagnostics', 'are cut at the number that the settings allow, errors first, then warnings, then notes'],
    ],
  },
  {
    id: 'G6',
    claim:
      'Each root has its own settings; files of no root, of no folder and of a root within a root find their place.',
    tests: [
      ['page/roots', 'has in each the settings of that folder, of a nested one its own'],
      ['page/roots', 'has results also for a gloss outside every root'],
      ['lsp/roots', 'have each their own settings'],
      ['lsp/roots', 'nested hold a file in the inner one, whatever their order'],
      ['lsp/roots', 'may be missing: one file alone is evaluated, and no gloss of a disk is searched'],
    ],
  },
  {
    id: 'G7',
    claim:
      'Positions are right behind every character, in UTF-16 and UTF-8, with every line end and a byte order mark.',
    tests: [
      [
        'features/positions',
        'right behind °, µ, raised digits, emoji, combining marks and other scripts are those of the protocol',
      ],
      ['features/positions', 'end lines at LF, CRLF and CR alike'],
      ['features/positions', 'count a BOM where the text of the client has one, while offsets do not'],
      ['lsp/openTexts', 'in UTF-8 reaches answers and changes'],
    ],
  },
  {
    id: 'G8',
    claim: 'The server serves any client over standard streams, and knows nothing of one editor.',
    tests: [
      ['cli/lsp', 'serves a plain client over standard input and output, and ends with 0 when it is told to'],
      ['cli/lsp', 'is started by the words that the README gives two other editors'],
      ['architecture/floors', 'hold: every file imports from lower floors and from the packages of its folder only'],
    ],
  },
];
