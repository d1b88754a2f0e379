import type { Line } from '../line';

export const output: readonly Line[] = [
  {
    id: 'H1',
    claim: 'Inline results of one line have at most 43 characters together with the default settings.',
    tests: [
      ['features/hints', 'are within 43 characters with the default settings, in every example, fresh and stale'],
      ['client/manifest', 'leave code lenses off and inline results on'],
    ],
  },
  {
    id: 'H2',
    claim:
      'Each kind of inline result has a setting, all have a command with a key; where the editor shows no inlay hints the status item helps once.',
    tests: [
      ['editor/settings', 'hide and show inline ${kind} alone'],
      ['editor/settings', 'hide and show all inline results with one command'],
      ['editor/settings', 'help in the status item, once, where the editor shows no inlay hints'],
      ['client/manifest', 'have a key to show or hide all inline results, in a gloss only'],
    ],
  },
  {
    id: 'H3',
    claim: 'Hover, inline result, table, command line and picture give the same number; copies give it in full.',
    tests: [
      ['features/hover', 'of ${name} is the one the command line prints'],
      ['features/hints', 'is the one the command line prints'],
      ['presentation/plot/plotState', 'prints every result as the other outputs do, and its number at full precision'],
      ['presentation/plot/plotState', 'marks temperatures with the very words of the ledger'],
      [
        'presentation/plot/ledgerTables',
        'are one line a row with as many tabs, the number at full precision beside the value',
      ],
      ['presentation/resultsJson', 'keep full precision, give minutes, and lines of the statement'],
    ],
  },
  {
    id: 'H4',
    claim: 'Code lenses are off until asked for, and no line changes its height or place while one types.',
    tests: [
      ['editor/settings', 'have no code lenses until a person wants them'],
      ['features/lenses', 'are off by default'],
      ['page/typing', 'types among inline results without a line ever changing its height or its place'],
    ],
  },
  {
    id: 'H5',
    claim: 'The old side of a diff editor has no inline results, no findings and no messages.',
    tests: [
      [
        'page/revisionBeside',
        'has the committed text and nothing in it: no results, no findings, no curves, no message',
      ],
      ['editor/files', 'has neither findings nor inline results nor an offer of curves, beside the text that has them'],
      ['client/manifest', 'are offered for a revision in a diff editor nowhere'],
    ],
  },
  {
    id: 'X1',
    claim: 'A picture of twice the pixels goes to the clipboard and is confirmed, or the reason is said.',
    tests: [
      [
        'page/webview/copies',
        'put a picture on the clipboard, twice as many pixels as it is wide, on white by default, and say so',
      ],
      ['page/webview/copies', 'say why there is none where the page has no clipboard'],
      ['client/session', 'hears of what was saved and copied, and why not'],
    ],
  },
  {
    id: 'X2',
    claim: 'The drawing is valid XML for two readers, with text as text, named fonts and nothing from elsewhere.',
    tests: [
      [
        'page/webview/copies',
        'save the drawing as XML that stands on its own, under the name of the run, the same twice',
      ],
      ['presentation/plot/figureSvg', 'is valid XML in every theme'],
      ['presentation/plot/figureSvg', 'is valid XML for another reader too'],
      [
        'presentation/plot/figureSvg',
        'needs nothing from elsewhere: references stay inside, fonts are named with a generic one behind',
      ],
      [
        'presentation/plot/figureSvg',
        'holds its words as text: lanes, direction, windows, marks, axis, caption with sample, mass, gas, rate, revision',
      ],
    ],
  },
  {
    id: 'X3',
    claim: 'Pictures are light on white unless dark, print, the colours of the editor or no background are chosen.',
    tests: [
      ['page/webview/copies', 'are in the colours chosen: dark, as in the editor, or without a background'],
      [
        'page/webview/copies',
        'put a picture on the clipboard, twice as many pixels as it is wide, on white by default, and say so',
      ],
      ['presentation/plot/figureSvg', 'has paper in the colour of its theme, or none'],
    ],
  },
  {
    id: 'X4',
    claim: 'Tables are copied as cells and HTML at once, as CSV and as Markdown; machines always read a decimal point.',
    tests: [
      ['page/webview/copies', 'put the table on the clipboard as cells and as a table at once, in the order shown'],
      ['presentation/plot/ledgerTables', 'are RFC 4180 as another reader takes it, with every cell as it was'],
      ['presentation/plot/ledgerTables', 'are a table in HTML whose text is text'],
      ['presentation/plot/ledgerTables', 'are a pipe table in Markdown, without columns that are empty'],
      ['presentation/tables', 'is read back by an independent reader (csv-parse, RFC 4180), whatever the fields hold'],
      ['architecture/sourceText', 'turns numbers into text in presentation and in the one formatter of messages only'],
    ],
  },
  {
    id: 'X5',
    claim: 'The same input gives the same bytes of an export.',
    tests: [
      ['presentation/plot/figureSvg', 'has the same bytes for the same input, and others for another'],
      [
        'page/webview/copies',
        'save the drawing as XML that stands on its own, under the name of the run, the same twice',
      ],
      ['cli/report', 'has the same bytes twice, and the day of issue from --date alone'],
      ['architecture/sourceText', 'knows no clock and no unseeded randomness on its pure floors'],
    ],
  },
  {
    id: 'Y1',
    claim:
      'No serious finding of an accessibility checker; each picture has a name, and a table says what is drawn and its age.',
    tests: [
      [
        'page/webview/access',
        'has no serious finding of axe, with a band selected, rows open and everything listed (${theme})',
      ],
      [
        'page/webview/access',
        'gives every lane a named picture, a summary, and the table what is drawn and how old it is',
      ],
    ],
  },
  {
    id: 'Y2',
    claim: 'Keys walk samples, parts and marks, and values are spoken when the walk has come to rest.',
    tests: [
      [
        'page/webview/access',
        'walks the samples by keys, changes the part, visits the marks, and speaks when it has come to rest',
      ],
      ['webview/cursor', 'walks from sample to sample by keys, and every step counts while an answer is out'],
    ],
  },
  {
    id: 'Y3',
    claim: 'Text has 4.5 to 1 and lines 3 to 1 in four themes by the colours computed, also right after a switch.',
    tests: [
      ['page/webview/access', 'shows text at 4.5 to 1 and lines at 3 to 1, by the colours computed (${theme})'],
      ['page/webview/access', 'follows a switch of theme at once, without a reload, on the canvas too'],
      ['page/opening', 'follows the theme of the editor without a reload (${theme})'],
    ],
  },
  {
    id: 'Y4',
    claim:
      'Nothing is told by colour alone, in view, legend and export, and all stands out for those who see fewer hues.',
    tests: [
      [
        'webview/colourBlind',
        "stand out without ${loss}: 3 to 1 in the four themes, whose hues are the editor's, and text at 4.5 to 1 in every export",
      ],
      [
        'webview/colourBlind',
        'are told from one another, 15 apart, but for warning and error, which differ in slant and words',
      ],
      ['webview/colour', 'are told apart without colour: no two of ten runs and a revision share dash and mark'],
      ['page/webview/curves', 'of up to ten other runs lie below, dashed, each with a name and a mark in the legend'],
      ['presentation/plot/figureSvg', 'tells runs laid over by dashes, in the picture and in the legend'],
      [
        'presentation/plot/figureSvg',
        'hatches windows with findings and where they overlap, errors and warnings by their own slant',
      ],
    ],
    missing:
      "The hues of warning and error are not told apart by all: in the light themes, whose hues are the editor's, they come as near as 4.7 in CIELAB without middle wavelengths. Slant and words tell them.",
  },
  {
    id: 'Y5',
    claim:
      'Nothing moves where that is unwanted; at 200 % and at 320 px every control is in reach, in the order seen, with a ring.',
    tests: [
      ['page/webview/access', 'keeps still where motion is unwanted'],
      ['page/webview/access', 'keeps every control in reach ${name}'],
      ['page/webview/access', 'is tabbed through as it is read, to the end and out again, with a ring that is seen'],
      ['page/webview/access', 'holds no one in a menu: Escape, Tab and a click elsewhere leave it'],
    ],
  },
  {
    id: 'Y6',
    claim:
      'Every word of client and view can be translated; files and machines have decimal points; the sign people see is a setting.',
    tests: [
      [
        'page/webview/translated',
        'has no word of its own left in English, with a statement selected, rows and lists open',
      ],
      [
        'page/webview/translated',
        'has none in its menus, the box of an edge, a refusal and the words of a lost connection',
      ],
      ['client/literals', 'are for the translator or for the log (${path})'],
      ['client/manifest', 'stand nowhere else: titles, descriptions and pictures in words are keys'],
    ],
    missing:
      'No setting for the decimal sign that people see, and the words of the language server (findings, hovers, names of quantities) are English in every language of the editor: neither is built.',
  },
];
