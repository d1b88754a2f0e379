import type { Line } from '../line';

export const platform: readonly Line[] = [
  {
    id: 'W1',
    claim:
      'In a browser, where there is no Node, a gloss has grammar, outline, findings, hovers, results and curves; the limits are stated.',
    tests: [
      ['editor/smoke', 'runs in the host that its manifest names an entry for'],
      ['editor/smoke', 'outlines a gloss, and says under the pointer what a name stands for'],
      ['editor/smoke', 'warns of windows that overlap, and not of those of the example'],
      ['editor/smoke', 'draws the curves of a gloss beside it'],
      ['lsp/worker', 'evaluates a gloss of a workspace that is no disk, to the number that Node computes'],
      [
        'client/manifest',
        'works in a folder that is not trusted, and says what does not work where files are elsewhere',
      ],
    ],
  },
  {
    id: 'W2',
    claim: 'On a remote machine curves are drawn, copied and saved, and no server listens on a port.',
    byHand:
      'Open the examples over each way to a remote machine that is at hand, draw curves, copy a picture, save a drawing. The served editor of the tests is one such way.',
    tests: [['client/imports', 'opens no connection: no module and no global of Node or the browser that could']],
  },
  {
    id: 'W3',
    claim: 'A folder that is not trusted has its results, and nothing of it is run.',
    tests: [
      ['page/restricted', 'has its glosses computed and drawn all the same'],
      ['page/restricted', 'starts no program but the language server, with nothing of the folder in what it is told'],
      ['architecture/sourceText', 'runs nothing that comes from a workspace'],
    ],
  },
  {
    id: 'W4',
    claim: 'The view loads nothing but its own files, its console stays clean, and hostile names are text.',
    tests: [
      ['client/page', 'loads nothing but its own script, style and pictures made in it'],
      ['client/page', 'has no script of its own in the text, no inline style and no unsafe source'],
      ['page/webview/safety', 'leaves the console clean through everything it can do'],
      ['page/webview/safety', 'shows hostile names of files, statements and messages as text'],
      ['page/reload', 'write nothing to the console of the browser but what the editor writes itself'],
    ],
  },
  {
    id: 'W5',
    claim: 'What is kept of a view is small, no view is kept while hidden, and twenty opened and closed leave nothing.',
    tests: [
      ['editor/curves', 'leave nothing behind after twenty times opened and closed'],
      ['client/webViews', 'are made anew whenever their tab is shown: none asks to be kept while hidden'],
      ['page/webview/kept', 'is told to the host after a pause, whole and small'],
      ['client/session', 'leaves nothing watched when it is closed'],
    ],
  },
  {
    id: 'W6',
    claim:
      'The extension wakes in less than 100 ms (p95), for its own language, commands and view alone; bundles keep their size.',
    tests: [
      ['client/manifest', 'wakes up for its language, its commands and its view, and at no start of the editor'],
      ['client/bundleSizes', 'weigh no more than was agreed, and are no empty files'],
    ],
    benches: [
      ['bench/activation', 'the client loaded and activated, p95'],
      ['bench/bundles', 'curves view'],
    ],
  },
  {
    id: 'W7',
    claim: 'The package holds what is listed, no sources, tests, maps or packages, and what a gallery asks for.',
    tests: [
      ['client/packaged', 'is the files listed here, the schemas, the pages and the examples, and nothing else'],
      ['client/packaged', 'has pictures in its pages that are PNG or GIF and are there, or come by https'],
      ['page/package', 'holds what the manifest lists, as the tests of the editor install it'],
      ['page/package', 'holds no tests, no sources, no maps and no packages'],
      ['client/manifest', 'has an icon of at least 128 by 128 pixels'],
      ['client/manifest', 'invents no address: no repository, home page or badge that nobody has named'],
    ],
  },
  {
    id: 'W8',
    claim: 'It runs in the oldest editor that the manifest allows, the present one and the next, on three systems.',
    byHand:
      'Run `npm run test:desktop -- VERSION` with the oldest, the present and the coming version on each system. The types in use are those of the oldest.',
    tests: [['client/oldestEditor', 'is typed against the oldest editor that the manifest allows']],
  },
  {
    id: 'W9',
    claim: 'Nothing connects to a network, and nothing is reported to anybody.',
    tests: [
      ['editor/server', 'is a process of its own that has no connection to any network'],
      ['client/imports', 'opens no connection: no module and no global of Node or the browser that could'],
      ['architecture/sourceText', 'opens no connection'],
      ['architecture/floors', 'load nothing that reaches a network'],
      ['webview/imports', 'makes no markup of text, runs no text, and opens no connection'],
    ],
  },
  {
    id: 'W10',
    claim:
      'One walkthrough of at most five steps with pictures in the colours of the theme, one icon in the title, one status item, no notification in an hour of work.',
    byHand: 'Follow the walkthrough in each theme; work for an hour and count what pops up.',
    tests: [
      [
        'client/manifest',
        'has one walkthrough of at most five steps, each with something to do and a picture in the colours of the theme',
      ],
      ['client/manifest', 'put one icon into the title of a gloss, and one into that of its curves'],
      ['page/typing', 'has shown no notification in all this'],
      ['page/typing', 'is shown the notes of a draft, which is asked for: the count above would have seen it'],
    ],
  },
];
