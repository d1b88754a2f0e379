import type { Line } from '../line';

export const freshness: readonly Line[] = [
  {
    id: 'L1',
    claim: 'Typing is as quick with the curves open as without, on a run of 100,000 rows: p95 at most 5 ms longer.',
    missing:
      'Measured at the page, drawn by software on two busy processors (100,001 rows, six times 60 keys): p95 386, 448 and 1281 ms with the curves closed, 556, 534 and 506 ms with them open. The scatter is a hundred times what is looked for: to be measured where a graphics card draws.',
  },
  {
    id: 'L2',
    claim:
      'After the last key curves and inline results are of that very version, within 300 ms on a small run and 1 s on 100,000 rows; 1000 random bursts never end on an older one.',
    tests: [
      [
        'lsp/bursts',
        '1000 of them at random leave curves and inline results of the last version, and no older picture is told',
      ],
      [
        'page/webview/curves',
        'are those of the newest state after any number of them, and end at the last size of the window',
      ],
    ],
    benches: [['bench/overStdio', '200,000 rows: from a change to diagnostics and picture, beyond ${debounce} ms']],
  },
  {
    id: 'L3',
    claim: 'A new version calls off the evaluation of the older one, whose result is never published.',
    tests: [
      ['lsp/evaluations', 'are called off by each new version, and one that ends late all the same is never published'],
      ['engine/engine', 'a cancelled evaluation stops and a later one succeeds'],
    ],
  },
  {
    id: 'L4',
    claim: 'Findings wait 100 to 200 ms after the last key, and each report carries a version or a result id.',
    tests: [
      ['lsp/evaluations', 'begin one pause of 100 to 200 ms after the last change, whatever came before it'],
      ['lsp/diagnostics', 'are pushed with the version they belong to, with code, page and related places'],
      ['lsp/diagnostics', 'are pulled with a result id, unchanged while nothing changed, empty for what is not open'],
    ],
  },
  {
    id: 'L5',
    claim: 'Results are computed on typing, on saving or by hand, as the setting says from the moment it is changed.',
    tests: [
      ['editor/settings', 'say when results are computed, from the moment they are changed'],
      ['editor/settings', 'let a person ask for results where they are computed by hand only'],
      ['editor/smoke', 'shows results in the text that agree with what was put into the example within 3 u'],
    ],
  },
  {
    id: 'L6',
    claim:
      'Computing for more than 200 ms is said in words with a sign; after a failure the last good curves stay, told by the revision they were drawn as, with a link to the first error; no canvas is ever emptied.',
    tests: [
      ['webview/timing', 'never say computing where it took less than 200 ms'],
      ['webview/timing', 'say computing after 200 ms, also where states keep coming'],
      ['page/webview/fresh', 'keeps the last good curves under an error, which it names and links'],
      [
        'page/webview/fresh',
        'never leaves an empty canvas between abscissae, units and zooms, however slow the samples are',
      ],
      [
        'page/webview/fresh',
        'is said in words with a sign, and the number drawn is that of the state whose samples are on the canvas',
      ],
      [
        'lsp/views',
        'keeps the last good picture while a line it shows is broken, says of which revision it is and where the error is',
      ],
      ['page/journey', 'a broken line leaves the last good picture, says so in words and links the line'],
    ],
  },
  {
    id: 'L7',
    claim: 'Inline results of an older text stay and are marked as such; the hover says why.',
    tests: [
      ['features/hints', 'stay after a change, on the lines as they are now, and say that they are stale'],
      ['features/hover', 'tells the age of what is shown after the text has changed, in words and by the setting'],
    ],
  },
  {
    id: 'L8',
    claim:
      'A data file that is changed, replaced or deleted outside the editor changes the results within 1 s; a missing one is a finding.',
    tests: [
      ['editor/files', 'that go are a finding, and none any more when they are back'],
      ['editor/files', 'that lie outside every folder of the workspace are watched too'],
      ['lsp/navigation', 'that change are read anew, and one that appears is no longer missing'],
      [
        'client/files',
        'that come in one go are told once, a replaced file as changed (LSP 3.17: created 1, changed 2, deleted 3)',
      ],
      ['engine/engine', 'a missing data file is a finding at its name, and nothing is thrown'],
    ],
    benches: [['bench/overStdio', '200,000 rows replaced on disk: from the word of it to the new picture']],
  },
  {
    id: 'L9',
    claim:
      'A server that is killed is replaced, nothing shown goes away before there are new results, the loss is told once with a way to the log; a command starts the server anew and drops old findings.',
    tests: [
      ['editor/server', 'that is killed is replaced, and nothing that is shown goes away meanwhile'],
      ['editor/server', 'that is lost again and again is told of once, with a button that shows the log'],
      ['editor/server', 'that is restarted by its command starts from nothing: old findings go, and come back with it'],
      [
        'client/lostServer',
        'is replaced when it is killed, and the new one finds in the edited text what the old one would have',
      ],
    ],
  },
];
