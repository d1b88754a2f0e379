import type { Line } from '../line';

export const view: readonly Line[] = [
  {
    id: 'V1',
    claim:
      'Zoom, hidden parts and lanes, the selected statement, order and open rows of the table and the scroll stay over edits, failures, repairs, saving, changed data, another theme, a hidden tab, another place of the view and a split.',
    tests: [
      ['page/viewState', 'stays while the text is edited, broken, mended and saved'],
      ['page/viewState', 'stays over a switch of theme'],
      ['page/viewState', 'stays while its tab is behind another one'],
      ['page/viewState', 'stays where the curves are moved to another group, and where the text is split'],
      ['page/viewState', 'stays where the data change on disk'],
      [
        'page/webview/kept',
        'stays after an edit, a failing edit, its repair, a reload of the data, and a switch of theme',
      ],
      [
        'page/webview/kept',
        'keeps its scroll where the sheet comes to its height later, and where the editor scrolls a page it made anew',
      ],
    ],
  },
  {
    id: 'V2',
    claim: 'The same stays over a reload of the window, with the right gloss; one that is gone is a page with words.',
    tests: [
      ['page/viewState', 'stays over a reload of the window, with its gloss'],
      ['page/webview/kept', 'stays over a reload of the page'],
      ['page/reload', 'come back with their gloss, kept on it if they were'],
      ['page/reload', 'are a page with words where the gloss is gone after the reload, and are back with it'],
    ],
  },
  {
    id: 'V3',
    claim: 'A key and a double click return to all data there are now.',
    tests: [
      ['page/webview/curves', 'return to the data with 0, and with a double click'],
      ['webview/zoom', 'returns to the data that are there now, not to those of the first picture'],
    ],
  },
  {
    id: 'V4',
    claim:
      'Of loops, descending and repeated abscissae, gaps, one sample and none as many points are drawn as a plain count finds.',
    tests: [
      ['engine/curvesSamples', 'are as many as counted by brute force, and the same ones (${name})'],
      [
        'engine/curvesSamples',
        'are none of an empty curve, the one of a single sample, and that one as neighbour beside the range',
      ],
      ['engine/curvesSamples', 'at one abscissa, where a thousand samples lie: first, least, greatest and last'],
      ['engine/curvesSamples', 'is a stable sort of the finite values, by whatever way they came'],
      ['engine/curvesRun', 'end before a mask and begin again behind it, and no sample of the mask is drawn'],
      [
        'page/webview/curves',
        'are drawn whole at every zoom, heating and cooling: the branch that descends is in every column it has data in',
      ],
    ],
  },
  {
    id: 'V5',
    claim: 'An extreme keeps its place and value where samples are left out, and zooming in comes to every sample.',
    tests: [
      [
        'engine/curvesSamples',
        'of two thousand samples in ten columns: four a column and the neighbours, the spike at its own place',
      ],
      [
        'engine/curvesSamples',
        'reach every raw sample when zoomed in, each exactly once, also of a noisy cooling ramp',
      ],
      ['page/webview/curves', 'are every sample of the file where there is room for them, and no other'],
    ],
  },
  {
    id: 'V6',
    claim: 'Of 120 sizes of the pane, one a frame, the last is drawn, and no data are computed for them.',
    tests: [
      [
        'page/webview/resized',
        '120 sizes one a frame: the last is drawn, and nothing is computed anew but samples for another width',
      ],
    ],
  },
  {
    id: 'S1',
    claim:
      'The caret, moved by mouse, keys, search or outline, selects its statement in the curves, which pan only to what is out of view.',
    tests: [
      ['page/places', 'by keys selects the statement it comes to in the curves, and none where there is none'],
      ['page/places', 'by the mouse'],
      ['page/places', 'by searching'],
      ['page/places', 'by the outline'],
      ['page/webview/sync', 'pan only where the band is out of view'],
    ],
  },
  {
    id: 'S2',
    claim: 'A click or Enter on a window, a mark or a row goes to the defining line, and nothing else moves the caret.',
    tests: [
      ['page/webview/sync', 'a click on a band, Enter on its tab, a mark or a row each go to the statement once'],
      [
        'page/webview/sync',
        'show the caret’s statement on band and rows, take no focus and do not pan while it is in view',
      ],
      ['editor/caret', 'come to the defining line with the focus in the text, in the column where it is'],
    ],
  },
  {
    id: 'S3',
    claim: 'Two hundred moves in turn make no echo, and a view that is hidden or apart is told nothing.',
    tests: [
      ['editor/caret', 'move each other 200 times in turn without an echo'],
      ['editor/caret', 'are apart while the setting says so'],
      ['editor/caret', 'are apart while the view is out of sight'],
      ['client/caretSync', 'move each other 200 times in turn without one message too many'],
      [
        'page/webview/sync',
        'follow each other 200 times without an echo: a caret is never answered, a click is told once',
      ],
    ],
  },
  {
    id: 'S4',
    claim:
      'A view follows the active gloss or is kept on its own, also over a reload; two views show two glosses at once.',
    tests: [
      [
        'editor/curves',
        'follow the active gloss, unless they are kept; then a second view follows, and both are there at once',
      ],
      ['client/panelRegistry', 'show two glosses at once when the first is kept'],
      ['page/reload', 'come back with their gloss, kept on it if they were'],
    ],
  },
  {
    id: 'P1',
    claim: 'A moved edge is one step of undo, which gives back the very bytes and the caret; it can be done again.',
    tests: [
      ['editor/curves', 'is one change of one number, and one undo gives back the very text and the caret'],
      ['page/journey', 'an edge dragged in the plot changes one number, and one undo gives the text back'],
    ],
  },
  {
    id: 'P2',
    claim: 'Undo and redo pressed in the curves act on the text; Escape during a drag changes nothing.',
    tests: [
      ['page/typing', 'takes back and repeats a moved edge by the keys of the editor, with the focus in the curves'],
      ['page/webview/edges', 'takes undo and redo to the text, wherever in the sheet the focus is'],
      ['page/webview/edges', 'let go with Escape changes nothing, by hand and by key'],
    ],
  },
  {
    id: 'P3',
    claim: 'Only the number is written, with the digits of the text or of a pixel, whichever are fewer.',
    tests: [
      [
        'presentation/plot/edgeEdit',
        'changes its number and nothing else: unit, blanks, comment, clauses and other lines stay',
      ],
      [
        'presentation/plot/edgeEdit',
        'is written with the digits the text has, or those a pixel tells where these are fewer',
      ],
    ],
  },
  {
    id: 'P4',
    claim: 'An edge moved while the text changed is worked out again or refused in words, never misplaced.',
    tests: [
      [
        'editor/curves',
        'is never misplaced where the text was changed since: it is worked out again, or refused with nothing written',
      ],
      [
        'presentation/plot/edgeEdit',
        'is refused where the window, the statement or its override changed since the picture',
      ],
      ['presentation/plot/edgeEdit', 'is rebased where the text went on and the statement says the same'],
      ['client/moveEdge', 'is refused in words where the text goes on changing, and nothing is written'],
    ],
  },
  {
    id: 'P5',
    claim: 'Each edge is also moved by keys, by steps and by ten, and by a value typed into a box.',
    tests: [
      ['page/webview/edges', 'moved by keys is one edit: arrows a step of the text, Shift ten, Enter writes it'],
      ['page/webview/edges', 'let go with Escape changes nothing, by hand and by key'],
      ['page/webview/edges', 'takes a typed value in a box: Enter writes it once, Escape nothing, words are refused'],
    ],
  },
  {
    id: 'P6',
    claim: 'In a text that cannot be written, and in a revision of version control, no edge can be moved.',
    tests: [
      ['editor/curves', 'is not offered, and refused, where nobody may write the file'],
      ['editor/curves', 'is refused in words for a revision of version control'],
      ['page/webview/edges', 'is refused in words where the text cannot be edited'],
    ],
  },
];
